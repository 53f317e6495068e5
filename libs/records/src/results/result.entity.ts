import type { CurveLack } from '#libs/bench/src/index.js';
import type { Figure } from '#libs/matching/src/index.js';
import type { AxisScale, ResultPoint, Sensitivity } from '#libs/reduction/src/index.js';
import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { JobEntity } from '../jobs/job.entity.js';
import { PersonEntity } from '../people/person.entity.js';
import { SpecimenEntity } from '../requests/specimen.entity.js';

/** What a figure rests on, as far as it follows from something. */
export interface ResultBasis {
  /** Ids of the frame and the items that it was found on. */
  items?: string[];
  /** Points on the curve, … */
  points?: readonly ResultPoint[];
  /** … and every channel of their rows, as recorded. */
  at?: Record<string, number>[];
  /** How a figure that is read at a strain or along a slope follows their errors. */
  sensitivity?: Sensitivity;
  flags?: string[];
  /** Of a peak: what its curve could not give. */
  lacks?: CurveLack[];
  /** Of a peak: how strain (fraction) and stress (MPa) follow from the recorded channels; null where they do not. */
  scales?: { strain: AxisScale; stress: AxisScale } | null;
  formula?: string;
  inputs?: Figure['inputs'];
  /** What the formula was given as the peak, N or N·m. */
  peak?: number;
}

/** One figure of one specimen. Corrections are new rows beside the old; the newest per specimen and key counts. */
@Entity('result')
@Index(['specimenId', 'key', 'revision'], { unique: true })
export class ResultEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => SpecimenEntity)
  specimenId!: string;

  @Column('uuid')
  @ForeignKey(() => JobEntity)
  @Index()
  jobId!: string;

  /** E.g. `peakForceN`, `tensileStrengthMPa`. */
  @Column({ type: 'text' })
  key!: string;

  @Column({ type: 'double precision' })
  value!: number;

  @Column({ type: 'text' })
  unit!: string;

  @Column({ type: 'int', default: 1 })
  revision!: number;

  @Column({ type: 'text' })
  origin!: 'typed' | 'computed' | 'reduced';

  @Column({ type: 'jsonb', default: {} })
  basis!: ResultBasis;

  @Column({ type: 'text', nullable: true })
  why!: string | null;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  enteredBy!: string;

  @Column('timestamptz')
  enteredAt!: Date;
}
