import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { asLab } from './as-lab.js';
import { benchmarksFolder, readArguments, USAGE } from './arguments.js';
import type { Asked } from './arguments.js';
import { benchLab } from './lab/bench-lab.js';
import { runPeer } from './peer/run-peer.js';
import type { Instance } from './read/instance.js';
import { runEngine } from './run-instance.js';
import { lineOf, summaryOf } from './summary.js';
import type { Result } from './summary.js';
import { PUBLISHED_SETS } from './sets.js';
import type { PublishedSet } from './sets.js';

const asked = readArguments(process.argv.slice(2));
if (asked.set === 'lab') await benchLab(asked);
else await benchPublished(asked);

async function benchPublished(asked: Asked): Promise<void> {
  const set = PUBLISHED_SETS[asked.set];
  if (!set)
    throw new Error(
      `no set ${asked.set}; there are ${[...Object.keys(PUBLISHED_SETS), 'lab'].join(', ')}. usage: ${USAGE}`,
    );
  const read = instancesOf(set, asked);
  if (!read) return;
  const everything = asked.all || asked.file !== null || asked.only !== '';
  const instances = read.filter(({ name }) => name.includes(asked.only) && (everything || set.usual(name)));
  const stated = asked.asLab ? instances.map((one) => ({ ...one, problem: asLab(one.problem) })) : instances;
  warmUp(stated);
  const results: Result[] = [];
  for (const instance of stated) {
    results.push(await resultOf(instance, asked));
    if (!asked.json) console.log(lineOf(results.at(-1)!));
  }
  const summary = summaryOf(asked, results);
  console.log(asked.json ? JSON.stringify({ ...summary, results }, null, 1) : JSON.stringify(summary));
}

/** From the file or folder that was named, else from the tree, else from the folder of benchmarks; null where there is none. */
function instancesOf(set: PublishedSet, { file, folder }: Asked): Instance[] | null {
  if (set.kept && !file && !folder) return set.kept();
  const from = folder ?? join(benchmarksFolder(), set.folder);
  if (file || existsSync(from)) return set.read(from, file ?? undefined);
  console.log(`skipped: the published instances are not here (${from}); give --folder or CHECK_DATA`);
  return null;
}

/** The first seconds of a program go to its being compiled; a server has that behind it, so has the measured run. */
function warmUp(instances: readonly Instance[]): void {
  if (instances[0]) runEngine(instances[0].problem, 0.5, 0);
}

async function resultOf({ name, problem, best, proven }: Instance, { seconds, seed, peer }: Asked): Promise<Result> {
  const { value, msToBest, elapsedMs, rounds, evaluations, evaluationsPerSecond } = runEngine(problem, seconds, seed);
  const measured = { value, msToBest, elapsedMs, rounds, evaluations, evaluationsPerSecond };
  return { name, best, proven, ...measured, peer: peer ? await runPeer(problem, seconds) : null };
}
