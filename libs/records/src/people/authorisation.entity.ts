import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { PersonEntity } from './person.entity.js';

/** Leave to run a method, from an instant on, until another or without end. It covers every version of the method. */
@Entity('authorisation')
@Check('authorisation_has_length', '"to_at" is null or "to_at" > "from_at"')
export class AuthorisationEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  @Index()
  personId!: string;

  @Column({ type: 'text' })
  @Index()
  methodCode!: string;

  @Column({ type: 'timestamptz' })
  fromAt!: Date;

  @Column({ type: 'timestamptz', nullable: true })
  toAt!: Date | null;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  grantedBy!: string;
}
