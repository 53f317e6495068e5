import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useSyncExternalStore } from 'react';
import {
  ConnectionError,
  ApiError,
  call,
  isStillInProgress,
  newIdempotencyKey,
  wasDoneAlready,
} from '../../api-client/call.js';
import { api } from '../../api-client/api.js';
import type { Call, Verb } from '../../api-client/api.js';

/** One act at the bench that must arrive, once: kept on this device until the server has answered. */
interface Kept {
  key: string;
  verb: Verb;
  path: string;
  body: unknown;
}

export interface Outbox {
  waiting: number;
  /** The last try found no server. */
  lost: boolean;
}

const STORE = 'loadtrain.bench.outbox';
const FIRST_WAIT_MS = 1000;
const LONGEST_WAIT_MS = 8000;

const settle = new Map<string, { done: (answer: unknown) => void; refused: (error: unknown) => void }>();
const listeners = new Set<() => void>();
let outbox: Outbox = { waiting: read().length, lost: false };
let running = false;

function read(): Kept[] {
  try {
    return JSON.parse(localStorage.getItem(STORE) ?? '[]') as Kept[];
  } catch {
    return [];
  }
}

function write(acts: Kept[], lost = outbox.lost): void {
  localStorage.setItem(STORE, JSON.stringify(acts));
  outbox = { waiting: acts.length, lost };
  for (const tell of listeners) tell();
}

/** Sends what is kept, in order, again and again with the same key until each act has an answer. */
async function run(): Promise<void> {
  if (running) return;
  running = true;
  let waitMs = FIRST_WAIT_MS;
  for (let [act] = read(); act; [act] = read()) {
    try {
      const answer = await call(act, { key: act.key });
      write(read().slice(1), false);
      settle.get(act.key)?.done(answer);
      waitMs = FIRST_WAIT_MS;
    } catch (error) {
      if (mayComeBack(error)) {
        write(read(), true);
        await pause(waitMs);
        waitMs = Math.min(LONGEST_WAIT_MS, waitMs * 2);
        continue;
      }
      write(read().slice(1), false);
      if (wasDoneAlready(error)) settle.get(act.key)?.done(undefined);
      else settle.get(act.key)?.refused(error);
    }
    settle.delete(act.key);
  }
  running = false;
}

function mayComeBack(error: unknown): boolean {
  if (error instanceof ConnectionError || isStillInProgress(error)) return true;
  return error instanceof ApiError && [502, 503, 504].includes(error.problem.status);
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => {
    const timer = setTimeout(go, ms);
    function go() {
      clearTimeout(timer);
      removeEventListener('online', go);
      resolve();
    }
    addEventListener('online', go);
  });
}

/**
 * Sends an act of the bench surely: over a lost network it is repeated with the same key until it is answered, also after
 * a reload of the page.
 *
 * @returns the answer, or undefined when the act was done and its answer is lost; rejects with {@link ApiError} when the server says no
 */
export function sendSurely<Answer>({ verb, path, body }: Call<Answer>): Promise<Answer | undefined> {
  const key = newIdempotencyKey();
  const answered = new Promise<Answer | undefined>((resolve, reject) => {
    settle.set(key, { done: (answer) => resolve(answer as Answer), refused: reject });
  });
  write([...read(), { key, verb, path, body }]);
  void run();
  return answered;
}

/** How many acts still wait for an answer. */
export function useOutbox(): Outbox {
  return useSyncExternalStore(
    (tell) => {
      listeners.add(tell);
      void run();
      return () => listeners.delete(tell);
    },
    () => outbox,
  );
}

function isJob(answer: unknown, id: string): boolean {
  return typeof answer === 'object' && answer !== null && (answer as { id?: unknown }).id === id && 'checks' in answer;
}

/** Sends an act of a job and shows the job as the answer has it. */
export function useJobAct(jobId: string) {
  const client = useQueryClient();
  return useCallback(
    async <Answer>(act: Call<Answer>): Promise<Answer | undefined> => {
      const answer = await sendSurely(act);
      if (isJob(answer, jobId)) client.setQueryData(['jobs', api('GET /jobs/{id}', { id: jobId }).path], answer);
      await client.invalidateQueries({ queryKey: ['jobs'] });
      return answer;
    },
    [client, jobId],
  );
}
