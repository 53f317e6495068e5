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

const LONGEST_PAUSE_MS = 5_000;

/** Hears a channel of the database on a connection of its own, and comes back by itself when the connection is lost. */
export function listen(url: string, { channel, onMessage, onConnected }: Hearing): Listener {
  let stopped = false;
  let client: pg.Client | null = null;

  const hearOnce = async () => {
    client = new pg.Client({ connectionString: url, application_name: `hears ${channel}`, keepAlive: true });
    const gone = new Promise<void>((resolve) => client!.once('end', resolve).once('error', () => resolve()));
    client.on('error', () => {}); // reported through `gone`
    client.on('notification', ({ payload }) => onMessage(payload ?? ''));
    await client.connect();
    await client.query(`listen ${pg.escapeIdentifier(channel)}`);
    onConnected?.();
    await gone;
  };

  const hear = async () => {
    for (let pauseMs = 100; !stopped; pauseMs = Math.min(pauseMs * 2, LONGEST_PAUSE_MS)) {
      const started = Date.now();
      await hearOnce().catch(() => {});
      await client?.end().catch(() => {});
      if (Date.now() - started > LONGEST_PAUSE_MS) pauseMs = 100;
      if (!stopped) await pause(pauseMs);
    }
  };

  const done = hear();
  return {
    stop: async () => {
      stopped = true;
      await client?.end().catch(() => {});
      await done;
    },
  };
}
