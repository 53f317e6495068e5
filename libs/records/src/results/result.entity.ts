import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { JobEntity } from '../jobs/job.entity.js';
import { PersonEntity } from '../people/person.entity.js';
import { SpecimenEntity } from '../requests/specimen.entity.js';

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

  /** Points on the curve that it rests on, and flags. */
  @Column({ type: 'jsonb', default: {} })
  basis!: Record<string, unknown>;

  @Column({ type: 'text', nullable: true })
  why!: string | null;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  enteredBy!: string;

  @Column({ type: 'timestamptz', default: () => 'now()' })
  enteredAt!: Date;
}
