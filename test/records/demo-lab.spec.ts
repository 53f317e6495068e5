import type { DataSource } from 'typeorm';
import { openRecords, readPlanFacts, verifyRecord } from '#libs/records/src/index.js';
import { loadDemoLab } from '#seed/load-demo-lab.js';
import { loadLibrary } from '#seed/load/load-library.js';
import { freshDatabase } from '../support/database.js';
import type { FreshDatabase } from '../support/database.js';
import { labClock } from '../support/lab-clock.js';

const WEDNESDAY = Date.parse('2026-11-25T10:30:00Z');

describe('the demo lab, loaded', () => {
  let database: FreshDatabase;
  let records: DataSource;

  beforeAll(async () => {
    database = await freshDatabase();
    records = await openRecords(database.url, { poolSize: 4 });
    await loadLibrary(records, labClock.now());
    await loadDemoLab(records, WEDNESDAY);
  }, 60_000);
  afterAll(async () => {
    await records.destroy();
    await database.drop();
  });

  const count = async (sql: string): Promise<number> => {
    const [row] = await records.query<{ n: number }[]>(`select count(*)::int as n from ${sql}`);
    return row!.n;
  };

  it('is there once, however often it is loaded', async () => {
    const before = await Promise.all(['item', 'request', 'record_event', 'task_run'].map(count));
    await loadDemoLab(records, WEDNESDAY + 86_400_000);
    await loadLibrary(records, labClock.now());
    expect(await Promise.all(['item', 'request', 'record_event', 'task_run'].map(count))).toEqual(before);
  });

  it('has a record whose chain holds, and that begins months ago', async () => {
    const check = await verifyRecord(records);
    expect(check.faults).toEqual([]);
    expect(check.events).toBeGreaterThan(500);
  });

  it('has requests in every state', async () => {
    const rows = await records.query<{ state: string }[]>('select distinct state from request');
    expect(rows.map(({ state }) => state).sort()).toEqual([
      'accepted',
      'closed',
      'declined',
      'draft',
      'in-review',
      'in-work',
      'reported',
      'returned',
      'submitted',
      'withdrawn',
    ]);
  });

  it('has finished jobs with results of every piece that counts', async () => {
    expect(await count(`job where state = 'done'`)).toBeGreaterThanOrEqual(30);
    expect(
      await count(
        `specimen where fate = 'tested' and not exists (select 1 from result where specimen_id = specimen.id)`,
      ),
    ).toBe(0);
  });

  it('has recorded curves whose results rest on points of them', async () => {
    const [row] = await records.query<{ n: number; nearest: number }[]>(
      `select count(*)::int as n, min(abs(value / 152 - 1)) as nearest from result where origin = 'reduced' and key = 'peak-stress' and jsonb_array_length(basis -> 'at') > 0`,
    );
    expect(row!.n).toBe(8);
    expect(row!.nearest).toBeLessThan(0.01);
    expect(await count('curve join stored_file on stored_file.id = curve.file_id')).toBe(14);
  });

  it('gives the planner open jobs of every state', async () => {
    const facts = await readPlanFacts(records, WEDNESDAY);
    const states = new Set(facts.jobs.map(({ state }) => state));
    expect([...states].sort()).toEqual(['blocked', 'paused', 'ready', 'rigged', 'running', 'taken', 'waiting']);
  });
});
