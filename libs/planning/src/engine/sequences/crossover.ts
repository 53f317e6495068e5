import type { Random } from '../random.js';
import type { MachineSequences } from './machine-sequences.js';
import { priceReplace } from './price.js';
import { scanPut } from './scan.js';

type Sequences = readonly (readonly number[])[];

/**
 * Crosses two solutions machine by machine: each machine takes the sequence that one of the two has there, without the jobs that
 * are placed already, from the solution that loses fewer jobs by that. The jobs left over go where they cost least. The
 * building block is the sequence of one machine, because machines differ.
 */
export function crossover(s: MachineSequences, one: Sequences, two: Sequences, random: Random): void {
  const { machines, jobs } = s.model;
  const placed = new Uint8Array(jobs);
  shuffled(machines, random).forEach((machine, at) => {
    const [ofOne, ofTwo] = [one[machine]!.filter((job) => !placed[job]), two[machine]!.filter((job) => !placed[job])];
    const lost = one[machine]!.length - ofOne.length - (two[machine]!.length - ofTwo.length);
    const taken = lost < 0 || (lost === 0 && at % 2 === 0) ? ofOne : ofTwo;
    for (const job of taken) placed[job] = 1;
    s.setSequence(machine, taken);
  });
  for (const job of shuffled(jobs, random)) if (!placed[job]) putBest(s, job);
  s.resum();
}

/**
 * Order crossover for one machine (Davis 1985; cited from memory): a stretch of the one solution stays where it is, and the jobs
 * around it take the order of the other.
 */
export function orderCrossover(s: MachineSequences, [one]: Sequences, [two]: Sequences, random: Random): void {
  const { jobs } = s.model;
  const length = Math.round(jobs * (LEAST_STRETCH + (MOST_STRETCH - LEAST_STRETCH) * random.unit()));
  const at = random.below(jobs - length + 1);
  const stretch = one!.slice(at, at + length);
  const kept = new Set(stretch);
  const rest = two!.filter((job) => !kept.has(job));
  s.setSequence(0, [...rest.slice(0, at), ...stretch, ...rest.slice(at)]);
  s.resum();
}

/** Length of the stretch, as a share of the jobs. */
const LEAST_STRETCH = 0.3;
const MOST_STRETCH = 0.7;

/** Inserts a job where it costs least. */
function putBest(s: MachineSequences, job: number): void {
  const { machines, jobs, work } = s.model;
  // While a job is missing, no sequence fills the row to its end, so the last place can hold the job to be priced.
  const spare = s.stride - 1;
  s.seq[spare] = job;
  let least = Infinity;
  let machine = 0;
  let place = 1;
  for (let to = 0; to < machines; to++) {
    if (work[to * (jobs + 1) + job]! < 0) continue;
    scanPut(s, to, job, 0, least, (q) => {
      const change = priceReplace(s, to, q, q - 1, 0, spare, spare, least);
      if (change < least) [least, machine, place] = [change, to, q];
      return least;
    });
  }
  const at = machine * s.stride + 1;
  const was = Array.from(s.seq.subarray(at, at + s.length[machine]!));
  s.setSequence(machine, was.toSpliced(place - 1, 0, job));
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
