import { Check, Column, Entity, PrimaryColumn } from 'typeorm';

/** The last link of the record's chain. Locked while a link is added, so that two never claim the same place. */
@Entity('record_head')
@Check('record_head_is_one', '"id" = 1')
export class RecordHeadEntity {
  @PrimaryColumn({ type: 'int' })
  id!: number;

  @Column({ type: 'bigint' })
  seq!: string;

  @Column({ type: 'text' })
  hash!: string;
}
