import { Column, Entity, Index, PrimaryColumn } from 'typeorm';

/** The quick verification of a load cell on a frame, once per shift and after it was fitted. */
@Entity('shift_check')
@Index(['cellId', 'frameId', 'at'])
export class ShiftCheckEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  cellId!: string;

  @Column('uuid')
  frameId!: string;

  @Column({ type: 'uuid', nullable: true })
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
  technicianId!: string;

  @Column({ type: 'timestamptz', default: () => 'now()' })
  at!: Date;
}
