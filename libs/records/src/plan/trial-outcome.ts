import type { PlanComparison } from '#libs/contract/src/index.js';
import type { NewBooking } from './plan.entity.js';
import type { PlanNotes } from './plan-notes.js';

/** What the planner made of a trial plan; kept in `trial_plan.outcome`. Instants are strings there, as JSON keeps them. */
export interface TrialOutcome {
  /** The trial's version that it was made for; another one is being computed when the row's is higher. */
  forVersion: number;
  stamp: string;
  madeAt: string;
  bookings: NewBooking[];
  notes: PlanNotes;
  comparison: PlanComparison;
  refused: { edit: number; reasons: string[] }[];
}

/** Bookings as they come back from JSON, with instants again. */
export function revived(bookings: readonly NewBooking[]): NewBooking[] {
  return bookings.map((booking) => ({
    ...booking,
    setupAt: new Date(booking.setupAt),
    startsAt: new Date(booking.startsAt),
    endsAt: new Date(booking.endsAt),
  }));
}
