import 'reflect-metadata';
import { withoutRedis } from '../support/redis.js';
import { killAnything } from './kill-anything.js';

const [rounds = 50, seed = 1] = process.argv.slice(2).map(Number);

/** `npm run test:faults [rounds] [seed]`: the same as the spec, for long. */
const missing = withoutRedis();
console.log(`${rounds} rounds, seed ${seed}, queues on ${missing ? `PostgreSQL (${missing})` : 'Redis'}`);
const {
  rounds: told,
  acknowledged,
  faults,
} = await killAnything({ rounds, seed, redis: missing === null, tell: console.log });
const times = told.map(({ recoveredAfterMs }) => recoveredAfterMs).sort((a, b) => a - b);
console.log(
  `${acknowledged} things were acknowledged; recovery p50 ${times[Math.floor(times.length / 2)]} ms, longest ${times.at(-1)} ms`,
);
faults.forEach((fault) => console.error(fault));
console.log(faults.length === 0 ? 'Nothing was lost, and nothing was done twice.' : `${faults.length} faults.`);
process.exit(faults.length === 0 ? 0 : 1);
