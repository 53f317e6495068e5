import type { ImportView } from '#libs/contract/src/index.js';
import {
  askOf,
  aroundRequests,
  listTeams,
  methodOf,
  MethodRepository,
  RequestRepository,
} from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { oncePerField } from '../exchange/csv-table.js';
import type { CsvProblem } from '../exchange/csv-table.js';
import type { SignedIn } from '../platform/signed-in.js';
import { batchProblems } from './check-batch.js';
import { readRequestsCsv } from './read-requests-csv.js';
import type { CsvRequest, Known } from './read-requests-csv.js';
import { exportRequests } from './request-csv.js';
import { RequestsService } from './requests.service.js';
import { mayAskFor, teamsSeen } from './sight.js';

/** Most requests that go into one file. */
const MOST_REQUESTS = 10_000;

/** Requests as files, out and in. */
@Injectable()
export class RequestsExchangeService {
  constructor(
    private readonly records: DataSource,
    private readonly requests: RequestsService,
  ) {}

  /** What the person may see, newest first. */
  async export(by: SignedIn): Promise<string> {
    const { manager } = this.records;
    const rows = await new RequestRepository(manager).find({ teamIds: teamsSeen(by), limit: MOST_REQUESTS });
    const methods = await new MethodRepository(manager).offered();
    return exportRequests(await aroundRequests(manager, rows), methods.map(methodOf));
  }

  /** Each request becomes a draft of who imports it. All or nothing: with one bad line, or as a dry run, nothing is kept. */
  async import(text: string, dryRun: boolean, by: SignedIn): Promise<ImportView> {
    const known = await this.known();
    const read = readRequestsCsv(text, known);
    const problems = oncePerField([
      ...read.problems,
      ...read.requests.flatMap((each) => meaningProblems(each, known, by)),
    ]);
    if (problems.length === 0 && !dryRun)
      await this.requests.draftAll(
        read.requests.map(({ body }) => body),
        by,
      );
    const lines = read.requests.reduce((sum, each) => sum + each.lines.length, 0);
    return { dryRun, lines, created: read.requests.length, updated: 0, problems };
  }

  private async known(): Promise<Known> {
    const { manager } = this.records;
    const methods = new MethodRepository(manager);
    return { methods: await methods.offered(), materials: await methods.materials(), teams: await listTeams(manager) };
  }
}

/** What could not be submitted as it stands, by line and column. */
function meaningProblems({ lines, body }: CsvRequest, { methods, materials }: Known, by: SignedIn): CsvProblem[] {
  const stranger = { line: lines[0]!, field: 'team', sentence: 'Only members of a team may ask in its name.' };
  const batches = body.batches.flatMap((batch, index) => {
    const method = methods.find(({ id }) => id === batch.methodId);
    if (!method) return [];
    const material = materials.find(({ id }) => id === batch.materialId) ?? null;
    const found = batchProblems(methodOf(method), askOf(batch, method, material), batch.ask);
    return found.map(({ field, sentence }) => ({ line: lines[index]!, field, sentence }));
  });
  return [...(body.teamId === '' || mayAskFor(by, body.teamId) ? [] : [stranger]), ...batches];
}
