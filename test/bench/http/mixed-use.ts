import type { DataSource } from 'typeorm';
import { DEMO_PASSWORD } from '#libs/records/src/index.js';
import { teamId } from '#seed/load/load-people.js';
import type { Call } from './orders.js';

export type Who = 'manager' | 'technician' | 'requester';

export const PEOPLE: Record<Who, string> = {
  manager: 'ruth.calloway@northmoor.example',
  technician: 'tom.ashdown@northmoor.example',
  requester: 'sam.whitlock@northmoor.example',
};

const TEAM = teamId('Components');
const ROUND = 100;

/**
 * What people of a lab do, as often among a hundred as we suppose they do it (our own estimate, no source): mostly looking at
 * lists and at single things, some planning and bench screens, some previews of matching, and one write in twelve.
 */
export async function mixedUse(records: DataSource, cookies: Record<Who, string>): Promise<Call[]> {
  const { requests, own, jobs, previews, history } = await placesIn(records);
  const get = (kind: string, who: Who, paths: string[], times: number) => call(kind, 'GET', who, paths, times);
  const call = (kind: string, method: string, who: Who, paths: string[], times: number, bodies: unknown[] = []) =>
    Array.from({ length: times }, (_, at): Call => {
      const body = bodies.length > 0 ? { body: bodies[at % bodies.length] } : {};
      return { kind, method, path: `/api/v1${paths[at % paths.length]}`, cookie: cookies[who], ...body };
    });
  const drafts = Array.from({ length: 4 }, (_, at) => ({ title: `Draft ${at}`, teamId: TEAM, batches: [] }));
  const calls = [
    ...get('who am I', 'manager', ['/session'], 6),
    ...get('requests, all', 'manager', ['/requests'], 12),
    ...get('requests, own', 'requester', ['/requests', '/requests?state=in-work,accepted'], 10),
    ...get('requests, found', 'manager', ['/requests?q=R-2021', '/requests?state=submitted'], 4),
    ...get('request', 'manager', requests, 16),
    ...get('request, own', 'requester', own, 6),
    ...get('bench', 'technician', ['/bench'], 10),
    ...get('job', 'technician', jobs, 8),
    ...get('plan', 'manager', ['/plan'], 5),
    ...get('items', 'technician', ['/items', '/items?kind=load-cell'], 5),
    ...get('history', 'manager', history, 2),
    ...call('preview', 'POST', 'requester', ['/matching/preview'], 8, previews),
    ...call('draft', 'POST', 'requester', ['/requests'], 4, drafts),
    ...call(
      'message',
      'POST',
      'requester',
      own.map((path) => `${path}/messages`),
      4,
      [{ body: 'When is it due?' }],
    ),
  ];
  if (calls.length !== ROUND) throw new Error(`${calls.length} calls instead of ${ROUND}`);
  return calls.map((_, at) => calls[(at * 37) % ROUND]!); // 37 and 100 have no common factor: every call once, well mixed
}

async function placesIn(records: DataSource) {
  const paths = async (sql: string) => (await records.query<{ path: string }[]>(sql)).map(({ path }) => path);
  return {
    requests: await paths(
      `select '/requests/' || id as path from request where state <> 'draft' order by created_at desc limit 40`,
    ),
    own: await paths(
      `select '/requests/' || id as path from request where team_id = '${TEAM}' and state in ('accepted', 'in-work') order by reference limit 4`,
    ),
    jobs: await paths(
      `select '/jobs/' || id as path from job where state in ('ready', 'taken', 'rigged', 'running') order by reference limit 20`,
    ),
    history: await paths(
      `select '/results/history?method=' || method.code || '&key=' || result.key as path from result join job on job.id = result.job_id
       join batch on batch.id = job.batch_id join method on method.id = batch.method_id group by method.code, result.key order by count(*) desc limit 2`,
    ),
    previews: await records.query<unknown[]>(
      `select method_id as "methodId", material_id as "materialId", ask || jsonb_build_object('specimens', specimen_count) as ask
       from batch join request on request.id = request_id where request.state in ('accepted', 'in-work') limit 8`,
    ),
  };
}

/** Signs everybody in. */
export async function cookiesAt(baseUrl: string): Promise<Record<Who, string>> {
  const entries = Object.entries(PEOPLE).map(async ([who, email]) => {
    const response = await fetch(`${baseUrl}/api/v1/session`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-lab-page': '1' },
      body: JSON.stringify({ email, password: DEMO_PASSWORD }),
    });
    const [set] = response.headers.getSetCookie();
    if (!set) throw new Error(`${email} was not let in.`);
    return [who, set.split(';')[0]!];
  });
  return Object.fromEntries(await Promise.all(entries)) as Record<Who, string>;
}
