import type { Random } from '../random.js';
import type { Lanes } from './lanes.js';
import { priceReplace } from './price.js';
import { scanPut } from './scan.js';

type Sequences = readonly (readonly number[])[];

/**
 * Fills the lanes from two plans. Between lanes that differ, a good sequence of one lane is what a plan consists of, so each lane
 * takes over what one of the two has there, without the jobs that stand already: from the plan that loses fewer by that. The jobs
 * left over go where they cost least.
 */
export function cross(s: Lanes, one: Sequences, two: Sequences, random: Random): void {
  const { lanes, jobs } = s.model;
  const placed = new Uint8Array(jobs);
  shuffled(lanes, random).forEach((lane, at) => {
    const [ofOne, ofTwo] = [one[lane]!.filter((job) => !placed[job]), two[lane]!.filter((job) => !placed[job])];
    const lost = one[lane]!.length - ofOne.length - (two[lane]!.length - ofTwo.length);
    const taken = lost < 0 || (lost === 0 && at % 2 === 0) ? ofOne : ofTwo;
    for (const job of taken) placed[job] = 1;
    s.setLane(lane, taken);
  });
  for (const job of shuffled(jobs, random)) if (!placed[job]) putBest(s, job);
  s.resum();
}

/**
 * Fills the only lane from two plans: a stretch of the one stays where it is, and the other's order fills the places around it (order
 * crossover, Davis 1985; cited from memory).
 */
export function crossLane(s: Lanes, [one]: Sequences, [two]: Sequences, random: Random): void {
  const { jobs } = s.model;
  const length = Math.round(jobs * (LEAST_STRETCH + (MOST_STRETCH - LEAST_STRETCH) * random.unit()));
  const at = random.below(jobs - length + 1);
  const stretch = one!.slice(at, at + length);
  const kept = new Set(stretch);
  const rest = two!.filter((job) => !kept.has(job));
  s.setLane(0, [...rest.slice(0, at), ...stretch, ...rest.slice(at)]);
  s.resum();
}

/** Which part of a sequence is taken over as it stands. */
const LEAST_STRETCH = 0.3;
const MOST_STRETCH = 0.7;

/** Puts a job that stands nowhere where it costs least. */
function putBest(s: Lanes, job: number): void {
  const { lanes, jobs, work } = s.model;
  // While a job is missing no lane reaches its last place: there it can be priced.
  const spare = s.stride - 1;
  s.seq[spare] = job;
  let least = Infinity;
  let lane = 0;
  let place = 1;
  for (let to = 0; to < lanes; to++) {
    if (work[to * (jobs + 1) + job]! < 0) continue;
    scanPut(s, to, job, 0, least, (q) => {
      const change = priceReplace(s, to, q, q - 1, 0, spare, spare, least);
      if (change < least) [least, lane, place] = [change, to, q];
      return least;
    });
  }
  const at = lane * s.stride + 1;
  const was = Array.from(s.seq.subarray(at, at + s.length[lane]!));
  s.setLane(lane, was.toSpliced(place - 1, 0, job));
}

/** The numbers below `count` in random order. */
function shuffled(count: number, random: Random): number[] {
  const all = Array.from({ length: count }, (_, at) => at);
  for (let at = count - 1; at > 0; at--) {
    const other = random.below(at + 1);
    [all[at], all[other]] = [all[other]!, all[at]!];
  }
  return all;
}
