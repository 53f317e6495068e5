import { setTimeout as pause } from 'node:timers/promises';
import type { DataSource } from 'typeorm';
import { DEMO_PASSWORD, openRecords, verifyRecord } from '#libs/records/src/index.js';
import { teamId } from '#seed/load/load-people.js';
import { TEAMS } from '#seed/northmoor/people.js';
import { startTopology } from '../support/topology.js';
import { until } from '../support/until.js';
import { PersistentClient } from './persistent-client.js';

export interface Round {
  victim: string;
  /** From the kill until every API process serves people again, ms. */
  recoveredAfterMs: number;
}

export interface Verdict {
  rounds: Round[];
  acknowledged: number;
  /** What should not have been, in words. */
  faults: string[];
}

interface Written {
  name: string;
  acknowledged: boolean;
}

const TEAM = teamId(TEAMS[0]);
const SETTLED_WITHIN_MS = 180_000;

/**
 * Kills one part after another under load, in an order that follows from the seed, and then looks whether anything that was
 * acknowledged is missing, or anything was done twice.
 */
export async function killAnything({
  rounds,
  seed,
  redis,
  tell = () => {},
}: {
  rounds: number;
  seed: number;
  redis: boolean;
  tell?: (line: string) => void;
}): Promise<Verdict> {
  const lab = await startTopology({ apis: 2, workers: 2, redis });
  const load = startLoad(lab.baseUrls);
  const random = sequence(seed);
  const told: Round[] = [];
  try {
    for (let nr = 1; nr <= rounds; nr++) {
      await pause(200 + random() * 800);
      const victim = lab.parts[Math.floor(random() * lab.parts.length)]!;
      const began = Date.now();
      await victim.kill();
      await lab.ready();
      const round = { victim: victim.name, recoveredAfterMs: Date.now() - began };
      told.push(round);
      tell(`round ${nr}: ${round.victim} killed, all well after ${round.recoveredAfterMs} ms`);
    }
    const written = await load.stop();
    const ended = lab.endedByThemselves().map((name) => `${name} ended by itself.`);
    const records = await openRecords(lab.databaseUrl, { poolSize: 3 });
    const faults = await faultsIn(records, written).finally(() => records.destroy());
    return {
      rounds: told,
      acknowledged: Object.values(written)
        .flat()
        .filter(({ acknowledged }) => acknowledged).length,
      faults: [...ended, ...faults],
    };
  } finally {
    await load.stop();
    await lab.stop();
  }
}

type Kind = 'teams' | 'requests' | 'replans';

/** People at work: each does one thing after the other, and never gives up before it is acknowledged or refused. */
function startLoad(baseUrls: string[]) {
  const written: Record<Kind, Written[]> = { teams: [], requests: [], replans: [] };
  let going = true;
  const manager = () => new PersistentClient(baseUrls, 'ian.marsh@northmoor.example', DEMO_PASSWORD);
  const keepGoing = async (kind: Kind, act: (client: PersistentClient, name: string) => Promise<boolean>) => {
    const client = manager();
    for (let nr = 1; going; nr++) {
      const name = `${kind} ${nr}`;
      const entry = { name, acknowledged: false };
      written[kind].push(entry);
      entry.acknowledged = await act(client, name);
      await pause(20);
    }
  };
  const at = [
    keepGoing('teams', async (client, name) => (await client.post('/teams', { name })).state === 'done'),
    keepGoing(
      'requests',
      async (client, title) => (await client.post('/requests', { title, teamId: TEAM, batches: [] })).state === 'done',
    ),
    keepGoing('replans', async (client) => (await client.post('/plan/replan', {})).state === 'done'),
  ];
  let stopped: Promise<Record<Kind, Written[]>> | null = null;
  const stop = () => {
    going = false;
    return (stopped ??= Promise.all(at).then(() => written));
  };
  return { stop };
}

async function faultsIn(records: DataSource, written: Record<Kind, Written[]>): Promise<string[]> {
  const faults: string[] = [];
  faults.push(...(await miscounted(records, written.teams, `select name from team where name like 'teams %'`)));
  faults.push(
    ...(await miscounted(records, written.requests, `select title as name from request where title like 'requests %'`)),
  );
  await until(async () => (await openTasks(records)) === 0, SETTLED_WITHIN_MS).catch(async () => {
    faults.push(`${await openTasks(records)} tasks were never done.`);
  });
  const twice = await records.query<{ reference: string }[]>(
    'select reference from request group by reference having count(*) > 1',
  );
  faults.push(...twice.map(({ reference }) => `The reference ${reference} was used twice.`));
  return [...faults, ...(await verifyRecord(records)).faults];
}

/** What was acknowledged must be there, and nothing may be there twice. */
async function miscounted(records: DataSource, written: Written[], sql: string): Promise<string[]> {
  const counts = new Map<string, number>();
  for (const { name } of await records.query<{ name: string }[]>(sql)) counts.set(name, (counts.get(name) ?? 0) + 1);
  return written.flatMap(({ name, acknowledged }) => {
    const found = counts.get(name) ?? 0;
    if (found > 1) return [`${name} was made ${found} times.`];
    return acknowledged && found === 0 ? [`${name} was acknowledged and is gone.`] : [];
  });
}

async function openTasks(records: DataSource): Promise<number> {
  const [row] = await records.query<{ open: number }[]>(
    `select count(*)::int as open from task_run where state in ('waiting', 'running') and merged_into is null`,
  );
  return row!.open;
}

/** Numbers in [0, 1) that follow from a seed: the same kills in the same order (Lehmer's generator, 48271 modulo 2³¹ − 1). */
function sequence(seed: number): () => number {
  let state = (seed % 2_147_483_646) + 1;
  return () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
}
