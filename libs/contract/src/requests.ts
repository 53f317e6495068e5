import type { Ask, Candidate, ItemKind, MatchAnswer, TrainSegment } from '#libs/matching/src/index.js';
import type { Instant, PersonRef, TeamRef } from './platform.js';
import type { RequestMove, RequestState, SpecimenFate, JobState } from './states.js';

/** Conformity asked for: limits of one result, with the decision rule that must be agreed before work begins. */
export interface ConformityAsk {
  resultKey: string;
  lower: number | null;
  upper: number | null;
  unit: string;
  of: 'each' | 'mean';
  rule: 'simple' | 'guarded';
  specification: string;
}

export interface BatchBody {
  label?: string;
  methodId: string;
  materialId?: string | null;
  specimenCount: number;
  /** The matching core's `Ask` without method and material: figures in N, mm, MPa, °C, mm/min, N·m. */
  ask: Record<string, unknown>;
  /** The figures as typed, by field path, so that they are shown back unchanged. */
  asTyped?: Record<string, { value: string; unit: string }>;
}

export interface SaveRequestBody {
  title: string;
  purpose?: string;
  teamId: string;
  dueAt?: Instant | null;
  /** When the specimens will be handed over. */
  specimensAt?: Instant | null;
  weight?: number;
  disposal?: 'return' | 'keep-90-days' | 'discard';
  conformity?: ConformityAsk | null;
  batches: BatchBody[];
}

/** The review of a request, by the points of ISO/IEC 17025:2017 7.1: each must be settled before it is accepted. */
export interface ReviewBody {
  methodAgreed: boolean;
  capabilityShown: boolean;
  specimensAgreed: boolean;
  disposalAgreed: boolean;
  /** Needed when conformity is to be stated. */
  decisionRuleAgreed?: boolean;
  /** Differences between request and contract, settled how. */
  differences?: string;
  note?: string;
}

export interface SpecimenView {
  id: string;
  label: string;
  position: number;
  fate: SpecimenFate;
  invalidWhy: string | null;
  arrivedAt: Instant | null;
  condition: string;
  conditioningFrom: Instant | null;
  dimensions: Record<string, number[]>;
  version: number;
}

export interface BatchView {
  id: string;
  position: number;
  label: string;
  method: { id: string; code: string; version: number; designation: string; title: string; testType: string };
  material: { id: string; name: string } | null;
  specimenCount: number;
  ask: Record<string, unknown>;
  asTyped: Record<string, { value: string; unit: string }>;
  specimens: SpecimenView[];
  job: {
    id: string;
    reference: string;
    state: JobState;
    why: string | null;
    frameTag: string | null;
    startsAt: Instant | null;
    endsAt: Instant | null;
  } | null;
}

/** One line of a list of requests: where it is, what it waits for, when it will be done. */
export interface RequestLine {
  id: string;
  reference: string;
  title: string;
  state: RequestState;
  team: TeamRef;
  requester: PersonRef;
  methods: string[];
  specimens: number;
  /** How many of them are expected and not at the lab yet. */
  specimensMissing: number;
  dueAt: Instant | null;
  /** In words, e.g. `Waits for grip pair GP-WEDGE-50 (in use until Thursday)`. */
  waitsFor: string;
  promise50At: Instant | null;
  promise80At: Instant | null;
  late: boolean;
  unread?: number;
}

export interface RequestView extends RequestLine {
  /** What the file called it that it came with, such as its number in another program; null for one that was made here. */
  importedAs: string | null;
  purpose: string;
  specimensAt: Instant | null;
  weight: number;
  disposal: 'return' | 'keep-90-days' | 'discard';
  conformity: ConformityAsk | null;
  review: (ReviewBody & { by: PersonRef; at: Instant }) | null;
  promiseNote: string | null;
  batches: BatchView[];
  messages: { id: string; author: PersonRef; body: string; at: Instant }[];
  moves: RequestMove[];
  reports: { id: string; number: string; revision: number; state: string }[];
  createdAt: Instant;
  submittedAt: Instant | null;
  acceptedAt: Instant | null;
  version: number;
}

export interface ArrivalBody {
  specimenIds: string[];
  arrivedAt?: Instant;
  conditioningFrom?: Instant;
  condition?: string;
}

/** Where a request would land if it were submitted now. */
export interface LandingView {
  batches: { frameTag: string | null; startsAt: Instant | null; endsAt: Instant | null; sentence: string }[];
  finish50At: Instant | null;
  finish80At: Instant | null;
  computedInMs: number;
}

/** Asks which load trains could run a batch, before anything is kept. */
export interface PreviewBody {
  /** Id of the method's row. */
  methodId: string;
  materialId?: string | null;
  ask: Record<string, unknown>;
}

/** The answer of matching, with a name for every item id that occurs in it. */
export interface PreviewView extends MatchAnswer {
  ask: Ask;
  items: Record<string, { tag: string; name: string; kind: ItemKind }>;
  /** The first candidates as pictures, to scale, top down; in the order of `candidates`. */
  drawings: { frameId: Candidate['frameId']; segments: TrainSegment[] }[];
  computedInMs: number;
}
