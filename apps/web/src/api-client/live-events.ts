import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import type { LiveEvent } from '#libs/contract/src/index.js';
import { api } from './api.js';
import { urlOf } from './call.js';
import type { Topic } from './queries.js';

/** Which topics a change of one kind makes stale. */
const TOUCHES: Record<LiveEvent['topic'], readonly Topic[]> = {
  requests: ['requests', 'plan'],
  jobs: ['jobs', 'requests', 'plan'],
  plan: ['plan', 'requests', 'jobs'],
  items: ['items', 'plan', 'jobs'],
  results: ['results', 'jobs', 'requests', 'reports'],
  reports: ['reports', 'requests'],
  tasks: ['tasks', 'status'],
  people: ['people', 'plan'],
  notices: ['notices'],
};

const GATHER_MS = 120;

/** Keeps everything on the screen fresh by the server's live events. Returns whether the connection is up. */
export function useLiveEvents(): boolean {
  const client = useQueryClient();
  const [connected, setConnected] = useState(true);
  useEffect(() => {
    const source = new EventSource(urlOf(api('GET /live')));
    const waiting = new Set<Topic>();
    let timer: ReturnType<typeof setTimeout> | undefined;
    const flush = () => {
      for (const topic of waiting) void client.invalidateQueries({ queryKey: [topic] });
      waiting.clear();
      timer = undefined;
    };
    let wasLost = false;
    source.onopen = () => {
      setConnected(true);
      // What happened while the line was down is not sent again, so everything shown is fetched again.
      if (wasLost) void client.invalidateQueries();
      wasLost = false;
    };
    source.onerror = () => {
      wasLost = true;
      setConnected(false);
    };
    source.addEventListener('change', ({ data }) => {
      for (const topic of TOUCHES[(JSON.parse(String(data)) as LiveEvent).topic] ?? []) waiting.add(topic);
      timer ??= setTimeout(flush, GATHER_MS);
    });
    // The server itself was cut off from the changes for a while.
    source.addEventListener('missed', () => void client.invalidateQueries());
    return () => {
      clearTimeout(timer);
      source.close();
    };
  }, [client]);
  return connected;
}
