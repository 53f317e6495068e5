import { createHash } from 'node:crypto';
import type {
  MissingLine,
  ReportDocument,
  ReportLine,
  ReportRemarks,
  ReportView,
  VerifyView,
} from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import {
  announce,
  drawNumber,
  frozenDocument,
  getPerson,
  LabRecords,
  labSettings,
  peopleNamed,
  readReportLines,
  ReportRepository,
  RequestRepository,
  resultsOfRequest,
  StoredFileRepository,
  teamNamed,
} from '#libs/records/src/index.js';
import type { ReportEntity, StoredFileEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../platform/signed-in.js';
import { teamsSeen } from '../requests/team-access.js';
import { missingLines } from './missing-lines.js';
import { reportDocument } from './report-document.js';

/** States of a request in which its results may be reported. */
const REPORTABLE = ['in-review', 'reported', 'closed'];

interface Issuing {
  authorisedBy: { name: string; function: string };
  issuedAt: Date;
  number: string;
}

/** Reports: a draft follows the record until it is issued; from then on it stands. */
@Injectable()
export class ReportsService {
  constructor(private readonly records: LabRecords) {}

  list(words: string | undefined, limit: number, by: SignedIn): Promise<ReportLine[]> {
    return readReportLines(this.records.manager, { words, teamIds: teamsSeen(by), limit });
  }

  /** In one snapshot, so that no answer tells of an issued report without its file. */
  view(id: string, by: SignedIn): Promise<ReportView> {
    return this.records.snapshot(async (manager) => {
      const row = await this.seen(manager, id, by);
      const document = row.state === 'draft' ? await this.documentOf(manager, row) : frozenDocument(row);
      const people = await peopleNamed(manager, [row.preparedBy]);
      return {
        ...(await readReportLines(manager, { id, limit: 1 }))[0]!,
        document,
        missing: row.state === 'draft' ? missingLines(document) : [],
        remarks: row.remarks,
        preparedBy: people.get(row.preparedBy) ?? { id: row.preparedBy, name: '' },
        preparedAt: row.preparedAt.toISOString(),
        sha256: row.sha256,
        hasFile: row.fileId !== null,
        version: row.version,
      };
    });
  }

  /** Prepares the report of a request, or returns the draft that is there. @throws LabError `report/request-not-ready` */
  prepare(requestId: string, by: SignedIn): Promise<string> {
    return this.records.act(by.id, async ({ manager, record, nothing, now }) => {
      const reports = new ReportRepository(manager);
      const request = await new RequestRepository(manager).get(requestId, undefined);
      const there = await reports.ofRequest(requestId);
      const draft = there.find(({ state }) => state === 'draft' || state === 'issuing');
      if (draft) return nothing(draft.id);
      if (there.length > 0) {
        throw new LabError(
          'report/issued-already',
          `${there[0]!.number} was issued for ${request.reference}. Amend it instead.`,
          { reportId: there.at(-1)!.id },
        );
      }
      if (!REPORTABLE.includes(request.state)) {
        throw new LabError(
          'report/request-not-ready',
          `${request.reference} is ${request.state}; a report is prepared once all of its jobs are done and it is in review.`,
          { state: request.state },
        );
      }
      const id = await reports.add({
        ...{
          requestId,
          number: `draft ${request.reference}`,
          revision: 1,
          amendment: null,
          preparedBy: by.id,
          preparedAt: now(),
        },
        ...{ document: {}, remarks: {} },
      });
      await record({ kind: 'report/prepared', subjectId: id, after: { requestId } });
      return id;
    });
  }

  /** @throws LabError `report/not-a-draft`, `report/changed-meanwhile` */
  remark(id: string, version: number, remarks: ReportRemarks, by: SignedIn): Promise<void> {
    return this.records.act(by.id, async ({ manager, record }) => {
      const row = await this.draft(manager, id);
      await new ReportRepository(manager).change({ ...row, version }, 'draft', {
        remarks: { ...row.remarks, ...remarks },
      });
      await record({ kind: 'report/remarked', subjectId: id, after: { ...remarks } });
    });
  }

  /**
   * Authorises a report and gives it its number; its file is drawn by the worker, and from now on nothing of it changes.
   *
   * @param version the version that the authorising person has looked at
   * @throws LabError `report/incomplete` with every missing line, `report/own-work` for who ran the tests
   */
  issue(id: string, version: number, by: SignedIn): Promise<void> {
    return this.records.act(by.id, async ({ manager, record, now }) => {
      const row = { ...(await this.draft(manager, id)), version };
      const missing = missingLines(await this.documentOf(manager, row));
      if (missing.length > 0) throw incomplete(missing);
      await this.refuseOwnWork(manager, row, by);
      const issuedAt = now();
      const number = row.revision > 1 ? row.number : await this.nextNumber(manager, issuedAt);
      const authorisedBy = {
        name: by.name,
        function: by.roles.includes('manager') ? 'Laboratory manager' : 'Authorised signatory',
      };
      const document = await this.documentOf(manager, row, { authorisedBy, issuedAt, number });
      await new ReportRepository(manager).change(row, 'draft', {
        ...{ number, state: 'issuing', authorisedBy: by.id, authorisedAt: issuedAt, issuedAt },
        document,
      });
      await announce(manager, 'issue-report', { reportId: id });
      await record({
        kind: 'report/authorised',
        subjectId: id,
        after: {
          number,
          revision: row.revision,
          documentSha256: hashOf(document),
        },
      });
    });
  }

  /** Begins the next revision of an issued report. */
  amend(id: string, why: string, by: SignedIn): Promise<string> {
    return this.records.act(by.id, async ({ manager, record, now }) => {
      const reports = new ReportRepository(manager);
      const row = await reports.get(id);
      const all = await reports.ofRequest(row.requestId);
      const open = all.find(({ state }) => state === 'draft' || state === 'issuing');
      if (open)
        throw new LabError(
          'report/amendment-open',
          `Revision ${open.revision} of ${row.number} is being prepared already.`,
          { reportId: open.id },
        );
      const last = all.at(-1)!;
      if (last.state !== 'issued')
        throw new LabError('report/not-issued', `${row.number} was not issued yet; change the draft itself.`);
      const next = await reports.add({
        ...{
          requestId: row.requestId,
          number: last.number,
          revision: last.revision + 1,
          amendment: why,
          preparedBy: by.id,
          preparedAt: now(),
        },
        ...{ document: {}, remarks: last.remarks },
      });
      await record({
        kind: 'report/amendment-begun',
        subjectId: next,
        after: {
          number: last.number,
          revision: last.revision + 1,
          why,
        },
      });
      return next;
    });
  }

  /** The issued file, byte for byte. @throws LabError `report/file-none` while it is drawn */
  async file(id: string, by: SignedIn): Promise<StoredFileEntity> {
    const row = await this.seen(this.records.manager, id, by);
    if (row.fileId === null)
      throw new LabError('report/file-none', `${row.number} has no file yet: it is drawn when the report is issued.`);
    return new StoredFileRepository(this.records.manager).get(row.fileId);
  }

  /** Whether a number was issued by this lab, and whether a file with this hash is that report. Open to everybody. */
  async verify(number: string, revision: number | undefined, hash: string | undefined): Promise<VerifyView> {
    const all = await new ReportRepository(this.records.manager).ofNumber(number);
    const issued = all.filter(({ state }) => state === 'issued' || state === 'superseded');
    const row = issued.find((one) => one.revision === revision) ?? (revision === undefined ? issued.at(-1) : undefined);
    const newest = issued.at(-1)?.revision ?? null;
    return {
      number,
      revision: row?.revision ?? revision ?? 1,
      known: row !== undefined,
      matches: row && hash !== undefined ? row.sha256 === hash.toLowerCase() : null,
      supersededBy: row && newest !== null && newest > row.revision ? newest : null,
      issuedAt: row?.issuedAt?.toISOString() ?? null,
    };
  }

  private async seen(manager: EntityManager, id: string, by: SignedIn): Promise<ReportEntity> {
    const row = await new ReportRepository(manager).get(id);
    const teams = teamsSeen(by);
    const request = await new RequestRepository(manager).findSeen(row.requestId, teams);
    if (request === null || (teams !== undefined && row.issuedAt === null))
      throw new LabError('report/unknown', 'There is no such report.', { reportId: id });
    return row;
  }

  private async draft(manager: EntityManager, id: string): Promise<ReportEntity> {
    const row = await new ReportRepository(manager).get(id);
    if (row.state !== 'draft')
      throw new LabError(
        'report/not-a-draft',
        `${row.number} is ${row.state}; what was issued is never changed. Amend it instead.`,
        { state: row.state },
      );
    return row;
  }

  private async documentOf(manager: EntityManager, row: ReportEntity, issuing?: Issuing): Promise<ReportDocument> {
    const request = await new RequestRepository(manager).get(row.requestId, undefined);
    const requester = await getPerson(manager, request.requesterId);
    return reportDocument({
      number: issuing?.number ?? row.number,
      ...{ revision: row.revision, amendment: row.amendment, request },
      settings: await labSettings(manager),
      team: await teamNamed(manager, request.teamId),
      requester: { name: requester.name, email: requester.email },
      found: await resultsOfRequest(manager, row.requestId),
      remarks: row.remarks,
      authorisedBy: issuing?.authorisedBy ?? null,
      issuedAt: issuing?.issuedAt ?? null,
    });
  }

  /** Who tested does not authorise the report of it: two people have looked at it (ISO/IEC 17025:2017 7.8.1.1). */
  private async refuseOwnWork(manager: EntityManager, row: ReportEntity, by: SignedIn): Promise<void> {
    const found = await resultsOfRequest(manager, row.requestId);
    if (found.some(({ job }) => job?.technicianId === by.id)) {
      throw new LabError(
        'report/own-work',
        'You ran these tests yourself; somebody else has to authorise their report.',
      );
    }
  }

  private async nextNumber(manager: EntityManager, at: Date): Promise<string> {
    const year = at.getUTCFullYear();
    const next = await drawNumber(manager, `report-${year}`);
    return `TR-${year}-${String(next).padStart(4, '0')}`;
  }
}

function incomplete(missing: readonly MissingLine[]): LabError {
  const lines = missing.map(({ clause, what }) => `${what} (${clause})`).join(', ');
  return new LabError(
    'report/incomplete',
    `The report cannot be issued: ISO/IEC 17025:2017 asks for what is not there: ${lines}.`,
    { missing },
  );
}

function hashOf(document: ReportDocument): string {
  return createHash('sha256').update(JSON.stringify(document)).digest('hex');
}
