import { useQueryClient } from '@tanstack/react-query';
import { createContext, useCallback, useContext, useEffect, useState, useSyncExternalStore } from 'react';
import type { ReactNode } from 'react';
import { api } from '../../api-client/api.js';
import type { Call } from '../../api-client/api.js';
import { Outbox } from './outbox.js';
import type { OutboxState } from './outbox.js';

const Sending = createContext<Outbox | null>(null);

/** Sends the acts of the person who is signed in, on whatever screen that person is. */
export function SendingProvider({ personId, children }: { personId: string; children: ReactNode }) {
  const [outbox] = useState(() => new Outbox(personId));
  useEffect(() => outbox.open(), [outbox]);
  return <Sending.Provider value={outbox}>{children}</Sending.Provider>;
}

function useSending(): Outbox {
  const outbox = useContext(Sending);
  if (!outbox) throw new Error('There is no SendingProvider above this component.');
  return outbox;
}

/** How many acts still wait for an answer. */
export function useOutbox(): OutboxState {
  const outbox = useSending();
  return useSyncExternalStore(outbox.subscribe, outbox.state);
}

/** Sends an act of the bench surely, see {@link Outbox.send}. */
export function useSendSurely(): <Answer>(act: Call<Answer>) => Promise<Answer | undefined> {
  const outbox = useSending();
  return useCallback((act) => outbox.send(act), [outbox]);
}

/** Sends an act of a job and shows the job as the answer has it; after a refusal, as the server has it. */
export function useJobAct(jobId: string) {
  const client = useQueryClient();
  const send = useSendSurely();
  return useCallback(
    async <Answer,>(act: Call<Answer>): Promise<Answer | undefined> => {
      const askAgain = () => client.invalidateQueries({ queryKey: ['jobs'] });
      const answer = await send(act).catch(async (error: unknown) => {
        await askAgain();
        throw error;
      });
      if (isJob(answer, jobId)) client.setQueryData(['jobs', api('GET /jobs/{id}', { id: jobId }).path], answer);
      await askAgain();
      return answer;
    },
    [client, send, jobId],
  );
}

function isJob(answer: unknown, id: string): boolean {
  return typeof answer === 'object' && answer !== null && (answer as { id?: unknown }).id === id && 'checks' in answer;
}
