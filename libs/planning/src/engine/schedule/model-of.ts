import { nearness } from '../../problem.js';
import type {
  Candidate,
  Job,
  LabObjective,
  LinkNeed,
  Problem,
  PublishedBooking,
  Technician,
  Window,
} from '../../problem.js';
import { penalties } from '../../cost.js';
import { keptBookings } from '../../kept.js';
import { ALWAYS, runningWindows, workingWindows } from '../../windows.js';
import type { ScheduleModel } from './model.js';

const OFF: LabObjective = {
  kind: 'lab',
  perLateMin: 0,
  perChangeoverMin: 0,
  perMovedMin: 0,
  perMovedFrame: 0,
  perEndMin: 0,
  perLoadHourSquared: 0,
};

/** Air of the lab, °C, that a chamber starts from and that jobs without a temperature run in (ISO 291, atmosphere 23/50). */
export const AMBIENT_C = 23;

/** Latest minute at which the longest setup that a pinned job can need has to begin, so that its work can begin in time. */
function pinFromMin(problem: Problem, job: Job, frameId: string | undefined, startMin: number): number {
  const frame = problem.frames.find(({ id }) => id === frameId);
  const candidate = job.candidates.find((one) => one.frameId === frameId);
  if (startMin < 0 || !frame || !candidate) return -1;
  const setupMin = longestSetupMin(problem, candidate);
  const before = workingWindows(frame).filter(
    (window) => Math.min(window.endMin, startMin) - window.startMin >= setupMin,
  );
  const last = before.at(-1);
  return last && setupMin > 0 ? Math.max(0, Math.min(last.endMin, startMin) - setupMin) : startMin;
}

function longestSetupMin({ changeover }: Problem, candidate: Candidate): number {
  const links = candidate.links.reduce((sum, { link }) => sum + (changeover.byLinkMin[link] ?? 0), 0);
  const check = candidate.links.some(({ link }) => changeover.checkedLinks.includes(link)) ? changeover.checkMin : 0;
  const differenceC = candidate.temperatureC === null ? 0 : Math.abs(candidate.temperatureC - AMBIENT_C);
  const chamber = differenceC > 0 ? Math.ceil(differenceC / changeover.rampCPerMin) + changeover.soakMin : 0;
  const to = changeover.families?.families.indexOf(candidate.family ?? '') ?? -1;
  const families = (changeover.families?.byFrame[candidate.frameId] ?? []).map((row) => row[to] ?? 0);
  return links + check + chamber + Math.max(0, ...families);
}

/** Release of a job that waits for one that is not planned, min. */
export const NOT_IN_HORIZON = 0x3fffffff;

/** The model together with what its numbers stand for. */
export interface Compiled {
  model: ScheduleModel;
  /** The jobs that are planned, in the model's order. */
  jobs: readonly Job[];
  links: readonly string[];
}

/** Turns a checked problem into flat arrays. Held and running jobs, and jobs without candidates, are not among the tasks. */
export function compile(problem: Problem): Compiled {
  const jobs = problem.jobs.filter((job) => !job.hold && !job.running && candidatesOf(job).length > 0);
  const links = [...new Set(allLinks(problem))];
  const index = <T extends { id: string }>(list: readonly T[]): Map<string, number> =>
    new Map(list.map((one, at) => [one.id, at]));
  const at = {
    frame: index(problem.frames),
    unit: index(problem.items),
    job: index(jobs),
    link: new Map(links.map((l, x) => [l, x])),
  };
  const rates = problem.objective.kind === 'lab' ? problem.objective : OFF;
  const model = {
    frames: problem.frames.length,
    units: problem.items.length,
    links: links.length,
    technicians: problem.technicians?.length ?? 0,
    jobs: jobs.length,
    visits: problem.visits.length,
    horizonMin: problem.horizonMin,
    ...windowsOf(problem),
    ...jobsOf(problem, jobs, at, rates),
    ...candidatesIn(problem, jobs, at),
    ...changeoverOf(problem, links),
    ...visitsOf(problem, at.unit),
    publishedVisit: publishedVisits(problem),
    ...startOf(problem, links, at),
    leastStintMin: problem.leastStintMin ?? 0,
    makespan: problem.objective.kind === 'makespan',
    changeoverRate: rates.perChangeoverMin,
    movedRate: rates.perMovedMin,
    movedFrameCost: rates.perMovedFrame,
    endRate: rates.perEndMin,
    loadRate: rates.perLoadHourSquared,
  } satisfies Omit<ScheduleModel, 'unplacedCost' | 'missRate'>;
  const charged = penalties(problem);
  return { model: { ...model, unplacedCost: charged.unplaced, missRate: charged.perMissedMin }, jobs, links };
}

type Lookup = Record<'frame' | 'unit' | 'job' | 'link', ReadonlyMap<string, number>>;

/** A pinned job keeps only the candidates on the frame of its pin. */
const candidatesOf = (job: Job): readonly Candidate[] =>
  job.pin ? job.candidates.filter(({ frameId }) => frameId === job.pin!.frameId) : job.candidates;

function* allLinks(problem: Problem): Generator<string> {
  for (const job of problem.jobs) {
    for (const candidate of job.candidates) for (const { link } of candidate.links) yield link;
    yield* Object.keys(job.running?.items ?? {});
  }
  for (const frame of problem.frames) yield* Object.keys(frame.rig.items);
}

/** Running counts: [0, a.length, a.length + b.length, …]. */
function offsets(lists: readonly { length: number }[]): Int32Array {
  const at = new Int32Array(lists.length + 1);
  lists.forEach((list, x) => (at[x + 1] = at[x]! + list.length));
  return at;
}

function windowsOf(
  problem: Problem,
): Pick<ScheduleModel, 'windows' | 'frameAt' | 'runAt' | 'unitAt' | 'shiftAt' | 'frameAlways' | 'unitAlways'> {
  const lists: Window[][] = [
    ...problem.frames.map(workingWindows),
    ...problem.frames.map(runningWindows),
    ...problem.items.map((item) => [...(item.usable ?? [ALWAYS])]),
    ...(problem.technicians ?? []).map((who) => [...who.shifts]),
  ];
  const all = offsets(lists);
  const frames = problem.frames.length;
  const items = problem.items.length;
  return {
    windows: Int32Array.from(lists.flat().flatMap(({ startMin, endMin }) => [startMin, endMin])),
    frameAt: all.slice(0, frames + 1),
    runAt: all.slice(frames, 2 * frames + 1),
    unitAt: all.slice(2 * frames, 2 * frames + items + 1),
    shiftAt: all.slice(2 * frames + items),
    unitAlways: Uint8Array.from(problem.items, (item) => (item.usable === null ? 1 : 0)),
    frameAlways: Uint8Array.from(problem.frames, (frame) => (frame.open === null && !frame.down?.length ? 1 : 0)),
  };
}

function jobsOf(problem: Problem, jobs: readonly Job[], at: Lookup, rates: LabObjective) {
  const { technicians } = problem;
  const after = jobs.map((job) => job.after.flatMap((id) => at.job.get(id) ?? []));
  const kept = new Map(keptBookings(problem).map((booking) => [booking.jobId, booking]));
  const pinStart = jobs.map((job) => job.pin?.startMin ?? kept.get(job.id)?.startMin ?? -1);
  const published = new Map(problem.published?.bookings.map((booking) => [booking.jobId, booking]));
  return {
    release: Int32Array.from(jobs, (job) => Math.max(job.releaseMin, runningBefore(problem, job))),
    due: Int32Array.from(jobs, (job) => job.dueMin),
    lateRate: Float64Array.from(jobs, (job) => job.weight * rates.perLateMin),
    throughout: Uint8Array.from(jobs, (job) => (job.attended === 'throughout' ? 1 : 0)),
    ...skillsOf(technicians ?? [], jobs),
    afterAt: offsets(after),
    after: Int32Array.from(after.flat()),
    pinStart: Int32Array.from(pinStart),
    pinFrom: Int32Array.from(jobs, (job, j) =>
      pinFromMin(problem, job, kept.get(job.id)?.frameId ?? job.pin?.frameId, pinStart[j]!),
    ),
    pinned: Int32Array.from(jobs.keys())
      .filter((j) => pinStart[j]! >= 0)
      .sort((a, b) => pinStart[a]! - pinStart[b]!),
    publishedFrame: Int32Array.from(jobs, (job) => at.frame.get(published.get(job.id)?.frameId ?? '') ?? -1),
    publishedStart: Int32Array.from(jobs, (job) => published.get(job.id)?.startMin ?? -1),
    publishedSetup: Int32Array.from(jobs, (job) => published.get(job.id)?.setupStartMin ?? -1),
    publishedTechnician: Int32Array.from(jobs, (job) => {
      const t = technicians?.findIndex(({ id }) => id === published.get(job.id)?.technicianId) ?? -1;
      return t >= 0 && mayRun(technicians![t]!, job) ? t : -1;
    }),
    publishedUnit: unitsIn(jobs, published, at),
    nearness: Float64Array.from(jobs, (job) => nearness(published.get(job.id)?.startMin ?? Infinity)),
    keepUnit: unitsIn(jobs, kept, at),
  };
}

/** [job · links + link] the unit that a booking of the job names; −1 for none. */
function unitsIn(jobs: readonly Job[], bookings: ReadonlyMap<string, PublishedBooking>, at: Lookup): Int32Array {
  const units = new Int32Array(jobs.length * at.link.size).fill(-1);
  jobs.forEach((job, j) => {
    for (const [link, item] of Object.entries(bookings.get(job.id)?.items ?? {})) {
      const x = at.link.get(link);
      if (x !== undefined) units[j * at.link.size + x] = at.unit.get(item) ?? -1;
    }
  });
  return units;
}

/** A job that comes after running ones waits for their end; one that comes after what is not planned cannot come at all. */
function runningBefore(problem: Problem, job: Job): number {
  if (job.after.length === 0) return -Infinity;
  const before = problem.jobs.filter(({ id }) => job.after.includes(id));
  const isLeftOut = (one: Job): boolean => one.hold || candidatesOf(one).length === 0;
  return Math.max(
    -Infinity,
    ...before.map((one) => one.running?.endMin ?? (isLeftOut(one) ? NOT_IN_HORIZON : -Infinity)),
  );
}

const mayRun = ({ authorisations }: Technician, { authorisation }: Job): boolean =>
  authorisation === null || authorisations.includes(authorisation);

/** Who may run what. Of several who are free the one who may run the fewest methods comes first: the others can do more else. */
function skillsOf(
  technicians: readonly Technician[],
  jobs: readonly Job[],
): Pick<ScheduleModel, 'skillOf' | 'skillAt' | 'skilled'> {
  const skills = [...new Map(jobs.map((job) => [job.authorisation, job])).values()];
  const at = new Map(skills.map(({ authorisation }, skill) => [authorisation, skill]));
  const leastFlexibleFirst = [...technicians.keys()].sort(
    (a, b) => technicians[a]!.authorisations.length - technicians[b]!.authorisations.length || a - b,
  );
  const skilled = skills.map((job) => leastFlexibleFirst.filter((t) => mayRun(technicians[t]!, job)));
  return {
    skillOf: Int32Array.from(jobs, ({ authorisation }) => at.get(authorisation)!),
    skillAt: offsets(skilled),
    skilled: Int32Array.from(skilled.flat()),
  };
}

function candidatesIn(problem: Problem, jobs: readonly Job[], at: Lookup) {
  const kept = new Map(keptBookings(problem).map((booking) => [booking.jobId, booking]));
  const lists = jobs.map((job) => {
    const all = candidatesOf(job);
    const there = all.filter(({ frameId }) => frameId === kept.get(job.id)?.frameId);
    return there.length > 0 && job.pin === null ? there : all;
  });
  const all = lists.flat();
  const needs = all.map(({ links }) => links);
  const flat = needs.flat();
  const { needPool, pools } = samePoolsOnce(flat, at.unit);
  const familyAt = new Map((problem.changeover.families?.families ?? []).map((family, x) => [family, x]));
  const needed = new Int32Array(pools.length);
  for (const pool of needPool) needed[pool]!++;
  const wanted = new Int32Array(problem.items.length);
  pools.forEach((units, pool) => units.forEach((unit) => (wanted[unit]! += needed[pool]!)));
  return {
    candidateAt: offsets(lists),
    candidateFrame: Int32Array.from(all, ({ frameId }) => at.frame.get(frameId)!),
    candidateIndex: Int32Array.from(lists.flatMap((list, j) => indexesOf(list, jobs[j]!.candidates))),
    perSpecimen: Int32Array.from(all, ({ perSpecimenMin }) => perSpecimenMin),
    specimens: Int32Array.from(all, ({ specimens }) => specimens),
    family: Int32Array.from(all, ({ family }) => familyAt.get(family ?? '') ?? -1),
    temperature: Float64Array.from(all, ({ temperatureC }) => temperatureC ?? AMBIENT_C),
    needAt: offsets(needs),
    needLink: Int32Array.from(flat, ({ link }) => at.link.get(link)!),
    needPool,
    poolAt: offsets(pools),
    pool: Int32Array.from(pools.flat()),
    wanted,
  };
}

const indexesOf = (list: readonly Candidate[], all: readonly Candidate[]): number[] =>
  list === all ? [...all.keys()] : list.map((one) => all.indexOf(one));

/** Candidates of many jobs name the same units; each set is kept once. */
function samePoolsOnce(
  needs: readonly LinkNeed[],
  unitAt: ReadonlyMap<string, number>,
): { needPool: Int32Array; pools: number[][] } {
  const byList = new Map<readonly string[], number>();
  const byUnits = new Map<string, number>();
  const pools: number[][] = [];
  const poolOf = (list: readonly string[]): number => {
    const key = list.join('\n');
    const known = byUnits.get(key);
    if (known !== undefined) return known;
    byUnits.set(key, pools.length);
    return pools.push(list.map((id) => unitAt.get(id)!)) - 1;
  };
  const needPool = Int32Array.from(needs, ({ pool }) => {
    const known = byList.get(pool) ?? poolOf(pool);
    byList.set(pool, known);
    return known;
  });
  return { needPool, pools };
}

function changeoverOf({ changeover, frames }: Problem, links: readonly string[]) {
  const families = changeover.families?.families.length ?? 0;
  const matrices = [...new Set(Object.values(changeover.families?.byFrame ?? {}))];
  return {
    linkMin: Int32Array.from(links, (link) => changeover.byLinkMin[link] ?? 0),
    linkChecked: Uint8Array.from(links, (link) => (changeover.checkedLinks.includes(link) ? 1 : 0)),
    checkMin: changeover.checkMin,
    rampCPerMin: changeover.rampCPerMin,
    soakMin: changeover.soakMin,
    families,
    familyMatrixAt: Int32Array.from(
      frames,
      ({ id }) => matrices.indexOf(changeover.families?.byFrame[id] ?? []) * families * families,
    ),
    familyMin: Int32Array.from(matrices.flat(2)),
  };
}

function visitsOf({ visits, horizonMin }: Problem, unitAt: ReadonlyMap<string, number>) {
  return {
    visitUnit: Int32Array.from(visits, ({ itemId }) => unitAt.get(itemId)!),
    visitDuration: Int32Array.from(visits, ({ durationMin }) => durationMin),
    visitEarliest: Int32Array.from(visits, ({ earliestMin }) => earliestMin),
    visitBefore: Int32Array.from(
      visits,
      ({ beforeMin, earliestMin, durationMin }) => beforeMin ?? earliestMin + durationMin,
    ),
    visitUntil: Int32Array.from(visits, ({ inForceUntilMin }) => Math.min(inForceUntilMin, 2 * horizonMin)),
  };
}

function publishedVisits({ visits, published }: Problem): Int32Array {
  const starts = new Map(published?.visits?.map(({ visitId, startMin }) => [visitId, startMin]));
  return Int32Array.from(visits, ({ id }) => starts.get(id) ?? -1);
}

/** Rigs and running jobs: what is where, and until when. */
function startOf(problem: Problem, links: readonly string[], at: Lookup) {
  const { frames, items, changeover } = problem;
  const fitted = new Int32Array(frames.length * links.length).fill(-1);
  const unitFrame = new Int32Array(items.length).fill(-1);
  const unitFree = new Int32Array(items.length);
  const frameFree = new Int32Array(frames.length);
  const families = changeover.families?.families ?? [];
  const put = (f: number, rig: Readonly<Record<string, string>>, untilMin: number): void => {
    for (const [link, item] of Object.entries(rig)) {
      const unit = at.unit.get(item);
      if (unit === undefined) continue;
      fitted[f * links.length + at.link.get(link)!] = unit;
      unitFrame[unit] = f;
      unitFree[unit] = Math.max(unitFree[unit]!, untilMin);
    }
  };
  frames.forEach((frame, f) => put(f, frame.rig.items, 0));
  for (const { running } of problem.jobs) {
    const f = at.frame.get(running?.frameId ?? '');
    if (!running || f === undefined) continue;
    put(f, running.items, running.endMin);
    frameFree[f] = Math.max(frameFree[f]!, running.endMin);
  }
  return {
    frameFree,
    frameFamily: Int32Array.from(frames, ({ rig }) => (rig.family === null ? -1 : families.indexOf(rig.family))),
    frameTemperature: Float64Array.from(frames, ({ rig }) => rig.temperatureC ?? AMBIENT_C),
    fitted,
    unitFrame,
    unitFree,
  };
}
