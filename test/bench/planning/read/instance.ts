import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Candidate, Job, Objective, Problem } from '#libs/planning/src/index.js';

/** A published instance as the engine's ordinary problem, with what is known of it. */
export interface Instance {
  name: string;
  problem: Problem;
  /** Best known value; null where none is listed. */
  best: number | null;
  proven: boolean;
}

export interface Known {
  value: number;
  proven: boolean;
}

/** Long enough for every published instance, min; the published plain integers are taken as minutes. */
export const HORIZON_MIN = 10_000_000;

/** Weighted tardiness and nothing else. */
export const TARDINESS: Objective = {
  kind: 'lab',
  perLateMin: 1,
  perChangeoverMin: 0,
  perMovedMin: 0,
  perMovedFrame: 0,
  perEndMin: 0,
  perLoadHourSquared: 0,
};

/** Files of a set whose names fit, in a folder of the given name where there is one, else in the folder itself; by number, then name. */
export function filesIn(folder: string, inner: string, fits: RegExp): string[] {
  const from = existsSync(join(folder, inner)) ? join(folder, inner) : folder;
  return readdirSync(from)
    .filter((name) => fits.test(name))
    .sort((a, b) => a.localeCompare(b, 'en', { numeric: true }))
    .map((name) => join(from, name));
}

/** A problem under the name of its file, with the best known value where the set lists one. */
export function named(
  path: string,
  known: ReadonlyMap<string, Known>,
  problem: Problem,
  name = basename(path).replace(/\.[a-z]+$/, ''),
): Instance {
  const best = known.get(name);
  return { name, problem, best: best?.value ?? null, proven: best?.proven ?? false };
}

/** Best known values of a set, by instance; none where the folder has no list. */
export function readKnown(folder: string): Map<string, Known> {
  if (!existsSync(join(folder, 'bks.csv'))) return new Map();
  const lines = readFileSync(join(folder, 'bks.csv'), 'utf8').trim().split('\n').slice(1);
  return new Map(
    lines.map((line) => {
      const [name, value, optimal] = line.split(',') as [string, string, string];
      return [name, { value: Number(value), proven: optimal === 'yes' }];
    }),
  );
}

export const numbersIn = (text: string): number[] => (text.match(/-?\d+/g) ?? []).map(Number);

export const frameId = (at: number): string => `F${at + 1}`;
export const jobId = (at: number): string => `J${at + 1}`;

/** Machines and jobs in plain figures; every setup family is one job. */
export interface Machines {
  /** [machine][job] min; null where not eligible. */
  work: (number | null)[][];
  /** [machine][from][to] min, or one matrix for all; null without setups. */
  setup: number[][][] | null;
  /** [to] min on every machine before its first job; null when the first is free. */
  firstSetup?: number[] | null;
  weight?: number[];
  due?: number[];
  release?: number[];
}

/** The engine's problem for machines with jobs, setups, due dates and releases. */
export function problemOf(machines: Machines, objective: Objective): Problem {
  const { work, setup, firstSetup } = machines;
  const jobs = work[0]!.length;
  const families = setup
    ? Array.from({ length: jobs + (firstSetup ? 1 : 0) }, (_, at) => (at < jobs ? jobId(at) : 'start'))
    : [];
  const padded = setup?.map((rows) => (firstSetup ? [...rows.map((row) => [...row, 0]), [...firstSetup, 0]] : rows));
  return {
    ...emptyProblem(objective),
    frames: work.map((_, at) => frame(frameId(at), firstSetup ? 'start' : null)),
    jobs: Array.from({ length: jobs }, (_, at) => ({
      ...plainJob(jobId(at)),
      releaseMin: machines.release?.[at] ?? 0,
      dueMin: machines.due?.[at] ?? 0,
      weight: machines.weight?.[at] ?? 0,
      candidates: work.flatMap((row, on) =>
        row[at] === null ? [] : [candidate(frameId(on), row[at]!, setup ? jobId(at) : null)],
      ),
    })),
    changeover: {
      byLinkMin: {},
      checkedLinks: [],
      checkMin: 0,
      rampCPerMin: 1,
      soakMin: 0,
      families: padded
        ? { families, byFrame: Object.fromEntries(work.map((_, at) => [frameId(at), padded[at] ?? padded[0]!])) }
        : null,
    },
  };
}

export const emptyProblem = (objective: Objective): Problem => ({
  horizonMin: HORIZON_MIN,
  frames: [],
  items: [],
  technicians: null,
  jobs: [],
  visits: [],
  changeover: { byLinkMin: {}, checkedLinks: [], checkMin: 0, rampCPerMin: 1, soakMin: 0, families: null },
  objective,
  published: null,
  freezeUntilMin: 0,
});

export const frame = (id: string, family: string | null): Problem['frames'][number] => ({
  id,
  open: null,
  warmUpMin: 0,
  warmUpAfterMin: 0,
  rig: { items: {}, family, temperatureC: null },
});

export const plainJob = (id: string): Job => ({
  id,
  releaseMin: 0,
  dueMin: 0,
  weight: 0,
  after: [],
  candidates: [],
  attended: 'setup',
  authorisation: null,
  hold: false,
  pin: null,
  running: null,
});

export const candidate = (on: string, min: number, family: string | null): Candidate => ({
  frameId: on,
  perSpecimenMin: min,
  specimens: 1,
  links: [],
  family,
  temperatureC: null,
});
