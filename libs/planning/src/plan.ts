/** A schedule for a problem, and what it costs. Plain data; nothing in it promises that it is correct: the judge says so. */
export interface Plan {
  bookings: readonly Booking[];
  visits: readonly BookedVisit[];
  /** Jobs and visits that are in the problem and not in the plan, each with its reason. */
  unplaced: readonly Unplaced[];
  /** Ids of planned jobs and visits in the order in which they were placed. Placed so again, an unchanged lab gets the same plan. */
  order: readonly string[];
  cost: Cost;
}

/** One job on one load train. The units are held from `setupStartMin` to `endMin`. */
export interface Booking {
  jobId: string;
  frameId: string;
  /** Which of the job's candidates; -1 for a running job whose train is no candidate any more. */
  candidate: number;
  /** Units used, by link. */
  items: Readonly<Record<string, string>>;
  /** The changeover occupies [setupStartMin, setupStartMin + setupMin). */
  setupStartMin: number;
  setupMin: number;
  /** First and last minute of the work, half-open. */
  startMin: number;
  endMin: number;
  /** Setup and specimens with who does them, in order; neighbours by one technician without a break are one stint. */
  stints: readonly Stint[];
}

export interface Stint {
  kind: 'setup' | 'work';
  startMin: number;
  endMin: number;
  /** Null where nobody is needed or the roster is not planned. */
  technicianId: string | null;
}

export interface BookedVisit {
  visitId: string;
  itemId: string;
  startMin: number;
  endMin: number;
}

export interface Unplaced {
  id: string;
  kind: 'job' | 'visit';
  reason: 'held' | 'no-candidate' | 'no-room-in-horizon' | 'waits-for-unplaced';
}

/** What the plan costs, in parts; `total` is what the engine makes small. */
export interface Cost {
  total: number;
  /** Σ weight × minutes past due. */
  weightedLateMin: number;
  lateJobs: number;
  changeoverMin: number;
  movedMin: number;
  movedFrames: number;
  makespanMin: number;
  sumOfEndsMin: number;
  loadHoursSquared: number;
  unplaced: number;
}
