import type { DataSource } from 'typeorm';
import { CurrentLab } from '#apps/api/src/platform/current-lab.js';
import {
  BatchEntity,
  entityOf,
  ItemEntity,
  JobEntity,
  LabRecords,
  labSettings,
  openRecords,
  RequestEntity,
  ResultEntity,
  setLabSettings,
  SpecimenEntity,
  touchFacts,
} from '#libs/records/src/index.js';
import { loadDemoLab } from '#seed/load-demo-lab.js';
import { loadLibrary } from '#seed/load/load-library.js';
import { labClock } from '../support/lab-clock.js';
import { freshDatabase } from '../support/database.js';
import type { FreshDatabase } from '../support/database.js';

const TOLD = [JobEntity, RequestEntity, BatchEntity, SpecimenEntity, ItemEntity, ResultEntity].map(
  (entity): [string, new () => { id: string }] => [entity.name, entity],
);
const now = () => ({ askedAtMs: performance.now() });

describe('what an API process keeps of the lab', () => {
  let database: FreshDatabase;
  let records: DataSource;
  let other: DataSource;

  beforeAll(async () => {
    database = await freshDatabase();
    records = await openRecords(database.url, { poolSize: 4 });
    other = await openRecords(database.url, { poolSize: 2 });
    await loadLibrary(records, labClock.now());
    await loadDemoLab(records, Date.parse('2026-11-25T10:30:00Z'));
  }, 60_000);
  afterAll(async () => {
    await Promise.all([records.destroy(), other.destroy()]);
    await database.drop();
  });

  const renamed = (name: string) =>
    other.transaction(async (manager) => {
      const settings = await labSettings(manager);
      const [{ version }] = await manager.query<[{ version: number }]>('select version from lab_setting');
      await setLabSettings(manager, { ...settings, name }, version, labClock.now());
      await touchFacts(manager, 'settings changed');
    });

  it('is the same object while no fact changes, and new as soon as another process changed one', async () => {
    const current = new CurrentLab(new LabRecords(records, labClock));
    const first = await current.asRead();
    expect((await current.asRead()).lab).toBe(first.lab);
    await renamed('Another name');
    const next = await current.asRead(now());
    expect(next.settings.name).toBe('Another name');
    expect(next.lab).not.toBe(first.lab);
  });

  it('is told without a look at the database only to requests that were asked before it was found to hold', async () => {
    const current = new CurrentLab(new LabRecords(records, labClock));
    const first = await current.asRead();
    await renamed('Changed behind its back');
    const asked = now();
    current.stillTrue('of other facts', asked);
    expect(await current.asRead({ askedAtMs: 0 })).toBe(first);
    expect((await current.asRead(asked)).settings.name).toBe('Changed behind its back');
  });

  it('is read once for many who ask at the same time, and anew for one who asks after a change that the reading missed', async () => {
    const current = new CurrentLab(new LabRecords(records, labClock));
    const early = Array.from({ length: 20 }, () => current.asRead(now()));
    const change = renamed('While it was read');
    const seen = await Promise.all(early);
    expect(new Set(seen.map(({ lab }) => lab)).size).toBeLessThanOrEqual(2);
    await change;
    expect((await current.asRead(now())).settings.name).toBe('While it was read');
  });

  it.each(TOLD)('reads rows that come as JSON as TypeORM does: %s', async (_, entity) => {
    const { tableName } = records.getMetadata(entity);
    const told = await records.query<{ row: Record<string, unknown> }[]>(
      `select to_jsonb(one) as row from "${tableName}" one order by id limit 200`,
    );
    const usual = await records.manager.find(entity, { order: { id: 'ASC' }, take: 200 });
    expect(usual.length).toBeGreaterThan(5);
    expect(told.map(({ row }) => entityOf(records.manager, entity, row))).toEqual(usual.map((row) => ({ ...row })));
  });
});
