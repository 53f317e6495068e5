import { Column, Entity, ForeignKey, Index, PrimaryColumn, VersionColumn } from 'typeorm';
import type { FinishBody, JobState } from '#libs/contract/src/index.js';
import { BatchEntity } from '../requests/batch.entity.js';
import { ItemEntity } from '../register/item.entity.js';
import { PersonEntity } from '../people/person.entity.js';
import { RequestEntity } from '../requests/request.entity.js';

/** A link of the train that a job runs on. */
export interface TrainLink {
  role: string;
  itemId: string;
  /** When the technician confirmed the tag on the frame; absent until then. */
  confirmedAt?: string;
  confirmedBy?: string;
}

/** One batch on one load train: the unit that is planned, taken and run. */
@Entity('job')
@Index(['state', 'finishedAt'])
export class JobEntity {
  @PrimaryColumn('uuid')
  id!: string;

  /** E.g. `J-2031-1`. */
  @Column({ type: 'text', unique: true })
  reference!: string;

  @Column('uuid')
  @ForeignKey(() => BatchEntity)
  @Index()
  batchId!: string;

  @Column('uuid')
  @ForeignKey(() => RequestEntity)
  @Index()
  requestId!: string;

  @Column({ type: 'text' })
  state!: JobState;

  /** Where it waits and why, in words, while waiting, paused, blocked or aborted. */
  @Column({ type: 'text', nullable: true })
  why!: string | null;

  /** Conditioned and here from then on; null while specimens are missing. */
  @Column({ type: 'timestamptz', nullable: true })
  releasedAt!: Date | null;

  /** Set when a technician took it. */
  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => ItemEntity)
  @Index()
  frameId!: string | null;

  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => PersonEntity)
  @Index()
  technicianId!: string | null;

  /** The train as taken, with confirmations. */
  @Column({ type: 'jsonb', default: [] })
  train!: TrainLink[];

  /** Check name → when and by whom it was ticked. */
  @Column({ type: 'jsonb', default: {} })
  checks!: Record<string, { at: string; by: string; value?: number; note?: string }>;

  /** Kept out of the plan, with the reason. */
  @Column({ type: 'text', nullable: true })
  holdWhy!: string | null;

  /** Pinned to a frame and a start by the manager. */
  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => ItemEntity)
  pinFrameId!: string | null;

  @Column({ type: 'timestamptz', nullable: true })
  pinStartAt!: Date | null;

  @Column({ type: 'timestamptz', nullable: true })
  takenAt!: Date | null;

  @Column({ type: 'timestamptz', nullable: true })
  startedAt!: Date | null;

  @Column({ type: 'timestamptz', nullable: true })
  finishedAt!: Date | null;

  /** Conditions during the run: temperature °C, humidity %, remarks, deviations from the method. */
  @Column({ type: 'jsonb', default: {} })
  conditions!: FinishBody['conditions'];

  @VersionColumn()
  version!: number;
}

/** Frame and items that a job runs on, by id. */
export function itemsOfTrain({ frameId, train }: Pick<JobEntity, 'frameId' | 'train'>): string[] {
  return [...(frameId === null ? [] : [frameId]), ...train.map(({ itemId }) => itemId)];
}
