import pg from 'pg';
import { setTimeout as pause } from 'node:timers/promises';

export interface Listener {
  stop(): Promise<void>;
}

interface Hearing {
  channel: string;
  onMessage(payload: string): void;
  /** Called after every (re)connection: what was said meanwhile was not heard. */
  onConnected?(): void;
}

const SHORTEST_PAUSE_MS = 100;
const LONGEST_PAUSE_MS = 5_000;

/** Hears a channel of the database on a connection of its own, and comes back by itself when the connection is lost. */
export function listen(url: string, hearing: Hearing): Listener {
  let stopNow!: () => void;
  let stopped = false;
  const stopRequested = new Promise<void>((resolve) => (stopNow = resolve)).then(() => void (stopped = true));

  const hear = async () => {
    for (let pauseMs = SHORTEST_PAUSE_MS; !stopped; pauseMs = Math.min(pauseMs * 2, LONGEST_PAUSE_MS)) {
      const wasHeard = await hearOnce(url, hearing, stopRequested).catch(() => false);
      if (wasHeard) pauseMs = SHORTEST_PAUSE_MS;
      const waiting = new AbortController();
      await Promise.race([stopRequested, pause(pauseMs, null, { signal: waiting.signal }).catch(() => {})]);
      waiting.abort();
    }
  };

  const done = hear();
  return {
    stop: () => {
      stopNow();
      return done;
    },
  };
}

/** Hears until the connection is lost or somebody asks to stop. A connection that is being made is made first, then closed. */
async function hearOnce(
  url: string,
  { channel, onMessage, onConnected }: Hearing,
  stopRequested: Promise<void>,
): Promise<true> {
  const application_name = `hears ${channel}`;
  const client = new pg.Client({
    connectionString: url,
    application_name,
    keepAlive: true,
    connectionTimeoutMillis: 5_000,
  });
  const gone = new Promise<void>((resolve) => client.once('end', resolve).on('error', () => resolve()));
  client.on('notification', ({ payload }) => onMessage(payload ?? ''));
  try {
    await client.connect();
    await client.query(`listen ${pg.escapeIdentifier(channel)}`);
    onConnected?.();
    await Promise.race([gone, stopRequested]);
    return true;
  } finally {
    await client.end().catch(() => {});
  }
}
