/*
 * answer/: what people see of a search: verdicts, candidates, refusals, pictures. It may import every folder but advice/.
 */
import type { Item, TimeWindow } from '../register/item.js';
import type { Needs } from '../ask/needs.js';
import type { Finding } from '../rules/report.js';
import type { RuleCode } from '../rules/rules.js';

/** What one rule says about one train. */
export interface Verdict extends Finding {
  rule: RuleCode;
  /** One plain sentence that says what was found, what is allowed and what to do. */
  sentence: string;
  source: string;
}

export type LinkRole =
  | 'load-cell'
  | 'upper-adapter'
  | 'upper-adapter-2'
  | 'upper'
  | 'ends'
  | 'lower'
  | 'lower-adapter'
  | 'lower-adapter-2'
  | 'faces'
  | 'extensometer'
  | 'chamber'
  | 'guard'
  | 'thermocouple';

/** One place in the train; a role occurs once per train. `ends` is a pair, which fills the upper and the lower place at once. */
export interface Link {
  role: LinkRole;
  itemId: string;
  /** Units that could stand in, itself included, in order of preference; equal key = the same pool. */
  poolKey: string;
  pool: readonly string[];
}

export interface Train {
  frameId: string;
  cellAt: 'crosshead' | 'base';
  /** In order from crosshead to base, then what stands beside the specimen. */
  links: readonly Link[];
}

/** A load train that passes every rule for the job. */
export interface Candidate extends Train {
  verdicts: readonly Verdict[];
  /** When all of it is usable: in calibration, not held, someone authorised on shift. */
  windows: readonly TimeWindow[];
  /** Lower is better; the sum of its parts. */
  score: number;
  scoreParts: readonly { part: ScorePart; points: number; sentence: string }[];
  changeover: Changeover;
  limitStops: LimitStops;
  soakMin: number;
  rampMin: number;
  hungMassKg: number;
  /** Rule and item with the least relative margin. */
  governing: { rule: RuleCode; itemId: string; ratingN: number };
}

export type ScorePart = 'changeover' | 'force-fit' | 'scarce-items' | 'accuracy' | 'cautions';

export interface ChangeoverStep {
  step: 'take-off' | 'put-on' | 'keep' | 'warm' | 'check';
  itemId: string | null;
  minutes: number;
  why: string;
}

export interface Changeover {
  minutes: number;
  steps: readonly ChangeoverStep[];
}

/** Settings of the mechanical stops, as crosshead positions: opening between coupling faces, mm. */
export interface LimitStops {
  startOpeningMm: number;
  lowerStopMm: number;
  upperStopMm: number;
}

/** Why a frame cannot run the test: the train that comes nearest, and the fewest rules that it breaks. */
export interface FrameRefusal {
  frameId: string;
  failing: readonly Verdict[];
  nearest: Train | null;
}

export type AdviceKind = 'free' | 'repair' | 'calibrate' | 'buy' | 'change-request' | 'authorise';

/** One computed way to open frames; `apply` says the change as data, so that it can be proven. */
export interface Advice {
  kind: AdviceKind;
  sentence: string;
  opensFrames: readonly string[];
  apply:
    | { change: 'item'; itemId: string; set: Readonly<Record<string, unknown>> }
    | { change: 'new-item'; item: Item }
    | { change: 'ask'; field: string; value: unknown }
    | { change: 'technician'; technicianId: string; methodId: string };
}

/** One mark on the log force axis. */
export interface LadderMark {
  kind: 'band' | 'smallest' | 'hung-weight' | 'rating' | 'verified' | 'frame' | 'cell-band';
  label: string;
  itemId: string | null;
  from: number;
  to: number;
  governs: boolean;
}

export interface ForceLadder {
  unit: 'N' | 'N·m';
  min: number;
  max: number;
  marks: readonly LadderMark[];
  governedBy: string | null;
}

/** A segment of the train picture, top down; length to scale in mm. */
export interface TrainSegment {
  role: LinkRole | 'crosshead' | 'specimen' | 'base';
  itemId: string | null;
  label: string;
  ratingText: string;
  lengthMm: number;
  widthMm: number;
  /** Beside the specimen (extensometer, chamber, guard) and not in the stack. */
  beside: boolean;
}

export interface MatchAnswer {
  needs: Needs;
  candidates: readonly Candidate[];
  refusals: readonly FrameRefusal[];
  advice: readonly Advice[];
  ladder: ForceLadder | null;
}
