import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { ItemEntity } from '../register/item.entity.js';
import { JobEntity } from '../jobs/job.entity.js';
import { PersonEntity } from '../people/person.entity.js';

/** The quick verification of a load cell on a frame, once per shift and after it was fitted. */
@Entity('shift_check')
@Index(['cellId', 'frameId', 'at'])
export class ShiftCheckEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => ItemEntity)
  cellId!: string;

  @Column('uuid')
  @ForeignKey(() => ItemEntity)
  frameId!: string;

  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => JobEntity)
  jobId!: string | null;

  @Column({ type: 'double precision' })
  reference!: number;

  @Column({ type: 'double precision' })
  reading!: number;

  /** N, or N·m for a torque cell. */
  @Column({ type: 'text' })
  unit!: string;

  @Column({ type: 'double precision' })
  tolerancePct!: number;

  @Column({ type: 'double precision' })
  errorPct!: number;

  @Column({ type: 'boolean' })
  passed!: boolean;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  technicianId!: string;

  @Column('timestamptz')
  at!: Date;
}
