import { performance } from 'node:perf_hooks';
import { DEFAULT_SETTINGS, isNeeds, matchRequest, matchTrains, needsOf } from '#libs/matching/src/index.js';
import type { Ask, Lab, Method, Needs } from '#libs/matching/src/index.js';
import { METHODS } from '#seed/library/methods.js';
import { generatedAsk, generatedLab, PERIOD } from './generated-lab.js';
import { OutOfTime, walk } from './walk.js';

/*
 * Matching on generated labs, beside the plain walk of the product of all lists in the same run, with the same answers compared. What is
 * timed is what the api does for a request on a lab that it has read: the whole answer, on warm code and with the index that a request
 * before it made. The first request, which makes the index, is told apart.
 * Arguments: --requests N (default 200), --walk-requests N (default 20), --walk-seconds S (default 30, for each size),
 * --frames A,B,… (default 10,60,300).
 */

const methods = new Map<string, Method>(METHODS.map((method) => [method.id, method]));

interface Options {
  frames: readonly number[];
  requests: number;
  walkRequests: number;
  walkSeconds: number;
}

function options(argv: readonly string[]): Options {
  const at = (name: string, usual: number) => {
    const found = argv.indexOf(`--${name}`);
    return found === -1 ? usual : Number(argv[found + 1]);
  };
  const sizes = argv.indexOf('--frames');
  const frames = sizes === -1 ? [10, 60, 300] : (argv[sizes + 1] ?? '').split(',').map(Number);
  return {
    frames,
    requests: at('requests', 200),
    walkRequests: at('walk-requests', 20),
    walkSeconds: at('walk-seconds', 30),
  };
}

function needsFor(ask: Ask): Needs {
  const needs = needsOf(ask, methods.get(ask.methodId)!, null);
  if (!isNeeds(needs)) throw new Error(needs.map(({ sentence }) => sentence).join(' '));
  return needs;
}

function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}

function timed(run: () => void): number {
  const start = performance.now();
  run();
  return performance.now() - start;
}

/** Time for the engine to compile what it runs, ms: a server that has been asked a few times before has that behind it. */
const WARM_MS = 1500;

function warmUp(run: (n: number) => void): void {
  const untilMs = performance.now() + WARM_MS;
  for (let n = 0; performance.now() < untilMs; n += 1) run(n);
}

/** Processor time of a run, ms: what is left of the wall time when the machine has other work. */
function worked(run: () => void): number {
  const start = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

function spread(times: number[]): { p50: number; p95: number; most: number } {
  const sorted = [...times].sort((a, b) => a - b);
  return { p50: quantile(sorted, 0.5), p95: quantile(sorted, 0.95), most: sorted.at(-1) ?? NaN };
}

const ms = (value: number) => `${value.toFixed(2)} ms`;
const heapMb = () => {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed / 1e6;
};

function measure(frames: number, requests: number): { lab: Lab; needs: Needs[] } {
  const before = heapMb();
  const lab = generatedLab(frames, frames);
  const own = heapMb();
  const asks = Array.from({ length: requests }, (_, n) => generatedAsk(n));
  const needs = asks.map(needsFor);
  const first = timed(() => matchTrains(lab, needs[0]!, PERIOD));
  warmUp((n) => matchTrains(lab, needs[n % requests]!, PERIOD));
  const found = { candidates: 0, frames: 0 };
  const times = needs.map((each) =>
    timed(() => {
      const { candidates, refusals } = matchTrains(lab, each, PERIOD);
      found.candidates += candidates.length;
      found.frames += frames - refusals.length;
    }),
  );
  const cpu = spread(needs.map((each) => worked(() => matchTrains(lab, each, PERIOD))));
  const written = needs.slice(0, 50).map((each) => timed(() => JSON.stringify(matchTrains(lab, each, PERIOD))));
  const advise = (ask: Ask) => matchRequest(lab, { ask, method: methods.get(ask.methodId)!, material: null }, PERIOD);
  warmUp((n) => advise(asks[n % requests]!));
  const advised = asks.slice(0, 40).map((ask) => timed(() => advise(ask)));
  const match = spread(times);
  const whole = spread(advised);
  const asText = spread(written);
  console.log(`${frames} frames, ${lab.items.length} items, ${requests} requests`);
  console.log(
    `  matching      p50 ${ms(match.p50)}  p95 ${ms(match.p95)}  most ${ms(match.most)}  (first, with the index: ${ms(first)})`,
  );
  console.log(`  processor     p50 ${ms(cpu.p50)}  p95 ${ms(cpu.p95)}  most ${ms(cpu.most)}`);
  console.log(
    `  as JSON       p50 ${ms(asText.p50)}  p95 ${ms(asText.p95)}  most ${ms(asText.most)}  (every sentence written)`,
  );
  console.log(`  with advice   p50 ${ms(whole.p50)}  p95 ${ms(whole.p95)}  most ${ms(whole.most)}`);
  console.log(
    `  answers       ${(found.frames / requests).toFixed(1)} frames and ${(found.candidates / requests).toFixed(1)} trains a request`,
  );
  console.log(
    `  memory        lab ${(own - before).toFixed(1)} MB, index and caches ${(heapMb() - own).toFixed(1)} MB`,
  );
  return { lab, needs };
}

/** The plain walk on the same requests, as many as the time allows. */
function compare(lab: Lab, needs: readonly Needs[], seconds: number): void {
  const untilMs = performance.now() + seconds * 1000;
  const times: number[] = [];
  let [differ, judged, unfinished] = [0, 0, 0];
  for (const each of needs) {
    const plain = { frames: [] as string[], judged: 0 };
    try {
      times.push(timed(() => Object.assign(plain, walk(lab, each, DEFAULT_SETTINGS, PERIOD, untilMs))));
    } catch (error) {
      if (!(error instanceof OutOfTime)) throw error;
      unfinished += 1;
      break;
    }
    judged += plain.judged;
    const mine = [...new Set(matchTrains(lab, each, PERIOD).candidates.map(({ frameId }) => frameId))].sort();
    if (JSON.stringify(mine) !== JSON.stringify(plain.frames)) differ += 1;
  }
  const { p50, most } = spread(times);
  const given = unfinished > 0 ? `, one given up when ${seconds} s were over` : '';
  const told =
    times.length === 0
      ? ''
      : `  p50 ${ms(p50)}  most ${ms(most)}, ${Math.round(judged / times.length)} trains judged a request`;
  console.log(
    `plain walk, ${lab.rigs.length} frames: ${times.length} requests${told}; answers that differ: ${differ}${given}`,
  );
  if (differ > 0) process.exitCode = 1;
}

const asked = options(process.argv.slice(2));
const measured = asked.frames.map((frames) => measure(frames, asked.requests));
// Afterwards: what the walk does with the rules would be in the way of the engine's compiled code, as it never is in a server.
for (const { lab, needs } of measured) compare(lab, needs.slice(0, asked.walkRequests), asked.walkSeconds);
