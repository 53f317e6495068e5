import { randomUUID } from 'node:crypto';
import type { DataSource } from 'typeorm';
import {
  announce,
  append,
  drawNumber,
  drift,
  factsChangedSince,
  factsStamp,
  migrate,
  openRecords,
  RequestMessageEntity,
  TaskRunEntity,
  touchFacts,
  verifyRecord,
} from '#libs/records/src/index.js';
import type { EventName } from '#libs/records/src/index.js';
import { freshDatabase } from '../support/database.js';
import type { FreshDatabase } from '../support/database.js';
import { labClock } from '../support/lab-clock.js';

describe('the records on a real database', () => {
  let database: FreshDatabase;
  let records: DataSource;

  beforeAll(async () => {
    database = await freshDatabase();
    records = await openRecords(database.url, { poolSize: 8 });
  });
  afterAll(async () => {
    await records.destroy();
    await database.drop();
  });

  const happened = (kind: EventName) => ({
    actorId: null,
    kind,
    subjectKind: 'day',
    subjectId: 'lab',
    at: labClock.now(),
  });
  const sql = <Row>(text: string) => records.query<Row[]>(text);

  it('have a migration for everything that the entities say', async () => {
    expect((await drift(records)).up).toEqual([]);
  });

  it('keep whatever is referred to: a reference to nothing is refused, and none is without a key but those that outlive theirs', async () => {
    const nothing = { requestId: randomUUID(), authorId: randomUUID() };
    const lost = records.manager.insert(RequestMessageEntity, {
      id: randomUUID(),
      ...nothing,
      body: 'Hello?',
      at: labClock.now(),
    });
    await expect(lost).rejects.toThrow('fk_request_message_');
    const loose = await sql<{ at: string }>(
      `select attrelid::regclass || '.' || attname as at from pg_attribute join pg_class on pg_class.oid = attrelid
       where relnamespace = 'public'::regnamespace and relkind = 'r' and atttypid = 'uuid'::regtype and attname <> 'id' and not attisdropped
         and not exists (select 1 from pg_constraint where conrelid = attrelid and contype = 'f' and conkey = array[attnum]) order by 1`,
    );
    expect(loose.map(({ at }) => at)).toEqual([
      'idempotency_key.claim_id',
      'idempotency_key.person_id',
      'task_run.merged_into',
      'webhook_delivery.event_id',
    ]);
  });

  it('take the time from the database only where it measures between rows that it wrote itself', async () => {
    const measured = await sql<{ at: string }>(
      `select table_name || '.' || column_name as at from information_schema.columns
       where table_schema = 'public' and column_default like '%now()%' order by 1`,
    );
    expect(measured.map(({ at }) => at)).toEqual([
      'api_token.created_at',
      'fact_change.at',
      'idempotency_key.claimed_at',
      'idempotency_key.created_at',
      'session.created_at',
      'session.seen_at',
      'sign_in_attempt.at',
      'task_run.announced_at',
      'task_run.due_at',
    ]);
  });

  it('migrate once, whoever else does at the same time', async () => {
    const empty = await freshDatabase();
    const two = await Promise.all([openRecords(empty.url), openRecords(empty.url)]);
    await two[0].query('drop schema public cascade');
    await two[0].query('create schema public');
    const ran = await Promise.all(two.map(migrate));
    expect(ran.filter((names) => names.length > 0)).toHaveLength(1);
    await Promise.all(two.map((one) => one.destroy()));
    await empty.drop();
  });

  describe('keep a record that', () => {
    it('numbers events without a gap, whatever fails in between and however many write at once', async () => {
      const write = (nr: number) =>
        records.transaction(async (manager) => {
          await append(manager, happened('calendar/reopened'));
          await append(manager, happened('calendar/closed'));
          if (nr % 3 === 0) throw new Error('this one is taken back');
        });
      await Promise.allSettled(Array.from({ length: 24 }, (_, nr) => write(nr)));
      const rows = await sql<{ seq: string }>('select seq from record_event order by seq');
      expect(rows.map(({ seq }) => Number(seq))).toEqual(Array.from({ length: 32 }, (_, nr) => nr + 1));
      expect(await verifyRecord(records)).toEqual({ events: 32, faults: [] });
    });

    it('is refused to be changed, shortened or emptied', async () => {
      for (const attempt of [
        `update record_event set why = 'another reason' where seq = 5`,
        'delete from record_event where seq = 5',
        'truncate record_event',
      ]) {
        await expect(records.query(attempt)).rejects.toThrow('The record is only added to.');
      }
    });

    it('shows what was tampered with behind the back of the database', async () => {
      const tampered = async (change: string) => {
        const runner = records.createQueryRunner();
        await runner.startTransaction();
        await runner.query('set local session_replication_role = replica'); // triggers off
        await runner.query(change);
        const check = await verifyRecord(runner.manager);
        await runner.rollbackTransaction();
        await runner.release();
        return check.faults;
      };
      expect(await tampered(`update record_event set why = 'x' where seq = 5`)).toEqual([
        'Event 5 was changed after it was written.',
      ]);
      expect(await tampered('delete from record_event where seq = 5')).toEqual([
        'Between event 4 and event 6 something is missing.',
      ]);
      expect(await tampered('delete from record_event where seq = 32')).toEqual([
        'The record should end with event 32, it ends with 31.',
      ]);
    });
  });

  it('draw numbers without a gap', async () => {
    const draw = (fails: boolean) =>
      records.transaction(async (manager) => {
        const drawn = await drawNumber(manager, 'report-2026');
        if (fails) throw new Error('taken back');
        return drawn;
      });
    const drawn = await Promise.allSettled([false, true, false, false, true, false].map(draw));
    const kept = drawn.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []));
    expect(kept.sort()).toEqual([1, 2, 3, 4]);
  });

  it('announce nothing that was taken back', async () => {
    const id = randomUUID();
    await records.transaction((manager) => announce(manager, 'issue-report', { reportId: id }));
    const failed = records.transaction(async (manager) => {
      await announce(manager, 'issue-report', { reportId: 'never' });
      throw new Error('taken back');
    });
    await expect(failed).rejects.toThrow('taken back');
    const runs = await records.manager.find(TaskRunEntity);
    expect(runs.map(({ name, payload, state }) => ({ name, payload, state }))).toEqual([
      { name: 'issue-report', payload: { reportId: id }, state: 'waiting' },
    ]);
  });

  it('know which facts a reader had not seen, also those that were on their way when it looked', async () => {
    const slow = records.createQueryRunner();
    await slow.startTransaction();
    await touchFacts(slow.manager, 'item LC-05-2 failed');
    const stamp = await records.transaction('REPEATABLE READ', factsStamp);
    expect(await factsChangedSince(records.manager, stamp)).toBe(false);
    await slow.commitTransaction();
    await slow.release();
    expect(await factsChangedSince(records.manager, stamp)).toBe(true);
    const later = await records.transaction('REPEATABLE READ', factsStamp);
    expect(await factsChangedSince(records.manager, later)).toBe(false);
  });
});
