import 'reflect-metadata';
import { parseArgs } from 'node:util';
import { withoutRedis } from '../support/redis.js';
import { killAnything } from './kill-anything.js';

/** `npm run test:faults -- [--rounds 50] [--seed 1] [--queues redis|postgres]`: the same as the spec, for long. */
const { values } = parseArgs({
  options: {
    rounds: { type: 'string', default: '50' },
    seed: { type: 'string', default: '1' },
    queues: { type: 'string', default: withoutRedis() === null ? 'redis' : 'postgres' },
  },
});
const [rounds, seed, redis] = [Number(values.rounds), Number(values.seed), values.queues === 'redis'];
console.log(`${rounds} rounds, seed ${seed}, queues on ${redis ? 'Redis' : 'PostgreSQL'}`);
const verdict = await killAnything({ rounds, seed, redis, tell: console.log });
console.log(`${verdict.acknowledged} acts were acknowledged: ${JSON.stringify(verdict.done)}`);
for (const victim of [...new Set(verdict.rounds.map((round) => round.victim))].sort()) {
  const those = verdict.rounds.filter((round) => round.victim === victim);
  const longest = (of: 'servedAfterMs' | 'workedAfterMs') => Math.max(...those.map((round) => round[of]));
  console.log(
    `${victim}: killed ${those.length} times; people served after ${longest('servedAfterMs')} ms at most, work done after ${longest('workedAfterMs')} ms at most`,
  );
}
verdict.faults.forEach((fault) => console.error(fault));
const failed = verdict.rounds.filter(({ faults }) => faults.length > 0).length;
const atTheEnd = verdict.faults.length > 0 && failed === 0 ? 1 : 0;
console.log(`${verdict.rounds.length - failed} passed, ${failed + atTheEnd} failed`);
process.exit(verdict.faults.length === 0 ? 0 : 1);
