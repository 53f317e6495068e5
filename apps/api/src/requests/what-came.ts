import { isDeepStrictEqual } from 'node:util';
import type { SaveRequestBody } from '#libs/contract/src/index.js';
import { readRequestsAround, methodOf, RequestRepository } from '#libs/records/src/index.js';
import type { EntityManager } from 'typeorm';
import type { CsvProblem } from '../exchange/csv-table.js';
import { readRequestsCsv } from './read-requests-csv.js';
import type { CsvRequest, Known } from './read-requests-csv.js';
import { exportRequests } from './request-csv.js';

export interface Came {
  /** There already, as the file says. */
  came: CsvRequest[];
  fresh: CsvRequest[];
  /** There already by name, and otherwise than the file says. */
  otherwise: CsvProblem[];
}

/**
 * Which requests of a file the lab has already, of the same team and by what an earlier file called them or by the lab's own number.
 * They are compared as an export of them would be read.
 */
export async function whatCame(manager: EntityManager, read: readonly CsvRequest[], known: Known): Promise<Came> {
  const rows = await new RequestRepository(manager).findNamed(read.map(({ name }) => name));
  const text = exportRequests(await readRequestsAround(manager, rows), known.methods.map(methodOf));
  const kept = new Map(readRequestsCsv(text, known).requests.map(({ name, body }) => [name, body]));
  const found: Came = { came: [], fresh: [], otherwise: [] };
  for (const each of read) {
    const isNamed = (name: string | null) => name === each.name;
    const before = rows.find(
      ({ importedAs, reference, teamId }) => teamId === each.body.teamId && (isNamed(importedAs) || isNamed(reference)),
    );
    if (!before) found.fresh.push(each);
    else if (isSame(each.body, kept.get(before.reference))) found.came.push(each);
    else found.otherwise.push(differs(each, before.reference));
  }
  return found;
}

function isSame(sent: SaveRequestBody, kept: SaveRequestBody | undefined): boolean {
  return kept !== undefined && isDeepStrictEqual(comparable(sent), comparable(kept));
}

/** The same instant may be written in several ways. */
function comparable({ dueAt, specimensAt, ...rest }: SaveRequestBody): unknown {
  const [due, there] = [dueAt, specimensAt].map((at) => (at ? Date.parse(at) : null));
  return { ...rest, due, there };
}

function differs({ name, lines }: CsvRequest, reference: string): CsvProblem {
  const sentence = `${name} is there already as ${reference}, and differs from this line. Change it there, or give another name here.`;
  return { line: lines[0]!, field: 'request', sentence };
}
