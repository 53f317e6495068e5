import {
  addDays,
  instantAt,
  instantOfMinute,
  localDateAt,
  minuteAtOrAfter,
  weekdayOf,
} from '#libs/calendar/src/index.js';
import { linkWords } from '#libs/contract/src/index.js';
import type { PlanFigures } from '#libs/contract/src/index.js';
import {
  causesOfLateness,
  learnSpread,
  loadByFrame,
  poolLoads,
  promiseDates,
  whyThisFrame,
} from '#libs/planning/src/index.js';
import type { Booking, Plan, PromisedDate, Unplaced } from '#libs/planning/src/index.js';
import type { BookingNotes, Fits, NewBooking, PlanFacts, PlanNotes } from '#libs/records/src/index.js';
import { changesOf } from './changes-of.js';
import { perSpecimenMin } from './durations.js';
import type { PlanningTask } from './problem-of.js';
import { Words } from './words.js';

/** How often a plan is replayed for its promise dates. */
const REPLAYS = 400;

/** A plan in the words of the lab: what is kept of it. */
export interface PlanOutcome {
  bookings: NewBooking[];
  notes: PlanNotes;
  promises: PromisedDate[];
}

/** Turns minutes into instants, units into places of a train, and figures into sentences. */
export function outcomeOf(facts: PlanFacts, task: PlanningTask, plan: Plan): PlanOutcome {
  const words = new Words(facts, task.originMs);
  const promises = promiseDates(task.problem, plan, { replays: REPLAYS, seed: 1, spreadOf: spreads(facts) });
  const risk = new Map(promises.map(({ jobId, lateShare }) => [jobId, Math.round(lateShare * 100)]));
  const jobs = plan.bookings.map((booking) =>
    jobBooking(booking, task, notesOf(booking, { facts, task, plan, words, risk })),
  );
  const visits = plan.visits.map(({ itemId, startMin, endMin }) =>
    visitBooking(itemId, at(task, startMin), at(task, endMin)),
  );
  return { bookings: [...jobs, ...visits], notes: planNotes(facts, task, plan, words), promises };
}

function at({ originMs }: PlanningTask, minute: number): Date {
  return new Date(instantOfMinute(originMs, minute));
}

function jobBooking(booking: Booking, task: PlanningTask, why: BookingNotes): NewBooking {
  const { jobId, frameId, setupStartMin, setupMin, startMin, endMin } = booking;
  return {
    ...{ jobId, frameId, kind: 'job' as const, changeoverMin: setupMin, train: trainOf(booking, task) },
    setupAt: at(task, setupStartMin),
    startsAt: at(task, startMin),
    endsAt: at(task, endMin),
    technicianId: booking.stints.find(({ technicianId }) => technicianId !== null)?.technicianId ?? null,
    why: { ...why },
  };
}

/** Units in the order of the train, as matching gave it. */
function trainOf({ jobId, candidate, items }: Booking, { problem }: PlanningTask): { role: string; itemId: string }[] {
  const links = problem.jobs.find(({ id }) => id === jobId)?.candidates[candidate]?.links.map(({ link }) => link);
  return (links ?? Object.keys(items)).map((role) => ({ role, itemId: items[role]! }));
}

function visitBooking(itemId: string, startsAt: Date, endsAt: Date): NewBooking {
  const train = [{ role: 'item', itemId }];
  return {
    jobId: null,
    frameId: null,
    kind: 'calibration-visit',
    setupAt: startsAt,
    startsAt,
    endsAt,
    changeoverMin: 0,
    technicianId: null,
    train,
    why: {},
  };
}

interface Noting {
  facts: PlanFacts;
  task: PlanningTask;
  plan: Plan;
  words: Words;
  risk: ReadonlyMap<string, number>;
}

function notesOf({ jobId }: Booking, { facts, task, plan, words, risk }: Noting): BookingNotes {
  const choices = whyThisFrame(task.problem, plan, jobId);
  const [chosen, ...others] = choices;
  return {
    frame: chosen ? words.chosen(chosen, others.length === 0) : ['It is on this frame already'],
    alternatives: others.map((choice) => words.alternative(choice)),
    causes: causesOfLateness(task.problem, plan, jobId).map((cause) => words.cause(cause)),
    riskPct: risk.get(jobId) ?? null,
    fits: fitsOf(jobId, facts, task),
  };
}

/** By frame, the fewest rules that stand in the way; nothing where a train fits. */
function fitsOf(jobId: string, facts: PlanFacts, { matches }: PlanningTask): Fits {
  const answer = matches.get(jobId);
  if (!answer) return {};
  const able = new Set(answer.candidates.map(({ frameId }) => frameId));
  const frames = facts.lab.items.filter(({ kind }) => kind === 'frame');
  return Object.fromEntries(
    frames.map(({ id }) => [
      id,
      able.has(id) ? [] : sentences(answer.refusals.find(({ frameId }) => frameId === id)?.failing),
    ]),
  );
}

function sentences(failing: readonly { sentence: string }[] | undefined): string[] {
  return failing && failing.length > 0
    ? failing.map(({ sentence }) => sentence)
    : ['No load train on it can run this test.'];
}

/** E.g. `Load cell: LC-1K-1, LC-1K-2`. */
function poolLabel(link: string, tags: readonly string[]): string {
  const called = linkWords(link);
  return `${called.charAt(0).toUpperCase()}${called.slice(1)}: ${[...tags].sort().join(', ')}`;
}

function planNotes(facts: PlanFacts, task: PlanningTask, plan: Plan, words: Words): PlanNotes {
  return {
    figures: figuresOf(plan, task),
    freezeUntil: at(task, task.problem.freezeUntilMin).toISOString(),
    horizonTo: at(task, task.problem.horizonMin).toISOString(),
    unplaced: plan.unplaced
      .filter(({ kind, reason }) => kind === 'job' && reason !== 'held')
      .map((one) => ({ jobId: one.id, reasons: whyUnplaced(one, facts, task), fits: fitsOf(one.id, facts, task) })),
    load: loadNotes(facts, task, plan),
    order: plan.order,
    changes: changesOf({ facts, task, plan, words, whyUnplaced: (one) => whyUnplaced(one, facts, task) }),
    pools: poolLoads(task.problem, plan)
      .slice(0, 20)
      .map(({ units, link, share, binds }) => ({
        pool: units.join(','),
        label: poolLabel(
          link,
          units.map((unit) => words.tag(unit)),
        ),
        loadPct: Math.round(share * 100),
        binds,
      })),
  };
}

/** A job that is due within the horizon and has no place in it is late. */
export function figuresOf({ cost, bookings, unplaced }: Plan, { problem }: PlanningTask): PlanFigures {
  const left = new Set(unplaced.filter(({ reason }) => reason !== 'held').map(({ id }) => id));
  const lost = problem.jobs.filter(
    ({ id, weight, dueMin }) => left.has(id) && weight > 0 && dueMin <= problem.horizonMin,
  );
  return {
    weightedLatenessHours: Math.round(cost.weightedLateMin / 6) / 10,
    lateJobs: cost.lateJobs + lost.length,
    changeoverHours: Math.round(cost.changeoverMin / 6) / 10,
    movedHours: Math.round(cost.movedMin / 6) / 10,
    jobs: bookings.length,
  };
}

function whyUnplaced(one: Unplaced, facts: PlanFacts, task: PlanningTask): string[] {
  const pin = facts.jobs.find(({ id }) => id === one.id)?.pin;
  return pin ? whyNotWherePinned(one, pin.frameId, facts, task) : whyNowhere(one, facts, task);
}

/** What stands in the way on the frame that somebody pinned the job to; other frames do not matter then. */
function whyNotWherePinned({ id, reason }: Unplaced, frameId: string, facts: PlanFacts, task: PlanningTask): string[] {
  const frame = facts.lab.items.find((item) => item.id === frameId);
  const tag = frame?.tag ?? 'a frame that is gone';
  const failing = task.matches.get(id)?.refusals.find((refusal) => refusal.frameId === frameId)?.failing;
  const closed = frame?.state === 'faulty' ? 'which has an open fault' : 'which is out of use';
  if (frame?.state !== 'in-service')
    return [`It is pinned to ${tag}, ${closed}. Unpin it, or put ${tag} back into service.`];
  if (reason === 'no-candidate') return [`It is pinned to ${tag}, which cannot run it.`, ...sentences(failing)];
  return [
    `It is pinned to ${tag}, where there is no room for it within the ${facts.settings.horizonDays} days that are planned.`,
  ];
}

function whyNowhere({ id, reason }: Unplaced, facts: PlanFacts, task: PlanningTask): string[] {
  if (reason === 'no-room-in-horizon')
    return [`There is no room for it within the ${facts.settings.horizonDays} days that are planned.`];
  if (reason === 'waits-for-unplaced') return ['It waits for another job that is not in the plan.'];
  const answer = task.matches.get(id);
  if (!answer) return ['Its request does not give what its method needs.'];
  const nearest = [...answer.refusals].sort((a, b) => a.failing.length - b.failing.length)[0];
  return nearest ? nearest.failing.map(({ sentence }) => sentence) : ['No frame is registered.'];
}

/** Load week by week, Monday to Monday on the lab's wall clock. */
function loadNotes(facts: PlanFacts, task: PlanningTask, plan: Plan): PlanNotes['load'] {
  const weeks = weeksOf(facts, task);
  const loads = loadByFrame(task.problem, plan, weeks);
  return task.problem.frames.map(({ id }) => ({
    frameId: id,
    weeks: loads
      .filter(({ frameId }) => frameId === id)
      .map(({ span, bookedMin, openMin }) => ({
        weekStartsAt: at(task, span.startMin).toISOString(),
        bookedHours: Math.round(bookedMin / 6) / 10,
        availableHours: Math.round(openMin / 6) / 10,
      })),
  }));
}

function weeksOf(
  { settings: { timeZone }, nowMs }: PlanFacts,
  { originMs, problem }: PlanningTask,
): { startMin: number; endMin: number }[] {
  const today = localDateAt(nowMs, timeZone);
  const mondays = [addDays(today, 1 - weekdayOf(today))];
  const minuteOf = (date: string) => minuteAtOrAfter(originMs, instantAt(date, '00:00', timeZone));
  while (minuteOf(mondays.at(-1)!) < problem.horizonMin) mondays.push(addDays(mondays.at(-1)!, 7));
  return mondays.slice(0, -1).map((monday, index) => ({
    startMin: Math.max(0, minuteOf(monday)),
    endMin: Math.min(problem.horizonMin, minuteOf(mondays[index + 1]!)),
  }));
}

/** How far each method's work spreads about what is planned for it. */
function spreads(facts: PlanFacts): (jobId: string) => ReturnType<typeof learnSpread> {
  const methodOf = new Map(facts.jobs.map(({ id, method }) => [id, method]));
  const known = new Map<string, ReturnType<typeof learnSpread>>();
  return (jobId) => {
    const method = methodOf.get(jobId);
    if (!method) return learnSpread([]);
    const kept = known.get(method.id);
    if (kept) return kept;
    const planned = perSpecimenMin(method, facts.durations);
    const finished = facts.durations
      .filter(({ methodCode }) => methodCode === method.id)
      .map(({ workMin, specimens }) => ({ plannedMin: planned * specimens, tookMin: workMin }));
    const spread = learnSpread(finished);
    known.set(method.id, spread);
    return spread;
  };
}
