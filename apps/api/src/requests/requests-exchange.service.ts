import type { ImportView } from '#libs/contract/src/index.js';
import {
  askOf,
  readRequestsAround,
  labSettings,
  listPeople,
  listTeams,
  methodOf,
  MethodRepository,
  RequestRepository,
} from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { oncePerField } from '../exchange/csv-table.js';
import type { CsvProblem } from '../exchange/csv-table.js';
import type { ReadText } from '../exchange/read-text.js';
import { refuseBadImport } from '../exchange/refuse-bad-import.js';
import type { SignedIn } from '../platform/signed-in.js';
import { batchProblems } from './check-batch.js';
import { readRequestsCsv } from './read-requests-csv.js';
import type { CsvRequest, Known } from './read-requests-csv.js';
import { exportRequests, REQUESTER_COLUMN } from './request-csv.js';
import { RequestsService } from './requests.service.js';
import { mayAskFor, teamsSeen } from './team-access.js';
import { whatCame } from './what-came.js';

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
    const rows = await new RequestRepository(manager).newest(MOST_REQUESTS, teamsSeen(by));
    const methods = await new MethodRepository(manager).offered();
    return exportRequests(await readRequestsAround(manager, rows), methods.map(methodOf));
  }

  /**
   * Each request becomes a draft of whom the file names, else of who imports it, under a number of the lab's; what the file calls
   * it is kept with it. One that came before and is as it was is left alone. All or nothing.
   *
   * @throws {LabError} `import/invalid`
   */
  async import({ text, encoding }: ReadText, dryRun: boolean, by: SignedIn): Promise<ImportView> {
    const known = await this.known();
    const read = readRequestsCsv(text, known);
    const { came, fresh, otherwise } = await whatCame(
      this.records.manager,
      read.requests.filter(({ body }) => mayAskFor(by, body.teamId)),
      known,
    );
    const problems = oncePerField([
      ...read.problems,
      ...otherwise,
      ...read.requests.flatMap((each) => meaningProblems(each, known, by)),
    ]);
    const lines = read.requests.reduce((sum, each) => sum + each.lines.length, 0);
    const view = { dryRun, encoding, lines, problems };
    refuseBadImport(view);
    if (!dryRun) await this.requests.draftAll(fresh.map(draftOf), by);
    const bad = new Set(problems.map(({ line }) => line));
    const created = fresh.filter((each) => !each.lines.some((line) => bad.has(line))).length;
    return { ...view, created, updated: 0, unchanged: came.length };
  }

  private async known(): Promise<Known> {
    const { manager } = this.records;
    const methods = new MethodRepository(manager);
    return {
      methods: await methods.offered(),
      materials: await methods.materials(),
      teams: await listTeams(manager),
      people: await listPeople(manager),
      timeZone: (await labSettings(manager)).timeZone,
    };
  }
}

function draftOf({ name, requester, body }: CsvRequest) {
  return { body, importedAs: name, requesterId: requester?.id };
}

/** What could not be submitted as it stands, by line and column. */
function meaningProblems(
  { lines, body, requester }: CsvRequest,
  { methods, materials }: Known,
  by: SignedIn,
): CsvProblem[] {
  const stranger = { line: lines[0]!, field: 'team', sentence: 'Only members of a team may ask in its name.' };
  const batches = body.batches.flatMap((batch, index) => {
    const method = methods.find(({ id }) => id === batch.methodId);
    if (!method) return [];
    const material = materials.find(({ id }) => id === batch.materialId) ?? null;
    const found = batchProblems(methodOf(method), askOf(batch, method, material), batch.ask);
    return found.map(({ field, sentence }) => ({ line: lines[index]!, field, sentence }));
  });
  const forOther = requester !== null && requester.id !== by.id;
  const wrong = (sentence: string): CsvProblem[] => [{ line: lines[0]!, field: REQUESTER_COLUMN, sentence }];
  return [
    ...(body.teamId === '' || mayAskFor(by, body.teamId) ? [] : [stranger]),
    ...(forOther && !by.roles.includes('manager') ? wrong('Only a manager brings in requests of other people.') : []),
    ...(forOther && body.teamId !== '' && !mayAskFor(requester, body.teamId)
      ? wrong(`${requester.name} does not belong to this team.`)
      : []),
    ...batches,
  ];
}
