import { Column, Entity, Index, PrimaryColumn } from 'typeorm';

/** The answer given to a POST that carried an Idempotency-Key, so that a retry gets the same answer and does nothing twice. */
@Entity('idempotency_key')
export class IdempotencyKeyEntity {
  @PrimaryColumn('uuid')
  personId!: string;

  @PrimaryColumn({ type: 'text' })
  key!: string;

  /** SHA-256 of method, path and body: the same key for something else is refused. */
  @Column({ type: 'text' })
  requestHash!: string;

  @Column({ type: 'timestamptz', default: () => 'now()' })
  @Index()
  createdAt!: Date;

  /** Of the try that is at it; a retry that takes over has another. */
  @Column('uuid')
  claimId!: string;

  @Column({ type: 'timestamptz', default: () => 'now()' })
  claimedAt!: Date;

  /** Set in the transaction of what was asked for. */
  @Column({ type: 'boolean', default: false })
  done!: boolean;

  /** Null while there is no answer yet. */
  @Column({ type: 'int', nullable: true })
  status!: number | null;

  @Column({ type: 'jsonb', nullable: true })
  body!: unknown;
}
