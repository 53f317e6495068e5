import type { DataSource } from 'typeorm';
import { verifyRecord } from '#libs/records/src/index.js';
import { until } from '../support/until.js';
import type { Ledger } from './ledger.js';

const SETTLED_WITHIN_MS = 180_000;

/** Whatever must never be, at any moment and under load: looked at after each kill. */
export async function faultsNow(records: DataSource, ledger: Ledger): Promise<string[]> {
  const acknowledged = { events: [...ledger.events], results: [...ledger.results], drafts: new Map(ledger.drafts) };
  return [
    ...(await lostEvents(records, acknowledged.events)),
    ...(await lostResults(records, acknowledged.results)),
    ...(await lostDrafts(records, acknowledged.drafts)),
    ...(await doneTwice(records)),
    ...(await clashes(records)),
    ...(await numbersAmiss(records)),
    ...(await records.transaction('REPEATABLE READ', verifyRecord)).faults,
  ];
}

/** What must be once nobody asks for anything any more: all work done, each piece once in effect. */
export async function faultsAtTheEnd(records: DataSource, ledger: Ledger): Promise<string[]> {
  const faults: string[] = [];
  await until(async () => (await openTasks(records)) === 0, SETTLED_WITHIN_MS).catch(async () => {
    faults.push(`${await openTasks(records)} tasks were never done.`);
  });
  const failed = await records.query<{ name: string; error: string }[]>(
    `select name, error from task_run where state = 'failed'`,
  );
  const unissued = await records.query<{ number: string }[]>(
    `select number from report where state = 'issuing' or (state = 'issued' and not exists (
       select 1 from stored_file where id = report.file_id and encode(sha256(content), 'hex') = report.sha256))`,
  );
  return [
    ...faults,
    ...failed.map(({ name, error }) => `A ${name} failed: ${error}`),
    ...unissued.map(({ number }) => `${number} has no file, or another than its hash says.`),
    ...(await faultsNow(records, ledger)),
    ...ledger.complaints,
  ];
}

async function openTasks(records: DataSource): Promise<number> {
  const [row] = await records.query<{ open: number }[]>(
    `select count(*)::int as open from task_run where state in ('waiting', 'running') and merged_into is null`,
  );
  return row!.open;
}

async function lostEvents(records: DataSource, events: Ledger['events']): Promise<string[]> {
  const rows = await records.query<{ kind: string; subject: string }[]>(
    `select asked.kind, asked.subject from unnest($1::text[], $2::text[]) as asked (kind, subject)
     where not exists (select 1 from record_event where kind = asked.kind and subject_id = asked.subject)`,
    [events.map(({ kind }) => kind), events.map(({ subjectId }) => subjectId)],
  );
  return rows.map(({ kind, subject }) => `${kind} of ${subject} was acknowledged and is gone.`);
}

async function lostResults(records: DataSource, results: Ledger['results']): Promise<string[]> {
  const rows = await records.query<{ specimen: string; found: number[] | null }[]>(
    `select asked.specimen, array_agg(result.value) filter (where result.value is not null) as found
     from unnest($1::uuid[], $2::float8[]) as asked (specimen, value)
     left join result on result.specimen_id = asked.specimen and result.key = 'peak-load'
     group by asked.specimen, asked.value having array_agg(result.value) is distinct from array[asked.value]`,
    [results.map(({ specimenId }) => specimenId), results.map(({ valueN }) => valueN)],
  );
  return rows.map(({ specimen, found }) => `The result of ${specimen} is ${found?.join(' and ') ?? 'gone'}.`);
}

async function lostDrafts(records: DataSource, drafts: ReadonlyMap<string, boolean>): Promise<string[]> {
  const rows = await records.query<{ title: string }[]>('select title from request');
  const counts = new Map<string, number>();
  for (const { title } of rows) counts.set(title, (counts.get(title) ?? 0) + 1);
  return [...drafts].flatMap(([title, acknowledged]) => {
    const found = counts.get(title) ?? 0;
    if (found > 1) return [`${title} was drafted ${found} times.`];
    return acknowledged && found === 0 ? [`${title} was acknowledged and is gone.`] : [];
  });
}

/** Nobody at work here gives anything back or does anything again on purpose. */
async function doneTwice(records: DataSource): Promise<string[]> {
  const rows = await records.query<{ kind: string; subject: string; times: number }[]>(
    `select kind, subject_id as subject, count(*)::int as times from record_event
     where kind in ('request/drafted', 'request/submitted', 'request/accepted', 'request/specimens-arrived', 'request/in-work',
       'request/in-review', 'request/reported', 'job/taken', 'job/rigged', 'job/running', 'job/done', 'report/prepared',
       'report/authorised', 'report/issued')
     group by kind, subject_id having count(*) > 1`,
  );
  return rows.map(({ kind, subject, times }) => `${kind} of ${subject} happened ${times} times.`);
}

/** Two jobs on a frame or with an item at once; one technician with two jobs; two plans in force. */
async function clashes(records: DataSource): Promise<string[]> {
  const atWork = `state in ('taken', 'rigged', 'running', 'paused')`;
  const rows = await records.query<{ what: string; id: string }[]>(
    `select 'frame' as what, frame_id::text as id from job where ${atWork} group by frame_id having count(*) > 1
     union all select 'technician', technician_id::text from job where ${atWork} group by technician_id having count(*) > 1
     union all select 'item', link ->> 'itemId' from job, jsonb_array_elements(train) link where ${atWork} group by link ->> 'itemId' having count(*) > 1
     union all select 'published plan', 'job ' || job_id from booking where live and job_id is not null group by job_id having count(*) > 1
     union all select 'published plan', 'of ' || count(distinct plan_id) from booking where live having count(distinct plan_id) > 1`,
  );
  return rows.map(({ what, id }) => `Two at once: ${what} ${id}.`);
}

/** Numbers of requests, jobs and reports: none twice, none left out, and each report's told in the record. */
async function numbersAmiss(records: DataSource): Promise<string[]> {
  const rows = await records.query<{ fault: string }[]>(
    `with drawn as (
       select 'request' as name, reference as number from request
       union all select 'report', number from report where authorised_at is not null and revision = 1
     ), counted as (
       select name, substring(number from '\\d+$')::int as nr, count(*) as times from drawn group by name, 2
     )
     select name || ' number ' || nr || ' was used ' || times || ' times.' as fault from counted where times > 1
     union all select name || ' numbers ' || min(nr) || ' to ' || max(nr) || ' are ' || count(*) || ' only.' from counted
       group by name having max(nr) - min(nr) + 1 <> count(*)
     union all select number || ' was authorised without a record.' from report where authorised_at is not null and not exists (
       select 1 from record_event where kind = 'report/authorised' and subject_id = report.id::text and after ->> 'number' = report.number)`,
  );
  return rows.map(({ fault }) => fault);
}
