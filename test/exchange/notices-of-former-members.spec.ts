import { randomUUID } from 'node:crypto';
import type { NoticesView, RequestView } from '#libs/contract/src/index.js';
import { addPerson, announce, PersonEntity, setTeams } from '#libs/records/src/index.js';
import { labClock } from '../support/lab-clock.js';
import { startLab, TEST_TEAM } from '../support/lab.js';
import { PostOffice } from '../support/post-office.js';
import { until } from '../support/until.js';
import { benchLab, readyRequest } from '../stories/bench-lab.js';
import type { BenchLab } from '../stories/bench-lab.js';

/** Somebody of the team who stays in it: when this mail has come, all others of the same event had their turn. */
const STAYS = 'colleague';

const office = new PostOffice();
let bench: BenchLab;
let requesterId: string;

beforeAll(async () => {
  const smtpUrl = await office.open();
  bench = await benchLab(await startLab({ config: { smtpUrl, mailFrom: 'Lab <lab@northmoor.example>' } }));
  const { records } = bench.lab;
  await records.transaction(async (manager) => {
    const stays = { id: randomUUID(), name: 'A colleague', email: `${STAYS}@northmoor.example` };
    await addPerson(manager, { ...stays, roles: ['requester'], passwordHash: null, createdAt: labClock.now() });
    await setTeams(manager, stays.id, [TEST_TEAM.id]);
  });
  ({ id: requesterId } = await records.manager.findOneByOrFail(PersonEntity, { email: 'requester@northmoor.example' }));
});
afterEach(() => setTeams(bench.lab.records.manager, requesterId, [TEST_TEAM.id]));
afterAll(async () => {
  await bench?.lab.stop();
  await office.close();
});

async function submitted(title: string): Promise<RequestView> {
  const asked = { title, teamId: TEST_TEAM.id, batches: [bench.batch] };
  const { id } = (await bench.requester.post<RequestView>('/requests', asked)).body;
  return (await bench.requester.post<RequestView>(`/requests/${id}/submit`)).body;
}

const leave = () => setTeams(bench.lab.records.manager, requesterId, []);
const say = (id: string, body: string) => bench.manager.post(`/requests/${id}/messages`, { body });
const heardBy = (who: string, words: string) => office.to(who).some(({ text }) => text.includes(words));
const told = async () => (await bench.requester.get<NoticesView>('/notices')).body.rows;

describe('who was taken out of a team', () => {
  it('hears nothing more of its requests, also of those that they made themselves', async () => {
    const { id } = await submitted('Axle bracket');
    await say(id, 'The first words.');
    await until(async () => heardBy('requester', 'The first words.'));
    await leave();
    await say(id, 'What only the team may know.');
    await until(async () => heardBy(STAYS, 'What only the team may know.'));
    expect(heardBy('requester', 'What only the team may know.')).toBe(false);
    expect((await told()).map(({ sentence }) => sentence)).toEqual(['Axle bracket: The first words.']);
  });

  it('is not mailed in the evening what came before they left', async () => {
    await bench.requester.put('/notices/preferences', { mail: 'daily' });
    const { id } = await submitted('Fork crown');
    await say(id, 'Words for the daily mail.');
    await leave();
    const { records } = bench.lab;
    const task = await records.transaction((manager) => announce(manager, 'send-digest', { personId: requesterId }));
    const { result } = await until(async () => {
      const { body } = await bench.manager.get(`/tasks/${task}`);
      return body.state === 'done' ? body : null;
    });
    expect(result).toEqual({ mailed: 0, because: 'there is nothing new' });
    expect(heardBy('requester', 'Words for the daily mail.')).toBe(false);
    await bench.requester.put('/notices/preferences', { mail: 'at-once' });
  });

  it('is not mailed at the next try what the mail server did not take before they left', async () => {
    const { id } = await submitted('Head tube');
    await say(id, 'Words that were late.');
    await until(async () => heardBy('requester', 'Words that were late.'));
    const [late] = (await told()).filter(({ sentence }) => sentence.endsWith('Words that were late.'));
    await bench.lab.records.query('update notice set mailed_at = null where id = $1', [late!.id]);
    await leave();
    const before = office.to('requester').length;
    const { records } = bench.lab;
    const task = await records.transaction((manager) => announce(manager, 'send-notice', { noticeId: late!.id }));
    await until(async () => (await bench.manager.get(`/tasks/${task}`)).body.state === 'done');
    expect(office.to('requester')).toHaveLength(before);
  });
});

it('a person of the lab who asked in the name of a team still hears of it', async () => {
  const asked = { title: 'Of the manager', teamId: TEST_TEAM.id, batches: [bench.batch] };
  const { id } = (await bench.manager.post<RequestView>('/requests', asked)).body;
  await bench.manager.post(`/requests/${id}/submit`);
  await bench.requester.post(`/requests/${id}/messages`, { body: 'For the manager.' });
  await until(async () => heardBy('manager', 'For the manager.'));
});

it('who is no technician any more hears nothing of the job that they had taken', async () => {
  await readyRequest(bench, 'Taken');
  const { records } = bench.lab;
  const [job] = await records.query<{ id: string }[]>('select id from job order by reference desc limit 1');
  const technician = await records.manager.findOneByOrFail(PersonEntity, { email: 'technician@northmoor.example' });
  await records.query(
    `insert into record_event (id, actor_id, kind, subject_kind, subject_id) values (gen_random_uuid(), $1, 'job/taken', 'job', $2)`,
    [technician.id, job!.id],
  );
  await records.query(`update person set roles = '{requester}' where id = $1`, [technician.id]);
  await bench.manager.post(`/jobs/${job!.id}/abort`, { why: 'The design was changed.' });
  await until(async () => (await bench.manager.get(`/jobs/${job!.id}`)).body.state === 'aborted');
  const rows = await records.query('select kind from notice where person_id = $1', [technician.id]);
  expect(rows).toEqual([]);
});
