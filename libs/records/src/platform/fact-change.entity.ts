import { Column, Entity, Index, PrimaryGeneratedColumn } from 'typeorm';

/** A change of something that plans are made from. It bears the transaction that made it, so that a reader can tell what it had not seen. */
@Entity('fact_change')
export class FactChangeEntity {
  @PrimaryGeneratedColumn('identity', { type: 'bigint' })
  id!: string;

  /** `pg_current_xact_id()`, which TypeORM has no type for. */
  @Column({ type: 'bigint' })
  @Index()
  transaction!: string;

  @Column({ type: 'timestamptz', default: () => 'now()' })
  @Index()
  at!: Date;

  @Column({ type: 'text' })
  what!: string;
}
