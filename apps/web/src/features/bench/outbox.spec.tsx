import { waitFor } from '@testing-library/react';
import { Outbox } from './outbox.js';

const STORE = 'loadtrain.bench.outbox';
const act = (path: string) => ({ verb: 'POST' as const, path, body: { tag: path } });
const kept = () => JSON.parse(localStorage.getItem(STORE) ?? '[]') as { path: string }[];

/** A server that answers each call as the next of these says; an error is a network that is away. */
function server(...answers: (number | Error)[]): { key: string; path: string }[] {
  const calls: { key: string; path: string }[] = [];
  globalThis.fetch = (async (path: string, { headers }: { headers: Record<string, string> }) => {
    calls.push({ key: headers['Idempotency-Key']!, path });
    const answer = answers.shift() ?? 200;
    if (answer instanceof Error) throw answer;
    return { ok: answer === 200, status: answer, text: async () => JSON.stringify({ title: 'Said', status: answer }) };
  }) as unknown as typeof fetch;
  return calls;
}

describe('what is sent from the bench', () => {
  it('is sent in order, and kept no longer than until it is answered', async () => {
    const calls = server();
    const outbox = new Outbox('p1');
    outbox.open();
    await Promise.all([outbox.send(act('/a')), outbox.send(act('/b'))]);
    expect(calls.map(({ path }) => path)).toEqual(['/api/v1/a', '/api/v1/b']);
    expect(kept()).toEqual([]);
  });

  it('is sent again under the same key when the network was away', async () => {
    const calls = server(new TypeError('away'), 200);
    const outbox = new Outbox('p1');
    outbox.open();
    const answered = outbox.send(act('/a'));
    await waitFor(() => expect(outbox.state()).toEqual({ waiting: 1, lost: true }));
    dispatchEvent(new Event('online'));
    await answered;
    expect(calls).toHaveLength(2);
    expect(calls[0]!.key).toBe(calls[1]!.key);
    expect(outbox.state()).toEqual({ waiting: 0, lost: false });
  });

  it('is refused once, and what comes after it is still sent', async () => {
    server(409, 200);
    const outbox = new Outbox('p1');
    outbox.open();
    const [refused, done] = [outbox.send(act('/a')), outbox.send(act('/b'))];
    await expect(refused).rejects.toThrow('Said');
    await done;
    expect(kept()).toEqual([]);
  });

  it('waits for the person whose act it is', async () => {
    const calls = server();
    void new Outbox('p1').send(act('/mine'));
    const other = new Outbox('p2');
    other.open();
    await other.send(act('/theirs'));
    expect(calls.map(({ path }) => path)).toEqual(['/api/v1/theirs']);
    expect(kept().map(({ path }) => path)).toEqual(['/mine']);
    new Outbox('p1').open();
    await waitFor(() => expect(kept()).toEqual([]));
  });

  it('takes out of the list what is answered, and nothing that another window put there', async () => {
    const outbox = new Outbox('p1');
    const calls: string[] = [];
    globalThis.fetch = (async (path: string) => {
      calls.push(path);
      if (calls.length === 1)
        localStorage.setItem(STORE, JSON.stringify([{ ...act('/theirs'), key: 'k', by: 'p2' }, ...kept()]));
      return { ok: true, status: 200, text: async () => '' };
    }) as unknown as typeof fetch;
    outbox.open();
    await outbox.send(act('/mine'));
    expect(kept().map(({ path }) => path)).toEqual(['/theirs']);
  });
});
