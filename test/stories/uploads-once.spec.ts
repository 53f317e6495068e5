import { randomUUID } from 'node:crypto';
import type { CurveProposalView, ImportView, JobView } from '#libs/contract/src/index.js';
import type { Answer, Client } from '../support/client.js';
import { startLab } from '../support/lab.js';
import { benchLab, check, publishPlan, readyRequest, rig } from './bench-lab.js';
import type { BenchLab } from './bench-lab.js';

let bench: BenchLab;

beforeAll(async () => {
  bench = await benchLab(await startLab({ worker: false }));
});
afterAll(() => bench?.lab.stop());

const FIRST = 'time s;force N;displacement mm\n0;0;0\n1;10;0.1\n2;20;0.2\n';
const SECOND = FIRST.replace('20;', '21;'); // one byte differs

const filesKept = async (): Promise<number> =>
  (await bench.lab.records.query<[{ n: number }]>('select count(*)::int as n from stored_file'))[0].n;

async function runningJob({ technician, batch }: BenchLab): Promise<JobView> {
  await readyRequest(bench, 'Uploads', [{ ...batch, specimenCount: 2 }]);
  await publishPlan(bench);
  const taken = (await technician.post<JobView>('/bench/take', {})).body;
  const checked = await check(technician, await rig(technician, taken));
  return (await technician.post<JobView>(`/jobs/${checked.id}/start`, {})).body;
}

/** Sends one file, then another with the same key, then the first once more. */
async function thrice<Body>(who: Client, path: string, [first, second]: readonly [string, string]) {
  const keyed = { headers: { 'idempotency-key': randomUUID() } };
  const one = await who.post<Body>(path, first, keyed);
  const other: Answer<any> = await who.post(path, second, keyed);
  return { one, other, again: await who.post<Body>(path, first, keyed) };
}

describe('a file that comes with the key of another', () => {
  const refusal = { status: 409, body: { type: '/problems/idempotency-key/other-request' } };

  it('is refused in words, and comes in whole with a key of its own', async () => {
    const { one, other, again } = await thrice<{ id: string; sha256: string }>(
      bench.manager,
      '/files?name=certificate.txt',
      [FIRST, SECOND],
    );
    expect(other).toMatchObject(refusal);
    expect(other.body.detail).toContain('Nothing of this was saved: use a new key.');
    expect([again.body, again.headers.get('idempotency-replayed')]).toEqual([one.body, 'true']);
    const kept = await bench.manager.post<{ id: string; sha256: string }>('/files?name=certificate.txt', SECOND);
    expect(kept.body.sha256).not.toBe(one.body.sha256);
    expect(await filesKept()).toBe(2);
  });

  it('is refused as a curve as well', async () => {
    const job = await runningJob(bench);
    const path = `/jobs/${job.id}/specimens/${job.specimens[0]!.id}/curve?name=curve.csv`;
    const before = await filesKept();
    const { one, other, again } = await thrice<CurveProposalView>(bench.technician, path, [FIRST, SECOND]);
    expect([one.status, again.body.fileId]).toEqual([200, one.body.fileId]);
    expect(other).toMatchObject(refusal);
    expect(await filesKept()).toBe(before + 1);
  });

  it.each(['/items/import', '/requests/import'])('is refused by %s as well', async (path) => {
    const { one, other, again } = await thrice<ImportView>(bench.manager, `${path}?dryRun=true`, ['tag\nA', 'tag\nB']);
    expect(one.status).toBe(200);
    expect(other).toMatchObject(refusal);
    expect(again.headers.get('idempotency-replayed')).toBe('true');
  });

  it('and that broke off on its way uses up no key and is no fault of the server', async () => {
    const key = randomUUID();
    const broken = new ReadableStream({
      start: (sends) => {
        sends.enqueue(new TextEncoder().encode(FIRST));
        setTimeout(() => sends.error(new Error('the line broke')), 50);
      },
    });
    const headers = { 'idempotency-key': key, 'content-type': 'text/plain' };
    const init = { method: 'POST', body: broken, headers, duplex: 'half' } as RequestInit;
    await expect(bench.manager.fetch('/files?name=broken.txt', init)).rejects.toThrow();
    expect((await bench.manager.post('/files?name=broken.txt', FIRST, { headers })).status).toBe(201);
  });
});
