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
  Rig,
  RunningJob,
  Technician,
  Visit,
  Window,
} from './problem.js';
export { DEFAULT_OBJECTIVE, NO_CHANGEOVER } from './problem.js';
export type { BookedVisit, Booking, Cost, Plan, Stint, Unplaced } from './plan.js';
export { checkProblem } from './check-problem.js';
export type { Flaw } from './check-problem.js';
