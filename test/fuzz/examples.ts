import type { DataSource } from 'typeorm';
import { JOB_MOVES, REQUEST_MOVES } from '#libs/contract/src/index.js';
import { JobRepository, labSettings } from '#libs/records/src/index.js';
import { personId } from '#seed/load/load-people.js';
import { REVIEWED } from '../stories/story-steps.js';
import { ACTORS, emailOf, OWN_TEAM, PASSWORD } from './fill.js';
import type { Known } from './values.js';

/**
 * Whole bodies and places that the lab would take as things stand, by `@` and the operation: chance alone would hardly ever
 * write a load cell that makes sense, and what is refused at the door tries nothing behind it.
 */
export async function examplesOf(records: DataSource): Promise<Known> {
  const asks = await rows(
    records,
    `select method_id as "methodId", material_id as "materialId", ask, specimen_count as "specimenCount" from batch limit 60`,
  );
  const requests = asks.map((batch, at) => ({ title: `Asked ${at}`, teamId: OWN_TEAM, batches: [batch] }));
  const previews = asks.map(({ specimenCount: _, ...body }) => body);
  const items = await rows(records, `select ${ITEM_COLUMNS} from item limit 200`);
  const { demo: _, ...settings } = await labSettings(records.manager);
  const data = async (table: string) => (await rows(records, `select data from ${table}`)).map((body) => body);
  return {
    '@Session_signIn': [{ email: emailOf('auditor'), password: PASSWORD }],
    '@OwnAccess_changePassword': [{ current: PASSWORD, next: PASSWORD }],
    '@OwnAccess_makeToken': [{ name: 'A program', permissions: ['see-own'], days: 7 }],
    '@People_add': [
      { name: 'Somebody new', email: 'somebody.new@northmoor.example', roles: ['requester'], teamIds: [OWN_TEAM] },
    ],
    '@Settings_set': [{ ...settings, planningSeconds: 0.5 }],
    '@Items_register': items.map((item) => ({ ...item, tag: `${String(item['tag'])}-N` })),
    '@Items_change': items,
    '@Requests_draft': requests,
    '@Requests_save': requests,
    '@Requests_accept': [{ ...REVIEWED, decisionRuleAgreed: true }],
    '@Requests_receive': await rows(
      records,
      `select array_agg(specimen.id) as "specimenIds" from specimen join batch on batch.id = batch_id group by request_id`,
    ),
    '@Matching_preview': previews,
    '@Landing_landing': asks.map((batch) => ({ batches: [batch] })),
    '@Methods_add': await data('method'),
    '@Methods_addMaterial': await data('material'),
    '@Calibration_enter': await rows(records, `select ${CALIBRATION_COLUMNS} from calibration limit 60`),
    ...(await atTheBench(records)),
  };
}

/** For the technician who asks: the steps of what is on the frame now. */
async function atTheBench(records: DataSource): Promise<Known> {
  const mine = await new JobRepository(records.manager).ofTechnician(personId(ACTORS.technician));
  const ids = mine.map(({ train }) => train.map(({ itemId }) => itemId)).flat();
  const tags = await rows(records, `select tag from item where id = any($1)`, [ids]);
  const cellIds = mine.flatMap(({ train }) =>
    train.filter(({ role }) => role === 'load-cell').map(({ itemId }) => itemId),
  );
  return {
    '@Jobs_confirm': tags,
    '@Jobs_shiftCheck': cellIds.map((cellId) => ({ cellId, reference: 500, reading: 500.1, unit: 'N' })),
    '@Jobs_finish': [{ conditions: { temperatureC: 23, humidityPct: 50 }, notTestedWhy: 'Not needed any more' }],
    ...byMove('Jobs', JOB_MOVES, mine),
    ...Object.fromEntries(
      ['confirm', 'standIn', 'shiftCheck', 'tick'].map((act) => [`Jobs_${act}/id`, mine.map(({ id }) => id)]),
    ),
  };
}

/** Ids of what is in the right state, by operation and place. */
export async function placesOf(records: DataSource): Promise<Known> {
  const requests = await rows(records, 'select id, state from request');
  const jobs = await rows(records, `select id, state from job where state = 'blocked'`);
  const ids = async (from: string) => (await rows(records, `select id from ${from}`)).map(({ id }) => id);
  const drafts = await ids(`report where state = 'draft'`);
  const issued = await ids(`report where state = 'issued'`);
  const [mine] = await rows(
    records,
    `select id from job where technician_id = '${personId(ACTORS.technician)}' and state <> 'done'`,
  );
  return {
    ...byMove('Requests', REQUEST_MOVES, requests),
    ...byMove('Jobs', { unblock: JOB_MOVES.unblock }, jobs),
    'Requests_receive/id': await ids(`request where state in ('accepted', 'in-work')`),
    'Requests_save/id': await ids(`request where state in ('draft', 'returned')`),
    ...{
      'Reports_remark/id': drafts,
      'Reports_issue/id': drafts,
      'Reports_amend/id': issued,
      'Reports_file/id': issued,
    },
    'Reports_prepare/id': await ids(`request where state in ('in-review', 'reported')`),
    'Items_closeFault/id': await ids('fault where closed_at is null'),
    'Items_removeWindow/id': await ids('item_window'),
    'Roster_reopen/day': (await rows(records, 'select day::text from closed_day')).map(({ day }) => day),
    'Plan_why/id': (await rows(records, 'select job_id from booking where live and job_id is not null')).map(
      (row) => row['job_id'],
    ),
    ...(mine
      ? { 'Specimens_measure/id': [mine['id']], 'Specimens_type/id': [mine['id']], 'Specimens_mark/id': [mine['id']] }
      : {}),
  };
}

/** Operations that are named as the move that they make. */
function byMove(
  group: string,
  moves: Readonly<Record<string, { from: readonly string[] }>>,
  all: readonly { id?: unknown; state?: unknown }[],
): Known {
  const named = Object.entries(moves).map(([move, { from }]) => {
    const operation = move.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
    return [
      `${group}_${operation}/id`,
      all.filter(({ state }) => from.includes(String(state))).map(({ id }) => id),
    ] as const;
  });
  return Object.fromEntries(named);
}

const ITEM_COLUMNS = `tag, kind, name, model, serial_number as "serialNumber", place, mass_kg as "massKg", length_mm as "lengthMm", ratings,
  temperature_min_c as "temperatureMinC", temperature_max_c as "temperatureMaxC", utilities, needs_calibration as "needsCalibration",
  calibration_interval_months as "calibrationIntervalMonths", details`;

const CALIBRATION_COLUMNS = `standard, certificate_number as "certificateNumber", laboratory, performed_at as "performedAt", ranges, as_found as "asFound"`;

function rows(records: DataSource, sql: string, values: unknown[] = []): Promise<Record<string, unknown>[]> {
  return records.query(sql, values);
}
