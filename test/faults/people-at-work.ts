import { setTimeout as pause } from 'node:timers/promises';
import type {
  BatchBody,
  BenchView,
  JobView,
  Page,
  ReportView,
  RequestLine,
  RequestView,
} from '#libs/contract/src/index.js';
import { REVIEWED } from '../stories/story-steps.js';
import { TEST_PASSWORD, TEST_TEAM } from '../support/lab.js';
import { technicianEmail, TRAINS } from './lab-at-work.js';
import type { Ledger } from './ledger.js';
import { PersistentClient } from './persistent-client.js';

const REST_MS = 60;
const NOTHING_TO_DO_MS = 400;
/** A queue that is long enough to be planned, and short enough to be worked off. */
const MOST_OPEN = 8;

export interface PeopleAtWork {
  /** Lets everybody end what they are at. */
  stop(): Promise<void>;
}

/** A requester, a manager and technicians: each does one thing after the other, and gives nothing up before it is answered. */
export function startPeople(baseUrls: string[], batch: BatchBody, ledger: Ledger): PeopleAtWork {
  let going = true;
  const client = (email: string) => new PersistentClient(baseUrls, email, TEST_PASSWORD);
  const keepGoing = async (act: () => Promise<boolean>) => {
    while (going) {
      const busy = await act().catch((error: unknown) => {
        ledger.complaints.push(String(error));
        return false;
      });
      await pause(busy ? REST_MS : NOTHING_TO_DO_MS);
    }
  };
  const requester = client('requester@northmoor.example');
  const manager = client('manager@northmoor.example');
  const technicians = Array.from({ length: TRAINS }, (_, at) => client(technicianEmail(at + 1)));
  const all = Promise.all([
    keepGoing(() => askForTest(requester, batch, ledger)),
    keepGoing(() => reviewOne(manager, ledger)),
    keepGoing(() => reportOne(manager, ledger)),
    keepGoing(() => replan(manager)),
    ...technicians.map((technician) => keepGoing(() => workOn(technician, ledger))),
  ]);
  return {
    stop: async () => {
      going = false;
      await all;
    },
  };
}

async function linesIn(client: PersistentClient, state: string): Promise<RequestLine[]> {
  return (await client.get<Page<RequestLine>>(`/requests?state=${state}`)).rows;
}

/** Drafts a request and hands it in, unless enough wait. */
async function askForTest(client: PersistentClient, batch: BatchBody, ledger: Ledger): Promise<boolean> {
  if ((await linesIn(client, 'submitted,accepted,in-work')).length >= MOST_OPEN) return false;
  const title = `Bracket ${ledger.drafts.size + 1}`;
  ledger.drafts.set(title, false);
  const drafted = await client.post('/requests', { title, teamId: TEST_TEAM.id, batches: [batch] });
  if (drafted.state !== 'done') throw new Error(`${title} was not drafted: ${JSON.stringify(drafted)}`);
  ledger.drafts.set(title, true);
  const [line] = (await client.get<Page<RequestLine>>(`/requests?q=${encodeURIComponent(title)}`)).rows.filter(
    (row) => row.title === title,
  );
  if (!line) throw new Error(`${title} was acknowledged and is gone.`);
  ledger.note(await client.post(`/requests/${line.id}/submit`, undefined), 'request/submitted', line.id);
  return true;
}

/** Accepts the oldest request, and takes its specimens in. */
async function reviewOne(client: PersistentClient, ledger: Ledger): Promise<boolean> {
  const submitted = (await linesIn(client, 'submitted')).at(-1);
  if (submitted) {
    const path = `/requests/${submitted.id}/accept`;
    ledger.note(await client.post(path, REVIEWED), 'request/accepted', submitted.id);
  }
  for (const { id } of await linesIn(client, 'accepted')) {
    const { batches } = await client.get<RequestView>(`/requests/${id}`);
    const expected = batches.flatMap(({ specimens }) => specimens.filter(({ fate }) => fate === 'expected'));
    if (expected.length === 0) continue;
    const specimenIds = expected.map((specimen) => specimen.id);
    ledger.note(await client.post(`/requests/${id}/arrivals`, { specimenIds }), 'request/specimens-arrived', id);
  }
  return submitted !== undefined;
}

/** Prepares and issues the report of one request that is in review. */
async function reportOne(client: PersistentClient, ledger: Ledger): Promise<boolean> {
  for (const { id } of await linesIn(client, 'in-review')) {
    await client.post(`/requests/${id}/report`, undefined);
    const [report] = (await client.get<RequestView>(`/requests/${id}`)).reports;
    if (report?.state !== 'draft') continue;
    const { version } = await client.get<ReportView>(`/reports/${report.id}`);
    const issued = await client.post(`/reports/${report.id}/issue`, undefined, { 'if-match': `"${version}"` });
    return ledger.note(issued, 'report/authorised', report.id);
  }
  return false;
}

async function replan(client: PersistentClient): Promise<boolean> {
  await client.post('/plan/replan', {});
  return false;
}

/** Takes the next job, or does the next thing on the one that is under way. */
async function workOn(client: PersistentClient, ledger: Ledger): Promise<boolean> {
  const { mine } = await client.get<BenchView>('/bench');
  if (mine[0]) return nextStep(client, await client.get<JobView>(`/jobs/${mine[0].id}`), ledger);
  const taken = await client.post('/bench/take', {});
  if (taken.state !== 'done') return false;
  const after = await client.get<BenchView>('/bench');
  if (after.mine[0]) ledger.note(taken, 'job/taken', after.mine[0].id);
  else ledger.complaints.push('A job was taken, and its technician has none.');
  return true;
}

async function nextStep(client: PersistentClient, job: JobView, ledger: Ledger): Promise<boolean> {
  const act = (path: string, body: unknown = {}) => client.post(`/jobs/${job.id}/${path}`, body);
  const open = job.specimens.find(({ fate }) => fate === 'arrived');
  const step = job.setup.find(({ confirmed }) => !confirmed);
  if (job.state === 'taken' && step) await act('confirm', { tag: step.item.tag });
  else if (job.state === 'rigged') await checkAndStart(act, job, ledger);
  else if (job.state === 'paused') await act('resume');
  else if (open) await test(client, job, open.id, ledger);
  else ledger.note(await act('finish', { conditions: { temperatureC: 23, humidityPct: 50 } }), 'job/done', job.id);
  return true;
}

type Act = (path: string, body?: unknown) => ReturnType<PersistentClient['post']>;

async function checkAndStart(act: Act, job: JobView, ledger: Ledger): Promise<void> {
  const next = job.checks.find(({ done }) => !done);
  const cellId = job.train.find(({ role }) => role === 'load-cell')!.itemId;
  if (!next) ledger.note(await act('start'), 'job/running', job.id);
  else if (next.kind === 'shift-check') await act('shift-check', { cellId, reference: 1, reading: 1, unit: 'kN' });
  else await act('tick', { key: next.key, ...(next.kind === 'value' ? { value: 0 } : {}) });
}

/** Measures a specimen and types its result; each specimen has a figure of its own. */
async function test(client: PersistentClient, job: JobView, specimenId: string, ledger: Ledger): Promise<void> {
  const at = `/jobs/${job.id}/specimens/${specimenId}`;
  await client.put(`${at}/dimensions`, { dimensions: { widthMm: [10, 10, 10], thicknessMm: [4, 4, 4] } });
  const valueN = 2_800 + (ledger.results.length % 100);
  const results = [{ key: 'peak-load', value: valueN / 1_000, unit: 'kN' }];
  const typed = await client.post(`${at}/results`, { results });
  if (typed.state === 'done') ledger.results.push({ specimenId, valueN });
}
