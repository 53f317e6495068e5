import { Check, Column, Entity, Exclusion, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { PersonEntity } from './person.entity.js';

/** Somebody is at work, [startsAt, endsAt). Nobody is at work twice at a time. */
@Entity('roster_shift')
@Check('roster_shift_has_length', '"ends_at" > "starts_at"')
@Exclusion('roster_shift_once_at_a_time', 'using gist ("person_id" with =, tstzrange("starts_at", "ends_at") with &&)')
export class RosterShiftEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  personId!: string;

  @Column({ type: 'timestamptz' })
  @Index()
  startsAt!: Date;

  @Column({ type: 'timestamptz' })
  endsAt!: Date;
}
