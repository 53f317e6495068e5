import { Check, Column, Entity, Generated, Index, PrimaryColumn } from 'typeorm';
import type { TaskState } from '#libs/contract/src/index.js';
import type { TaskName } from '#libs/tasks/src/index.js';

/**
 * Work announced to the worker, and how far it is. Written in the transaction that causes it (it is the outbox until it is
 * dispatched), and the only truth about its state and progress: queues may lose their events, or themselves.
 */
@Entity('task_run')
@Check('task_run_state_known', `"state" in ('waiting', 'running', 'set-aside', 'done', 'failed', 'cancelled')`)
@Index('ix_task_run_to_dispatch', ['dueAt'], { where: '"dispatched_at" is null' })
@Index('ix_task_run_open', ['dispatchedAt'], { where: `"state" in ('waiting', 'running')` })
export class TaskRunEntity {
  /** Also the id of the queue's own entry, so that handing it over twice is harmless. */
  @PrimaryColumn('uuid')
  id!: string;

  /** Order of announcement. */
  @Column({ type: 'bigint' })
  @Generated('increment')
  seq!: string;

  @Column({ type: 'text' })
  @Index()
  name!: TaskName;

  /** Of several with the same name and key that wait to be dispatched, only the last is. */
  @Column({ type: 'text', nullable: true })
  key!: string | null;

  @Column({ type: 'jsonb' })
  payload!: Record<string, unknown>;

  @Column({ type: 'timestamptz', default: () => 'now()' })
  announcedAt!: Date;

  /** Not before. */
  @Column({ type: 'timestamptz', default: () => 'now()' })
  dueAt!: Date;

  @Column({ type: 'timestamptz', nullable: true })
  dispatchedAt!: Date | null;

  /** The later announcement that does this one's work too. */
  @Column({ type: 'uuid', nullable: true })
  mergedInto!: string | null;

  /** `set-aside`: no worker that runs knows this kind; the first that does takes it up again. */
  @Column({ type: 'text', default: 'waiting' })
  state!: TaskState;

  /** 0 to 100. */
  @Column({ type: 'double precision', default: 0 })
  progressPct!: number;

  @Column({ type: 'text', default: '' })
  message!: string;

  @Column({ type: 'text', nullable: true })
  error!: string | null;

  @Column({ type: 'jsonb', nullable: true })
  result!: Record<string, unknown> | null;

  @Column({ type: 'int', default: 0 })
  attempts!: number;

  @Column({ type: 'boolean', default: false })
  cancelAsked!: boolean;

  @Column({ type: 'timestamptz', nullable: true })
  startedAt!: Date | null;

  /** Moves while a worker is at it; a run whose worker died stands still. */
  @Column({ type: 'timestamptz', nullable: true })
  aliveAt!: Date | null;

  @Column({ type: 'timestamptz', nullable: true })
  finishedAt!: Date | null;
}
