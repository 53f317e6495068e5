import { Check, Column, Entity, Exclusion, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { ItemEntity } from '../register/item.entity.js';
import { JobEntity } from '../jobs/job.entity.js';
import { PersonEntity } from '../people/person.entity.js';
import type { BookingNotes, PlanNotes } from './plan-notes.js';

/** One version of the plan. The published one is the newest with `publishedAt`; none is ever edited. */
@Entity('plan')
export class PlanEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column({ type: 'int', unique: true })
  version!: number;

  /** Stamp of the facts that it was made from; a plan is not published when a fact changed after it. */
  @Column({ type: 'text' })
  factsStamp!: string;

  @Column({ type: 'timestamptz' })
  madeAt!: Date;

  @Column({ type: 'timestamptz' })
  publishedAt!: Date;

  /** `planner`, or the person who published a trial plan. */
  @Column({ type: 'text' })
  madeBy!: string;

  @Column({ type: 'text', default: '' })
  cause!: string;

  /** The plan's key figures, what found no place and why, load and pools. */
  @Column({ name: 'figures', type: 'jsonb' })
  notes!: PlanNotes;
}

/** A job's place in a plan. Only the newest plan's rows are `live`; no two live bookings of a frame overlap (exclusion constraint). */
@Entity('booking')
@Index(['planId'])
@Check('booking_in_order', '"setup_at" <= "starts_at" and "starts_at" < "ends_at"')
@Exclusion(
  'booking_frame_once_at_a_time',
  'using gist ("frame_id" with =, tstzrange("setup_at", "ends_at") with &&) where (live and frame_id is not null)',
)
export class BookingEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => PlanEntity)
  planId!: string;

  @Column({ type: 'boolean' })
  live!: boolean;

  /** Null for a calibration visit. */
  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => JobEntity)
  @Index()
  jobId!: string | null;

  /** Null for a calibration visit of an item that is not a frame. */
  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => ItemEntity)
  @Index()
  frameId!: string | null;

  @Column({ type: 'text' })
  kind!: 'job' | 'calibration-visit';

  /** Changeover begins. */
  @Column({ type: 'timestamptz' })
  setupAt!: Date;

  /** Testing begins. */
  @Column({ type: 'timestamptz' })
  startsAt!: Date;

  @Column({ type: 'timestamptz' })
  endsAt!: Date;

  @Column({ type: 'int', default: 0 })
  changeoverMin!: number;

  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => PersonEntity)
  technicianId!: string | null;

  /** Role → item id. */
  @Column({ type: 'jsonb', default: [] })
  train!: { role: string; itemId: string }[];

  /** Why this frame, and for a late job the chain of causes. */
  @Column({ type: 'jsonb', default: {} })
  why!: Partial<BookingNotes>;
}

/** A booking of a plan that is not published yet. */
export type NewBooking = Omit<BookingEntity, 'id' | 'planId' | 'live'>;

/** Each item that a live booking holds, so that the database refuses two at once. */
@Entity('booking_item')
@Index(['itemId'])
@Exclusion(
  'booking_item_once_at_a_time',
  'using gist ("item_id" with =, tstzrange("starts_at", "ends_at") with &&) where (live)',
)
export class BookingItemEntity {
  @PrimaryColumn('uuid')
  @ForeignKey(() => BookingEntity)
  bookingId!: string;

  @PrimaryColumn('uuid')
  @ForeignKey(() => ItemEntity)
  itemId!: string;

  @Column({ type: 'boolean' })
  live!: boolean;

  @Column({ type: 'timestamptz' })
  startsAt!: Date;

  @Column({ type: 'timestamptz' })
  endsAt!: Date;
}
