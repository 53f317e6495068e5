import { setTimeout as pause } from 'node:timers/promises';
import type { TaskView } from '#libs/contract/src/index.js';
import { openRecords } from '#libs/records/src/index.js';
import { TEST_PASSWORD } from '../support/lab.js';
import { sequence } from '../support/sequence.js';
import { startTopology } from '../support/topology.js';
import type { Topology } from '../support/topology.js';
import { until } from '../support/until.js';
import { faultsAtTheEnd, faultsNow } from './find-faults.js';
import { fillWithTechnicians, furnish } from './lab-at-work.js';
import { Ledger } from './ledger.js';
import { startPeople } from './people-at-work.js';
import { PersistentClient } from './persistent-client.js';

export interface Round {
  victim: string;
  /** From the kill until every API process serves people again, ms. */
  servedAfterMs: number;
  /** From the kill until work that was announced after it is done, ms. */
  workedAfterMs: number;
  faults: string[];
}

export interface Verdict {
  rounds: Round[];
  /** Acts that the lab acknowledged. */
  acknowledged: number;
  /** What people got done, by what it is. */
  done: Record<string, number>;
  /** What should not have been, in words; those of the rounds are among them. */
  faults: string[];
}

interface Options {
  rounds: number;
  seed: number;
  redis: boolean;
  tell?: (line: string) => void;
}

const WORKED_WITHIN_MS = 120_000;

/**
 * Kills one part after another while people are at work, in an order that follows from the seed. After each kill and at the
 * end it looks whether anything that was acknowledged is missing, or anything was done twice.
 */
export async function killAnything({ rounds, seed, redis, tell = () => {} }: Options): Promise<Verdict> {
  const lab = await startTopology({ apis: 2, workers: 2, redis, fill: fillWithTechnicians });
  const records = await openRecords(lab.databaseUrl, { poolSize: 3 });
  const ledger = new Ledger();
  const random = sequence(seed);
  const told: Round[] = [];
  let people = { stop: async () => {} };
  try {
    people = startPeople(lab.baseUrls, await furnish(lab.baseUrls[0]!, records), ledger);
    for (let nr = 1; nr <= rounds; nr++) {
      await pause(200 + random() * 1_800);
      const round = await killOne(lab, lab.parts[Math.floor(random() * lab.parts.length)]!);
      round.faults.push(...(await until(() => faultsNow(records, ledger).catch(() => null))));
      told.push(round);
      const { victim, servedAfterMs, workedAfterMs, faults } = round;
      tell(
        `round ${nr}: ${victim} killed; people served after ${servedAfterMs} ms, work done after ${workedAfterMs} ms`,
      );
      faults.forEach((fault) => tell(fault));
    }
    await people.stop();
    const ended = lab.endedByThemselves().map((name) => `${name} ended by itself.`);
    const faults = [...ended, ...told.flatMap((round) => round.faults), ...(await faultsAtTheEnd(records, ledger))];
    return { rounds: told, acknowledged: ledger.size, done: countsOf(ledger), faults };
  } finally {
    await people.stop();
    await records.destroy();
    await lab.stop();
  }
}

/** Kills a part, and measures how long it takes until the lab serves people and does its work again. */
async function killOne(lab: Topology, part: Topology['parts'][number]): Promise<Round> {
  const manager = new PersistentClient(lab.baseUrls, 'manager@northmoor.example', TEST_PASSWORD);
  const began = Date.now();
  await part.kill();
  await lab.ready();
  const servedAfterMs = Date.now() - began;
  const asked = await manager.post('/plan/replan', {});
  const task = asked.state === 'done' ? (asked.answer?.body as TaskView | undefined) : undefined;
  const faults = asked.state === 'done' ? [] : [`After ${part.name} was killed nobody could ask for a plan.`];
  if (task) {
    const done = async () => (await manager.get<TaskView>(`/tasks/${task.id}`)).state === 'done';
    await until(done, WORKED_WITHIN_MS).catch(() =>
      faults.push(`After ${part.name} was killed a plan was never made.`),
    );
  }
  return { victim: part.name, servedAfterMs, workedAfterMs: Date.now() - began, faults };
}

function countsOf({ events, results }: Ledger): Record<string, number> {
  const counts: Record<string, number> = { 'results typed': results.length };
  for (const { kind } of events) counts[kind] = (counts[kind] ?? 0) + 1;
  return counts;
}
