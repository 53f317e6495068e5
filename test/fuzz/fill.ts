import type { DataSource } from 'typeorm';
import { DEMO_PASSWORD } from '#libs/records/src/index.js';
import { personId, teamId } from '#seed/load/load-people.js';
import type { Known } from './values.js';

/** Who asks. The requester belongs to one team only. */
export const ACTORS = {
  requester: 'sam.whitlock',
  technician: 'priya.raman',
  manager: 'ruth.calloway',
  auditor: 'helen.voss',
} as const;
export type Actor = keyof typeof ACTORS;

export const OWN_TEAM = teamId('Components');
const MARK = 'Not for other eyes';

/** Writes a mark into all that belongs to other teams than the requester's, so that it is known wherever it shows. */
export async function markForeign(records: DataSource): Promise<void> {
  const foreign = `(select id from request where team_id <> '${OWN_TEAM}')`;
  for (const statement of [
    `update request set title = '${MARK} ' || reference, purpose = '${MARK}' where id in ${foreign}`,
    `update batch set label = '${MARK}' where request_id in ${foreign}`,
    `update request_message set body = '${MARK}' where request_id in ${foreign}`,
    `update specimen set condition = '${MARK}' where batch_id in (select id from batch where request_id in ${foreign})`,
    `update report set document = document || '{"title": "${MARK}"}', amendment = '${MARK}' where request_id in ${foreign}`,
  ])
    await records.query(statement);
}

/** What the requester must not be shown: the mark, and the ids of what belongs to other teams. */
export async function secretsOf(records: DataSource): Promise<string[]> {
  const rows = await records.query<{ secret: string }[]>(
    `with foreign_request as (select id from request where team_id <> '${OWN_TEAM}')
     select id::text as secret from foreign_request
     union all select id::text from batch where request_id in (select id from foreign_request)
     union all select id::text from job where request_id in (select id from foreign_request)
     union all select id::text from report where request_id in (select id from foreign_request)
     union all select curve.id::text from curve join job on job.id = curve.job_id where job.request_id in (select id from foreign_request)
     union all select specimen.id::text from specimen join batch on batch.id = specimen.batch_id where batch.request_id in (select id from foreign_request)`,
  );
  return [MARK, ...rows.map(({ secret }) => secret)];
}

/** Ids and objects of the lab, by the names that fields and places of paths have. */
export async function knownOf(records: DataSource): Promise<Known> {
  const idsOf = async (table: string) =>
    (await records.query<{ id: unknown }[]>(`select id from ${table} limit 400`)).map(({ id }) => id);
  const valuesOf = async (column: string, table: string) =>
    (await records.query<{ value: unknown }[]>(`select ${column} as value from ${table} limit 100`)).map(
      ({ value }) => value,
    );
  const ids = {
    requests: await idsOf('request'),
    items: await idsOf('item'),
    frames: await idsOf(`item where kind = 'frame'`),
    jobs: await idsOf(`job order by state <> 'ready'`),
    specimens: await idsOf('specimen'),
    people: await idsOf('person'),
    files: await idsOf('stored_file'),
  };
  const tags = await valuesOf('tag', 'item');
  return {
    ...{
      'requests/id': ids.requests,
      'items/id': ids.items,
      'jobs/id': ids.jobs,
      'people/id': ids.people,
      'files/id': ids.files,
    },
    ...{ 'reports/id': await idsOf('report'), 'curves/id': await idsOf('curve'), 'tasks/id': await idsOf('task_run') },
    ...{
      'methods/id': await idsOf('method'),
      'materials/id': await idsOf('material'),
      'trials/id': await idsOf('trial_plan'),
    },
    ...{ 'nonconformities/id': await idsOf('nonconformity'), 'roster/id': await idsOf('roster_shift') },
    ...{ 'own/id': [...(await idsOf('session')), ...(await idsOf('api_token'))], 'rigs/id': ids.frames },
    ...{
      sid: ids.specimens,
      specimenId: ids.specimens,
      jobId: ids.jobs,
      itemId: ids.items,
      frameId: ids.frames,
      fileId: ids.files,
    },
    ...{ teamId: await idsOf('team'), methodId: await idsOf('method'), materialId: await idsOf('material') },
    ...{ personId: ids.people, technicianId: ids.people, cellId: await idsOf(`item where kind = 'load-cell'`) },
    ...{
      requestId: ids.requests,
      subject: [...ids.requests, ...ids.jobs],
      requests: ids.requests,
      tag: tags,
      cell: tags,
    },
    ...{
      number: await valuesOf('number', 'report'),
      authorisationId: await idsOf('authorisation'),
      faultId: await idsOf('fault'),
    },
    ...{
      ask: await valuesOf('ask', 'batch'),
      asTyped: await valuesOf('as_typed', 'batch'),
      details: await valuesOf('details', 'item'),
    },
    ...{
      ratings: await valuesOf('ratings', 'item'),
      train: await valuesOf('train', 'booking'),
      format: await valuesOf('format', 'curve'),
    },
    data: [...(await valuesOf('data', 'method')), ...(await valuesOf('data', 'material'))],
    ...{ dimensions: await valuesOf('dimensions', 'specimen'), ranges: await valuesOf('ranges', 'calibration') },
    ...{ method: await valuesOf('distinct code', 'method'), material: await valuesOf('code', 'material') },
    ...{
      key: ['peak-load', 'peak-stress', 'modulus', ...(await valuesOf('distinct key', 'result'))],
      unit: ['N', 'kN', 'MPa', 'mm', ''],
    },
  };
}

/** Puts the people back as they were: whoever asks as a manager may well have dismissed them. */
export async function restorePeople(records: DataSource, passwordHash: string): Promise<void> {
  for (const [role, key] of Object.entries(ACTORS)) {
    const set = `active = true, roles = array[$2], password_hash = $3, email = $4`;
    const email = emailOf(role as Actor);
    await records.query(`update person set email = id::text || '@gone.example' where email = $1 and id <> $2`, [
      email,
      personId(key),
    ]);
    await records.query(`update person set ${set} where id = $1`, [personId(key), role, passwordHash, email]);
  }
  const id = personId(ACTORS.requester);
  await records.query('delete from team_member where person_id = $1', [id]);
  await records.query('insert into team_member (person_id, team_id) values ($1, $2)', [id, OWN_TEAM]);
  await records.query('delete from sign_in_attempt');
}

export function emailOf(actor: Actor): string {
  return `${ACTORS[actor]}@northmoor.example`;
}

export const PASSWORD = DEMO_PASSWORD;
