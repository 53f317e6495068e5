import { jest } from '@jest/globals';
import type { JobView } from '#libs/contract/src/index.js';
import { startLab } from '../support/lab.js';
import { addTechnician, benchLab, publishPlan, readyRequest, trainTags } from './bench-lab.js';
import type { BenchLab } from './bench-lab.js';

jest.setTimeout(180_000);

const TRAINS = 12;
const CLIENTS = 50;

let bench: BenchLab;

beforeAll(async () => {
  bench = await benchLab(await startLab({ worker: false }), TRAINS);
  const batches = Array.from({ length: TRAINS }, (_, at) => ({
    ...bench.batch,
    label: `Lot ${at + 1}`,
    specimenCount: 1,
  }));
  await readyRequest(bench, 'Twelve lots', batches);
  await publishPlan(
    bench,
    batches.map((_, at) => trainTags(at + 1)),
  );
});
afterAll(() => bench?.lab.stop());

describe('fifty who ask for the next job at once', () => {
  it('get each job exactly once; the others hear why there is none', async () => {
    const technicians = [];
    for (let at = 0; at < CLIENTS; at++) technicians.push(await addTechnician(bench.lab, `hand-${at}`));
    const answers = await Promise.all(
      technicians.map((each) => each.post<JobView & { type: string }>('/bench/take', {})),
    );
    const taken = answers.filter(({ status }) => status === 200).map(({ body }) => body);
    const refused = answers.filter(({ status }) => status !== 200);
    expect(new Set(taken.map(({ id }) => id)).size).toBe(TRAINS);
    expect(taken).toHaveLength(TRAINS);
    expect(new Set(taken.map(({ frame }) => frame!.id)).size).toBe(TRAINS);
    expect(refused.map(({ status, body }) => [status, body.type])).toEqual(
      Array.from({ length: CLIENTS - TRAINS }, () => [409, '/problems/bench/nothing-to-take']),
    );
    const [{ count }] = await bench.lab.records.query(
      `select count(*)::int as count from record_event where kind = 'job/taken'`,
    );
    expect(count).toBe(TRAINS);
  });

  it('get the same one again when their answer was lost, with or without a key', async () => {
    const again = await addTechnician(bench.lab, 'hand-again');
    const released = await bench.lab.records.query(
      `select job.id, person.email from job join person on person.id = job.technician_id limit 1`,
    );
    const owner = await bench.lab.signIn(released[0].email);
    await owner.post(`/jobs/${released[0].id}/give-back`, { why: 'For the next one' });
    const keyed = () => again.post<JobView>('/bench/take', {}, { headers: { 'Idempotency-Key': 'take-once-0001' } });
    const first = await keyed();
    const [retry, tap] = [await keyed(), await again.post<JobView>('/bench/take', {})];
    expect([first.status, retry.headers.get('Idempotency-Replayed')]).toEqual([200, 'true']);
    expect([retry.body.id, tap.body.id]).toEqual([first.body.id, first.body.id]);
  });
});
