export type {
  Candidate,
  Changeover,
  FamilyChangeover,
  Frame,
  Item,
  Job,
  LabObjective,
  LinkNeed,
  MakespanObjective,
  Objective,
  Pin,
  Problem,
  PublishedBooking,
  PublishedPlan,
  PublishedVisit,
  Rig,
  RunningJob,
  Technician,
  Visit,
  Window,
} from './problem.js';
export { DEFAULT_OBJECTIVE, MOVED_AFTER_MIN } from './problem.js';
export type { BookedVisit, Booking, Cost, Plan, Stint, Unplaced } from './plan.js';
export { checkProblem } from './check-problem.js';
export type { Flaw } from './check-problem.js';
export { causesOfLateness } from './answers/causes-of-lateness.js';
export type { Cause, CauseKind } from './answers/causes-of-lateness.js';
export { comparePlans } from './answers/compare-plans.js';
export type { PlanDifference } from './answers/compare-plans.js';
export { learnSpread } from './answers/learn-durations.js';
export type { FinishedWork } from './answers/learn-durations.js';
export { loadByFrame } from './answers/load-by-frame.js';
export type { FrameLoad } from './answers/load-by-frame.js';
export { poolLoads } from './answers/pool-loads.js';
export type { PoolLoad } from './answers/pool-loads.js';
export { promiseDates } from './answers/promise-dates.js';
export type { DurationSpread, PromisedDate, ReplayOptions } from './answers/promise-dates.js';
export { changesToTry, whatWouldHelpMost, withChange, withOneMoreUnit } from './answers/what-would-help.js';
export type { Change, Help } from './answers/what-would-help.js';
export { whyThisFrame } from './answers/why-this-frame.js';
export type { FrameChoice } from './answers/why-this-frame.js';
export { judgePlan } from './judge/judge-plan.js';
export type { Breach } from './judge/breach.js';
export { makePlan } from './engine/make-plan.js';
export type { PlanOptions, Progress } from './engine/make-plan.js';
export { insertJobs } from './engine/insert-jobs.js';
