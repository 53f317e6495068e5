import type { Candidate, Problem } from '#libs/planning/src/index.js';

/**
 * A problem without calendars and roster as a mixed-integer program in CPLEX LP text: who follows whom on which frame, with
 * big-M times; pairs that share a unit are ordered apart. A textbook model, as a general-purpose solver would be given it.
 */
export interface Mip {
  text: string;
  binaries: number;
}

/** Larger ones are not handed over: building them alone would take the time. */
export const MOST_BINARIES = 40_000;

/** @returns null when it would be larger than `MOST_BINARIES` */
export function mipOf(problem: Problem): Mip | null {
  const { jobs, frames } = problem;
  const on = jobs.map((job) => new Map(job.candidates.map((one) => [one.frameId, one])));
  const arcs = frames.reduce((sum, { id }) => sum + (1 + on.filter((map) => map.has(id)).length) ** 2, 0);
  if (arcs > MOST_BINARIES) return null;
  const big = bigM(problem);
  const rows: string[] = [];
  const binaries: string[] = [];
  const into = jobs.map((): string[] => []);
  /** Working time of a job on the frame that it takes, as what is taken from the left side of a row. */
  const lessWork = jobs.map((): string[] => []);
  for (const [f, frame] of frames.entries()) {
    const here = [...jobs.keys()].filter((j) => on[j]!.has(frame.id));
    const arc = (a: number, b: number): string => `x_${f}_${a + 1}_${b + 1}`;
    for (const j of here) {
      const from = [-1, ...here.filter((i) => i !== j)].map((i) => arc(i, j));
      const to = [-1, ...here.filter((i) => i !== j)].map((i) => arc(j, i));
      rows.push(`${from.join(' + ')} - ${to.join(' - ')} = 0`);
      into[j]!.push(...from);
      lessWork[j]!.push(...from.map((x) => `- ${workMin(on[j]!.get(frame.id)!)} ${x}`));
      binaries.push(...from, arc(j, -1));
      for (const i of [-1, ...here.filter((one) => one !== j)]) {
        const gap = setupMin(problem, f, i, j) + workMin(on[j]!.get(frame.id)!);
        rows.push(`c_${j}${i < 0 ? '' : ` - c_${i}`} - ${big} ${arc(i, j)} >= ${gap - big}`);
      }
    }
    if (here.length > 0) rows.push(`${here.map((j) => arc(-1, j)).join(' + ')} <= 1`);
  }
  into.forEach((arcsIn) => rows.push(`${arcsIn.join(' + ')} = 1`));
  rows.push(
    ...timeRows(
      problem,
      lessWork.map((terms) => terms.join(' ')),
      big,
      binaries,
    ),
  );
  const ends = jobs.map((job, j) =>
    problem.objective.kind === 'makespan' ? `m - c_${j} >= 0` : `c_${j} - t_${j} <= ${job.dueMin}`,
  );
  const goal = problem.objective.kind === 'makespan' ? 'm' : jobs.map((job, j) => `${job.weight} t_${j}`).join(' + ');
  const all = [...rows, ...ends].map((row, at) => ` r${at}: ${row}`);
  return {
    text: `Minimize\n obj: ${goal}\nSubject To\n${all.join('\n')}\nBinaries\n ${binaries.join('\n ')}\nEnd\n`,
    binaries: binaries.length,
  };
}

/** Releases, precedence, and pairs that share a unit. */
function timeRows({ jobs }: Problem, lessWork: readonly string[], big: number, binaries: string[]): string[] {
  const at = new Map(jobs.map((job, j) => [job.id, j]));
  const rows = jobs.flatMap((job, j) => [
    `c_${j} ${lessWork[j]!} >= ${job.releaseMin}`,
    ...job.after.map((id) => `c_${j} - c_${at.get(id)!} ${lessWork[j]!} >= 0`),
  ]);
  const units = jobs.map((job) => new Set(job.candidates[0]?.links.flatMap(({ pool }) => pool)));
  for (let i = 0; i < jobs.length; i++) {
    for (let j = i + 1; j < jobs.length; j++) {
      if (![...units[i]!].some((unit) => units[j]!.has(unit))) continue;
      binaries.push(`y_${i}_${j}`);
      rows.push(`c_${j} - c_${i} ${lessWork[j]!} - ${big} y_${i}_${j} >= ${-big}`);
      rows.push(`c_${i} - c_${j} ${lessWork[i]!} + ${big} y_${i}_${j} >= 0`);
    }
  }
  return rows;
}

const workMin = ({ perSpecimenMin, specimens }: Candidate): number => perSpecimenMin * specimens;

function setupMin(problem: Problem, f: number, from: number, to: number): number {
  const { families } = problem.changeover;
  const frame = problem.frames[f]!;
  const of = (j: number): string | null =>
    j < 0 ? frame.rig.family : (problem.jobs[j]!.candidates[0]?.family ?? null);
  const [a, b] = [of(from), of(to)];
  if (!families || a === null || b === null) return 0;
  return families.byFrame[frame.id]![families.families.indexOf(a)]![families.families.indexOf(b)]!;
}

/** No schedule needs to be longer: every job on its slowest frame after its longest setup, one after the other. */
function bigM(problem: Problem): number {
  const work = problem.jobs.reduce((sum, job) => sum + Math.max(...job.candidates.map(workMin)), 0);
  const setups = problem.frames.map(({ id }) => problem.changeover.families?.byFrame[id] ?? []);
  const longest = setups.flat().map((row) => row.reduce((most, min) => (min < 1e6 && min > most ? min : most), 0));
  const release = problem.jobs.reduce((most, job) => Math.max(most, job.releaseMin), 0);
  return release + work + problem.jobs.length * longest.reduce((most, min) => Math.max(most, min), 0);
}
