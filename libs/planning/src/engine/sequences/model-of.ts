import type { FamilyChangeover, Frame, Job, LabObjective, Problem } from '../../problem.js';
import type { SequenceModel } from './model.js';

/** Before every release that there may be. */
const ALWAYS = -0x40000000;

/** The problem as pure sequences, or null when something in it needs more than that. */
export function sequenceModelOf(problem: Problem): SequenceModel | null {
  const { frames, jobs, objective } = problem;
  if (problem.technicians || problem.visits.length > 0 || jobs.length === 0) return null;
  if (!frames.every(isAlwaysOpen) || !jobs.every(isPlain)) return null;
  if (objective.kind === 'lab' && !isSumOverJobs(objective, problem)) return null;
  const work = workOf(problem);
  const { setupAt, setup, families } = setupsOf(frames, problem.changeover.families);
  const familyAt = new Map((problem.changeover.families?.families ?? []).map((family, at) => [family, at]));
  const rates = objective.kind === 'lab' ? objective : null;
  return {
    machines: frames.length,
    jobs: jobs.length,
    work,
    families,
    familyOf: Int32Array.from([
      ...jobs.map((job) => familyAt.get(job.candidates[0]?.family ?? '') ?? families - 1),
      families - 1,
    ]),
    setupAt,
    setup,
    release: Int32Array.from([...jobs.map((job) => job.releaseMin), ALWAYS]),
    hasReleases: jobs.some((job) => job.releaseMin > 0),
    due: Int32Array.from([...jobs.map((job) => job.dueMin), 0]),
    lateRate: Float64Array.from([...jobs.map((job) => job.weight * (rates?.perLateMin ?? 0)), 0]),
    endRate: rates?.perEndMin ?? 0,
    setupRate: rates?.perChangeoverMin ?? 0,
    makespan: objective.kind === 'makespan',
    scaleMin: meanLoadMin(work, frames.length, jobs.length),
  };
}

const isAlwaysOpen = (frame: Frame): boolean => frame.open === null && !frame.down?.length;

function isPlain(job: Job): boolean {
  if (job.after.length > 0 || job.pin || job.hold || job.running || job.candidates.length === 0) return false;
  const [first] = job.candidates;
  const frames = new Set(job.candidates.map(({ frameId }) => frameId));
  return (
    frames.size === job.candidates.length &&
    job.candidates.every((one) => one.links.length === 0 && one.temperatureC === null && one.family === first?.family)
  );
}

const isSumOverJobs = (rates: LabObjective, { published }: Problem): boolean =>
  rates.perLoadHourSquared === 0 && (published === null || (rates.perMovedMin === 0 && rates.perMovedFrame === 0));

function workOf({ frames, jobs }: Problem): Int32Array {
  const machineAt = new Map(frames.map((frame, at) => [frame.id, at]));
  const work = new Int32Array(frames.length * (jobs.length + 1)).fill(-1);
  for (let machine = 0; machine < frames.length; machine++) work[machine * (jobs.length + 1) + jobs.length] = 0;
  jobs.forEach((job, at) => {
    for (const { frameId, perSpecimenMin, specimens } of job.candidates) {
      work[machineAt.get(frameId)! * (jobs.length + 1) + at] = perSpecimenMin * specimens;
    }
  });
  return work;
}

/** Matrices with one more row, from the rig at minute 0, and one more column of zeros; frames that agree share one. */
function setupsOf(
  frames: readonly Frame[],
  changeover: FamilyChangeover | null,
): Pick<SequenceModel, 'setupAt' | 'setup' | 'families'> {
  const size = (changeover?.families.length ?? 0) + 1;
  const placed = new Map<unknown, Map<string | null, number>>();
  const blocks: number[][] = [];
  const setupAt = frames.map((frame) => {
    const matrix = changeover?.byFrame[frame.id];
    const byRig = placed.get(matrix) ?? new Map<string | null, number>();
    placed.set(matrix, byRig);
    const known = byRig.get(frame.rig.family);
    if (known !== undefined) return known;
    const first =
      changeover && frame.rig.family !== null ? matrix?.[changeover.families.indexOf(frame.rig.family)] : undefined;
    const rows = [...(matrix ?? []), first ?? new Array<number>(size - 1).fill(0)];
    byRig.set(frame.rig.family, blocks.length * size * size);
    blocks.push(rows.flatMap((row) => [...row, 0]));
    return (blocks.length - 1) * size * size;
  });
  return { setupAt: Int32Array.from(setupAt), setup: Int32Array.from(blocks.flat()), families: size };
}

function meanLoadMin(work: Int32Array, machines: number, jobs: number): number {
  let total = 0;
  for (let job = 0; job < jobs; job++) {
    let least = Infinity;
    for (let machine = 0; machine < machines; machine++) {
      const min = work[machine * (jobs + 1) + job]!;
      if (min >= 0 && min < least) least = min;
    }
    total += least === Infinity ? 0 : least;
  }
  return Math.max(1, total / machines);
}
