/**
 * A problem in flat arrays, for the builder of schedules. Tasks 0 … jobs−1 are jobs, jobs … jobs+visits−1 are calibration
 * visits. Windows of all kinds lie in one array, [start, end) by pairs; an owner's windows are those from `…At[x]` up to
 * `…At[x + 1]`, counted in pairs.
 */
export interface ScheduleModel {
  frames: number;
  units: number;
  links: number;
  technicians: number;
  jobs: number;
  visits: number;
  horizonMin: number;

  windows: Int32Array;
  /** When people can work on a frame, when anything can be on it, and when a unit may be used. */
  frameAt: Int32Array;
  runAt: Int32Array;
  unitAt: Int32Array;
  shiftAt: Int32Array;
  /** 1 where the owner's windows leave nothing out. */
  frameAlways: Uint8Array;
  unitAlways: Uint8Array;

  release: Int32Array;
  due: Int32Array;
  /** Cost per minute late. */
  lateRate: Float64Array;
  /** 1: every specimen needs a technician; 0: only the setup does. */
  throughout: Uint8Array;
  /**
   * Jobs that the same technicians may run are of one skill: [skillAt[s] … skillAt[s + 1]) of `skilled` are its technicians, in
   * the order in which they are asked.
   */
  skillOf: Int32Array;
  skillAt: Int32Array;
  skilled: Int32Array;
  /** [afterAt[j] … afterAt[j+1]) of `after`: jobs before j. */
  afterAt: Int32Array;
  after: Int32Array;
  /** Minute at which the work of a pinned job starts; −1 when it is free. */
  pinStart: Int32Array;
  /** From when on the frame of a pinned job is needed for its setup, at the latest; at most `pinStart`. */
  pinFrom: Int32Array;
  /** Pinned jobs in order of start. */
  pinned: Int32Array;

  /** Candidates of job j: [candidateAt[j] … candidateAt[j+1]). */
  candidateAt: Int32Array;
  candidateFrame: Int32Array;
  /** Which of the job's candidates in the problem. */
  candidateIndex: Int32Array;
  perSpecimen: Int32Array;
  specimens: Int32Array;
  family: Int32Array;
  /** °C. */
  temperature: Float64Array;
  /** Needs of candidate c: [needAt[c] … needAt[c+1]); each is a link with a pool, equal pools kept once. */
  needAt: Int32Array;
  needLink: Int32Array;
  needPool: Int32Array;
  /** Units of pool p: [poolAt[p] … poolAt[p+1]). */
  poolAt: Int32Array;
  pool: Int32Array;
  /** How many jobs name a unit: what is wanted by few is taken first. */
  wanted: Int32Array;

  linkMin: Int32Array;
  linkChecked: Uint8Array;
  checkMin: number;
  leastStintMin: number;
  rampCPerMin: number;
  soakMin: number;
  families: number;
  /** [frame · families² + from · families + to] by `familyMatrixAt[frame]`, min; empty without families. */
  familyMatrixAt: Int32Array;
  familyMin: Int32Array;

  visitUnit: Int32Array;
  visitDuration: Int32Array;
  visitEarliest: Int32Array;
  visitBefore: Int32Array;
  visitUntil: Int32Array;

  /** State at minute 0. */
  frameFree: Int32Array;
  frameFamily: Int32Array;
  frameTemperature: Float64Array;
  /** [frame · links + link] unit fitted, or −1. */
  fitted: Int32Array;
  unitFrame: Int32Array;
  unitFree: Int32Array;

  /** [job] frame and start in the published plan; −1 when it is not in it. */
  publishedFrame: Int32Array;
  publishedStart: Int32Array;
  publishedSetup: Int32Array;
  /** [job · links + link] unit in the published plan; −1 for none. */
  publishedUnit: Int32Array;
  /** [job] the technician who begins it in the published plan and may still run it; −1 for none. */
  publishedTechnician: Int32Array;
  /** [job] how much more it costs to move it, because it was to start soon. */
  nearness: Float64Array;
  /** [visit] start in the published plan; −1 when it is not in it. */
  publishedVisit: Int32Array;
  /** Units that a kept job had: [job · links + link], −1 when free. */
  keepUnit: Int32Array;

  makespan: boolean;
  changeoverRate: number;
  movedRate: number;
  movedFrameCost: number;
  endRate: number;
  loadRate: number;
  /** Cost of a job that finds no room, and of one that is not where it is pinned. */
  unplacedCost: number;
  /** Cost per minute by which a visit or a pin is missed. */
  missRate: number;
}
