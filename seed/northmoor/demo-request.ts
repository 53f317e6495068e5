import type { ConformityAsk, JobState, RequestState } from '#libs/contract/src/index.js';
import type { AskPart } from './ask-parts.js';
import type { TeamName } from './people.js';
import type { Product } from './products.js';
import type { TrainName } from './trains.js';

/** Working days from today and a time on the wall. */
export type Day = readonly [workingDays: number, time: string];

export interface DemoBatch {
  label?: string;
  method: string;
  material?: string;
  count: number;
  ask: AskPart;
  /** Figures that the requester typed in another unit, by field. */
  asTyped?: Record<string, { value: string; unit: string }>;
  /** Where its job is, once the request was accepted; `waiting` or `ready` follow from the specimens. */
  job?: DemoJob;
  /** Pieces that came so far; all of them when absent. */
  arrived?: number;
}

export interface DemoJob {
  state: Exclude<JobState, 'waiting' | 'ready' | 'aborted'>;
  train: TrainName;
  technician: string;
  /** Minutes before now at which it was taken, or the day on which it was done. */
  began: number | Day;
  /** Pieces tested so far; all when done. */
  tested?: number;
  why?: string;
  product: Product;
  /** Whether the frame recorded curves, from which the results were reduced; they were typed otherwise. */
  recorded?: true;
  /** A piece that broke far away from the others, with its share of the mean. */
  outlier?: { piece: number; share: number };
}

export interface DemoRequest {
  title: string;
  purpose: string;
  requester: string;
  team: TeamName;
  state: RequestState;
  created: Day;
  due?: Day;
  weight?: number;
  disposal?: 'return' | 'keep-90-days' | 'discard';
  conformity?: ConformityAsk;
  /** When the specimens came, or (later than now) are announced for. */
  specimens?: Day;
  batches: readonly DemoBatch[];
  /** Said on the request, in order; for returned and declined ones the first is the reason. */
  messages?: readonly { by: string; at: Day; body: string }[];
  /** Meant to have no load train in this lab. */
  impossible?: true;
}
