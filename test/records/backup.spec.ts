import { randomUUID } from 'node:crypto';
import type { DataSource } from 'typeorm';
import { append, backupLines, drawNumber, openRecords, restoreLines, verifyRecord } from '#libs/records/src/index.js';
import { loadDemoLab } from '#seed/load-demo-lab.js';
import { emptyDatabase, freshDatabase } from '../support/database.js';
import type { FreshDatabase } from '../support/database.js';
import { labClock } from '../support/lab-clock.js';

const LEFT_OUT = ['migration', 'session', 'sign_in_attempt', 'idempotency_key', 'fact_change'];
/** More digits than a double has: it would come back changed if it were read as a number on the way. */
const LONG_NUMBER = '9007199254740993';

describe('a backup of the demo lab', () => {
  let source: FreshDatabase;
  let records: DataSource;
  let lines: string[];

  beforeAll(async () => {
    source = await freshDatabase();
    records = await openRecords(source.url);
    await loadDemoLab(records, Date.parse('2026-11-25T09:00:00Z'));
    await records.query('update task_run set seq = $1 where id = (select id from task_run limit 1)', [LONG_NUMBER]);
    lines = await collected(backupLines(records));
  }, 60_000);
  afterAll(async () => {
    await records.destroy();
    await source.drop();
  });

  async function restored(given: string[]): Promise<{ records: DataSource; drop(): Promise<void> }> {
    const target = await emptyDatabase();
    await restoreLines(target.url, handedOut(given)).catch(async (error: unknown) => {
      await target.drop();
      throw error;
    });
    const back = await openRecords(target.url);
    return { records: back, drop: () => back.destroy().then(() => target.drop()) };
  }

  it('comes back row by row, byte by byte, and its record verifies and goes on', async () => {
    const { records: back, drop } = await restored(lines);
    expect(await contents(back)).toEqual(await contents(records));
    const before = await verifyRecord(back);
    expect(before.faults).toEqual([]);
    expect(before.events).toBeGreaterThan(100);
    await back.transaction(async (manager) => {
      await append(manager, {
        actorId: null,
        kind: 'team/added',
        subjectKind: 'team',
        subjectId: randomUUID(),
        at: labClock.now(),
      });
      expect(await drawNumber(manager, 'backup-spec')).toBe(1);
    });
    expect(await verifyRecord(back)).toEqual({ events: before.events + 1, faults: [] });
    await drop();
  }, 60_000);

  it.each([
    ['that ends in the middle', () => lines.slice(0, -1), 'ends in the middle'],
    ['that lacks a row', () => without(lines, lines.indexOf('{"table":"record_event"}') + 1), 'should hold'],
    [
      'of a newer version',
      () => [lines[0]!.replace('"schema":[', '"schema":["AddTomorrow1999999999999",'), ...lines.slice(1)],
      'from a newer version',
    ],
    ['that is something else', () => ['name,email', 'x,y'], 'not a backup'],
  ])('%s is refused, and nothing of it stays', async (_, given, sentence) => {
    await expect(restored(given())).rejects.toThrow(sentence);
  });

  it('is refused by a database that has anything in it', async () => {
    await expect(restoreLines(source.url, handedOut(lines))).rejects.toThrow('into an empty database only');
  });
});

function without(lines: string[], index: number): string[] {
  return lines.filter((_, at) => at !== index);
}

async function collected(lines: AsyncIterable<string>): Promise<string[]> {
  const all: string[] = [];
  for await (const line of lines) all.push(line);
  return all;
}

async function* handedOut(lines: string[]): AsyncGenerator<string> {
  yield* lines;
}

/** For each table how many rows, and a hash over all of them. */
async function contents(records: DataSource): Promise<Record<string, string>> {
  const tables = await records.query<{ name: string }[]>(
    `select relname as name from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r' and relname <> all($1) order by 1`,
    [LEFT_OUT],
  );
  const found: Record<string, string> = {};
  for (const { name } of tables) {
    const [row] = await records.query<{ found: string }[]>(
      `select count(*) || ' ' || coalesce(md5(string_agg(line, ',' order by line)), '') as found from (select to_jsonb(t)::text as line from "${name}" t) rows`,
    );
    found[name] = row!.found;
  }
  return found;
}
