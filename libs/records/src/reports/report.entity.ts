import { Column, Entity, ForeignKey, Index, PrimaryColumn, Unique, VersionColumn } from 'typeorm';
import type { ReportState } from '#libs/contract/src/index.js';
import { StoredFileEntity } from '../exchange/stored-file.entity.js';
import { PersonEntity } from '../people/person.entity.js';
import { RequestEntity } from '../requests/request.entity.js';

/** The numbered, revisioned document of results. Once issued its document and file never change. */
@Entity('report')
@Unique(['number', 'revision'])
export class ReportEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => RequestEntity)
  @Index()
  requestId!: string;

  /** E.g. `TR-2026-0042`. One number per request; amendments raise the revision. Numbers are never reused. */
  @Column({ type: 'text' })
  number!: string;

  @Column({ type: 'int' })
  revision!: number;

  @Column({ type: 'text' })
  state!: ReportState;

  /** The whole content as plain data, frozen when issued. */
  @Column({ type: 'jsonb' })
  document!: Record<string, unknown>;

  /** Opinions, deviations and remarks that the author adds. */
  @Column({ type: 'jsonb', default: {} })
  remarks!: Record<string, unknown>;

  /** What changed and why, for a revision above 1. */
  @Column({ type: 'text', nullable: true })
  amendment!: string | null;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  preparedBy!: string;

  @Column({ type: 'timestamptz', default: () => 'now()' })
  preparedAt!: Date;

  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => PersonEntity)
  authorisedBy!: string | null;

  @Column({ type: 'timestamptz', nullable: true })
  authorisedAt!: Date | null;

  @Column({ type: 'timestamptz', nullable: true })
  issuedAt!: Date | null;

  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => StoredFileEntity)
  fileId!: string | null;

  @Column({ type: 'text', nullable: true })
  sha256!: string | null;

  @VersionColumn()
  version!: number;
}
