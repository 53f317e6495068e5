import 'reflect-metadata';
import { randomUUID } from 'node:crypto';
import type { DataSource } from 'typeorm';
import type { ApiConfig } from '#apps/api/src/config.js';
import { endpointsOf } from '#apps/api/src/platform/endpoints.js';
import type { Endpoint } from '#apps/api/src/platform/endpoints.js';
import { createApi } from '#apps/api/src/platform/create-api.js';
import { hashPassword } from '#apps/api/src/platform/sessions.service.js';
import type { WorkerConfig } from '#apps/worker/src/config.js';
import { startWorker } from '#apps/worker/src/platform/start-worker.js';
import type { Clock } from '#libs/calendar/src/index.js';
import type { Role } from '#libs/contract/src/index.js';
import { addPerson, addTeam, LabRecords, openRecords, setTeams } from '#libs/records/src/index.js';
import { Client } from './client.js';
import { freshDatabase } from './database.js';
import { labClock } from './lab-clock.js';

export const TEST_PASSWORD = 'a password for tests';

/** One of each role, in this team; sign in as `manager@northmoor.example` and so on. */
export const TEST_TEAM = { id: '6f1d2c3b-0000-4000-8000-000000000001', name: 'Frames and forks' };

interface Options {
  /** What is in the database: a person of each role and nothing else, or the whole demo lab. */
  filled?: 'people' | 'demo';
  /** Put the queues on this Redis instead of PostgreSQL. */
  redisUrl?: string;
  /** Leave the worker out. */
  worker?: boolean;
  /** Another clock than that of the stories. */
  clock?: Clock;
  /** Settings of the API, and of the worker where it has more. */
  config?: Partial<ApiConfig & WorkerConfig>;
}

export interface Lab {
  baseUrl: string;
  records: DataSource;
  /** The same as API and worker hold them. */
  acting: LabRecords;
  databaseUrl: string;
  /** Every endpoint of the API, from its code. */
  endpoints: Endpoint[];
  /** A client that is not signed in. */
  visitor(): Client;
  /** @param who a role of the small lab, or a mail address */
  signIn(who: string, password?: string): Promise<Client>;
  stop(): Promise<void>;
}

/** A whole lab for one spec: its own database, API and worker in this process, on a free port of 127.0.0.1. */
export async function startLab({
  filled = 'people',
  redisUrl,
  worker = true,
  clock = labClock,
  config = {},
}: Options = {}): Promise<Lab> {
  const database = await freshDatabase();
  const records = await openRecords(database.url, { poolSize: 20 });
  const acting = new LabRecords(records, clock);
  await (filled === 'demo' ? fillWithDemo(records, clock) : fillWithPeople(records, clock));
  const settings: ApiConfig = { ...QUIET, databaseUrl: database.url, redisUrl, ...config };
  const api = await createApi(settings, acting);
  await api.listen(settings.port, settings.host);
  const working = worker
    ? await startWorker({ ...settings, publicUrl: 'http://localhost', lockMs: 3_000 }, acting)
    : null;
  const baseUrl = await api.getUrl();
  return {
    baseUrl,
    records,
    acting,
    databaseUrl: database.url,
    endpoints: endpointsOf(api),
    visitor: () => new Client(baseUrl),
    signIn: async (who, password = TEST_PASSWORD) => {
      const client = new Client(baseUrl);
      await client.signIn(who.includes('@') ? who : `${who}@northmoor.example`, password);
      return client;
    },
    stop: async () => {
      await working?.stop();
      await api.close();
      await records.destroy();
      await database.drop();
    },
  };
}

const QUIET = { host: '127.0.0.1', port: 0, proxies: 0, log: 'quiet', sessionIdleMin: 60, sessionHours: 8 } as const;

/** A person of each role, and a team for the requester. */
export async function fillWithPeople(records: DataSource, clock = labClock): Promise<void> {
  const passwordHash = await hashPassword(TEST_PASSWORD);
  const roles: Role[] = ['requester', 'technician', 'manager', 'auditor'];
  await records.transaction(async (manager) => {
    await addTeam(manager, TEST_TEAM);
    for (const role of roles) {
      const id = randomUUID();
      await addPerson(manager, {
        id,
        name: `One ${role}`,
        email: `${role}@northmoor.example`,
        roles: [role],
        passwordHash,
        createdAt: clock.now(),
      });
      if (role === 'requester') await setTeams(manager, id, [TEST_TEAM.id]);
    }
  });
}

async function fillWithDemo(records: DataSource, clock: Clock): Promise<void> {
  const { loadDemoLab } = await import('#seed/load-demo-lab.js');
  await loadDemoLab(records, clock.nowMs());
}
