import type { CurveConfirmBody, CurveProposalView, JobView } from '#libs/contract/src/index.js';
import { fieldProblem, InvalidInput, LabError } from '#libs/errors/src/index.js';
import {
  announce,
  readingKey,
  ResultRepository,
  sourceFingerprint,
  SpecimenRepository,
  StoredFileRepository,
} from '#libs/records/src/index.js';
import type { SpecimenEntity } from '#libs/records/src/index.js';
import { HEAD_BYTES, proposeFormat, sayDoubt } from '#libs/reduction/src/index.js';
import type { CurveFormat, FormatProposal } from '#libs/reduction/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../platform/signed-in.js';
import { JobActs, refuseOthers, refuseUnless } from '../job/job-acts.js';
import type { AtWork } from '../job/job-acts.js';
import { readFormat } from './read-format.js';

/** Largest curve file that is taken, bytes. */
export const CURVE_LIMIT_BYTES = 64 * 1024 * 1024;

/** A name that a file came under, and its bytes. */
export interface SentFile {
  name: string;
  content: Buffer;
}

/** Recorded curves: kept byte for byte, their format confirmed once for each source, read and reduced by the worker. */
@Injectable()
export class CurvesService {
  constructor(private readonly acts: JobActs) {}

  /**
   * Keeps the file and says how it is understood. A known source is read at once.
   *
   * @throws InvalidInput for a file without rows of numbers
   */
  async receive(
    jobId: string,
    specimenId: string,
    { name, content }: SentFile,
    by: SignedIn,
  ): Promise<CurveProposalView> {
    const proposal = proposalFor(content);
    const fingerprint = sourceFingerprint(proposal.format);
    let answer: CurveProposalView | null = null;
    await this.acts.do(jobId, by, async (at) => {
      const specimen = await specimenOf(at, specimenId);
      const file = await new StoredFileRepository(at.manager).store({
        name,
        mediaType: 'text/plain',
        content,
        storedBy: by.id,
        storedAt: at.now(),
      });
      const source = await new ResultRepository(at.manager).findSource(fingerprint);
      if (source) await this.announceReading(at, specimen, file.id);
      answer = proposalView(file.id, fingerprint, proposal, source?.format ?? null);
      const after = {
        specimenId,
        label: specimen.label,
        fileId: file.id,
        name,
        sha256: file.sha256,
        sizeBytes: content.length,
      };
      return { kind: 'specimen/curve-received', after };
    });
    return answer!;
  }

  /** Remembers how files of this source are read, and has this one read. */
  confirm(
    jobId: string,
    specimenId: string,
    { fileId, format: sent }: CurveConfirmBody,
    by: SignedIn,
  ): Promise<JobView> {
    const format = readFormat(sent);
    return this.acts.do(jobId, by, async (at) => {
      const specimen = await specimenOf(at, specimenId);
      const file = await new StoredFileRepository(at.manager).get(fileId);
      if (file.storedBy !== by.id) throw new LabError('file/unknown', 'There is no such file of yours.', { fileId });
      const { format: found } = proposalFor(file.content);
      refuseOtherLayout(format.columns.length, found.columns.length);
      const fingerprint = sourceFingerprint(found);
      await new ResultRepository(at.manager).rememberSource({
        fingerprint,
        name: file.name,
        format,
        confirmedBy: by.id,
        confirmedAt: at.now(),
      });
      await this.announceReading(at, specimen, fileId);
      return {
        kind: 'specimen/curve-format-confirmed',
        after: { specimenId, label: specimen.label, fileId, fingerprint, format },
      };
    });
  }

  private async announceReading(
    { manager, job, by }: AtWork,
    { id: specimenId }: SpecimenEntity,
    fileId: string,
  ): Promise<void> {
    await announce(
      manager,
      'read-curves',
      { fileId, jobId: job.id, specimenId, byId: by.id },
      { key: readingKey(specimenId) },
    );
  }
}

async function specimenOf(at: AtWork, specimenId: string): Promise<SpecimenEntity> {
  refuseOthers(at);
  refuseUnless(at.job, ['running', 'paused', 'done'], 'curves are taken');
  return new SpecimenRepository(at.manager).lock(at.job.batchId, specimenId);
}

function proposalFor(content: Buffer): FormatProposal {
  const proposal = proposeFormat(content.subarray(0, HEAD_BYTES), content.length <= HEAD_BYTES);
  if (proposal) return proposal;
  const allowed = 'delimited text with rows of numbers under a line of headings';
  throw new InvalidInput([
    fieldProblem(
      { field: 'body', found: `${content.length} bytes`, allowed, unit: '' },
      'Export the curve as text, one test a file.',
    ),
  ]);
}

function refuseOtherLayout(sent: number, found: number): void {
  if (sent === found) return;
  throw new InvalidInput([
    fieldProblem({
      field: 'format.columns',
      found: sent,
      allowed: `${found}, as many as the file has`,
      unit: 'columns',
    }),
  ]);
}

/** A known source was confirmed by a person: what was doubted then is settled. */
function proposalView(
  fileId: string,
  fingerprint: string,
  { format, doubts, sample }: FormatProposal,
  known: CurveFormat | null,
): CurveProposalView {
  const headingLine = format.headerLines;
  return {
    ...{ fileId, fingerprint, known: known !== null },
    format: { ...(known ?? format) },
    preview: { header: format.columns.map(({ heading }) => heading), rows: sample.map((row) => [...row]) },
    problems: known ? [] : doubts.map((doubt) => ({ line: headingLine, reason: sayDoubt(doubt) })),
  };
}
