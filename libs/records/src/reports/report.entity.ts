import { Column, Entity, ForeignKey, Index, PrimaryColumn, Unique, VersionColumn } from 'typeorm';
import type { ReportDocument, ReportRemarks, ReportState } from '#libs/contract/src/index.js';
import { StoredFileEntity } from '../exchange/stored-file.entity.js';
import { PersonEntity } from '../people/person.entity.js';
import { RequestEntity } from '../requests/request.entity.js';

/** A draft has none yet: it is made whenever somebody looks at it. */
type NoDocument = { number?: undefined };

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
  document!: ReportDocument | NoDocument;

  /** Opinions, deviations and remarks that the author adds. */
  @Column({ type: 'jsonb', default: {} })
  remarks!: ReportRemarks;

  /** What changed and why, for a revision above 1. */
  @Column({ type: 'text', nullable: true })
  amendment!: string | null;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  preparedBy!: string;

  @Column('timestamptz')
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

/** What was frozen when the report was authorised. @throws Error for a draft */
export function frozenDocument({ number, document }: ReportEntity): ReportDocument {
  if (document.number === undefined) throw new Error(`${number} has no document yet.`);
  return document;
}
