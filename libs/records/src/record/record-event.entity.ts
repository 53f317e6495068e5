import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { PersonEntity } from '../people/person.entity.js';

/**
 * One thing that happened: who, when, what, before, after, why. Never changed, never deleted: the database refuses both.
 * `seq`, `prevHash` and `hash` are filled by the database at the end of the transaction, so that the chain has no gap.
 */
@Entity('record_event')
@Index(['subjectKind', 'subjectId'])
export class RecordEventEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column({ type: 'bigint', nullable: true, unique: true })
  seq!: string | null;

  @Column({ type: 'timestamptz', default: () => 'clock_timestamp()' })
  @Index()
  at!: Date;

  /** Null for what the system did by itself. */
  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => PersonEntity)
  @Index()
  actorId!: string | null;

  /** E.g. `request/accepted`. */
  @Column({ type: 'text' })
  @Index()
  kind!: string;

  @Column({ type: 'text' })
  subjectKind!: string;

  @Column({ type: 'text' })
  subjectId!: string;

  @Column({ type: 'jsonb', nullable: true })
  before!: Record<string, unknown> | null;

  @Column({ type: 'jsonb', nullable: true })
  after!: Record<string, unknown> | null;

  @Column({ type: 'text', nullable: true })
  why!: string | null;

  @Column({ type: 'text', nullable: true })
  prevHash!: string | null;

  @Column({ type: 'text', nullable: true })
  hash!: string | null;
}
