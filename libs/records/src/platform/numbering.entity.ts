import { Column, Entity, PrimaryColumn } from 'typeorm';

/**
 * The next number of a reference (`request`, `report-2026`, `nonconformity`). Drawn in the transaction that uses it,
 * so that a number is neither used twice nor lost to a failed attempt.
 */
@Entity('numbering')
export class NumberingEntity {
  @PrimaryColumn('text')
  name!: string;

  @Column({ type: 'int' })
  next!: number;
}
