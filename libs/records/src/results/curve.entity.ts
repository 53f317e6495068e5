import type { CurveFormat } from '#libs/reduction/src/index.js';
import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { StoredFileEntity } from '../exchange/stored-file.entity.js';
import { JobEntity } from '../jobs/job.entity.js';
import { PersonEntity } from '../people/person.entity.js';
import { SpecimenEntity } from '../requests/specimen.entity.js';

/** A recorded curve of a specimen: the raw file as it came, its format as confirmed, and a thinned copy to draw. */
@Entity('curve')
export class CurveEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => SpecimenEntity)
  @Index()
  specimenId!: string;

  @Column('uuid')
  @ForeignKey(() => JobEntity)
  @Index()
  jobId!: string;

  @Column('uuid')
  @ForeignKey(() => StoredFileEntity)
  fileId!: string;

  @Column({ type: 'jsonb' })
  format!: CurveFormat;

  @Column({ type: 'int' })
  rows!: number;

  /** At most a few thousand points per column, for the plot. */
  @Column({ type: 'jsonb' })
  drawn!: Record<string, number[]>;

  /** The newest upload per specimen counts. */
  @Column({ type: 'int', default: 1 })
  revision!: number;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  uploadedBy!: string;

  @Column('timestamptz')
  uploadedAt!: Date;
}

/** A curve format that was confirmed once for a source, to be proposed for its next file. */
@Entity('curve_source')
export class CurveSourceEntity {
  /** Fingerprint of the header and layout. */
  @PrimaryColumn('text')
  fingerprint!: string;

  @Column({ type: 'text', default: '' })
  name!: string;

  @Column({ type: 'jsonb' })
  format!: CurveFormat;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  confirmedBy!: string;

  @Column('timestamptz')
  confirmedAt!: Date;
}

/** How long work really took, learned per method from finished jobs. */
@Entity('duration')
export class DurationEntity {
  @PrimaryColumn('uuid')
  @ForeignKey(() => JobEntity)
  jobId!: string;

  @Column({ type: 'text' })
  @Index()
  methodCode!: string;

  @Column({ type: 'int' })
  specimens!: number;

  @Column({ type: 'double precision' })
  setupMin!: number;

  @Column({ type: 'double precision' })
  workMin!: number;

  @Column('timestamptz')
  at!: Date;
}
