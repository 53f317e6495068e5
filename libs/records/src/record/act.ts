import type { Clock } from '#libs/calendar/src/index.js';
import type { LiveEvent } from '#libs/contract/src/index.js';
import type { DataSource, EntityManager } from 'typeorm';
import { touchFacts } from '../platform/facts.js';
import { markDone } from '../platform/idempotency.js';
import { notify } from '../platform/live-events.js';
import { announce } from '../tasks/announce.js';
import { append } from './append.js';
import type { RecordEntry } from './append.js';
import { changesFacts, EVENT_KINDS } from './event-kinds.js';
import type { LabEvent } from './event-kinds.js';

/** Changes that come close together are planned once. */
const GATHER_MS = 1_000;

/** Hears of each event in its own transaction, e.g. to give people notice of it. */
export type EventListener = (manager: EntityManager, eventId: string, entry: RecordEntry) => Promise<void>;

/** Where acts are done. */
export interface Stage {
  source: DataSource;
  clock: Clock;
  listeners: readonly EventListener[];
}

/** One act under way: what belongs to its transaction. */
export interface Act {
  /** Of the transaction: every repository goes through it. */
  manager: EntityManager;
  /** Who acts; null for the lab itself. */
  byId: string | null;
  /** The time by the lab's clock. */
  now(): Date;
  /** Writes an event into the record, and tells whoever follows such events. Facts and screens follow from its kind. */
  record(event: LabEvent): Promise<void>;
  /** Tells open screens of something that the kind of event does not say. */
  tell(topic: LiveEvent['topic'], id: string): Promise<void>;
  /** Says that there was nothing to do, as after a second tap: the act ends with this answer and without an event. */
  nothing<Answer>(answer: Answer): Answer;
}

/**
 * Does one act: a single transaction that holds what it changes, its events in the record, the notices and tasks that follow from
 * them, the word to open screens and, where facts changed, the next plan. All of it is kept, or nothing.
 *
 * @param byId who acts; null for the lab itself
 * @param change guarded updates, then `record`; or `nothing` when there was nothing to do
 * @throws Error when `change` did neither: an act leaves its trace
 */
export function act<Answer>(stage: Stage, byId: string | null, change: (act: Act) => Promise<Answer>): Promise<Answer> {
  return quietly(stage, async (manager) => {
    const trace = new Trace(stage, manager, byId);
    const answer = await change(trace);
    await trace.close();
    return answer;
  });
}

/**
 * Does what leaves no event in the record, in one transaction: asking for work, reading one's notices, a step of a trial plan.
 * A request that is sent twice does it once, as with an act.
 */
export function quietly<Answer>(
  { source }: Pick<Stage, 'source'>,
  change: (manager: EntityManager) => Promise<Answer>,
): Promise<Answer> {
  return source.transaction(async (manager) => {
    const answer = await change(manager);
    await markDone(manager);
    return answer;
  });
}

/** Reads several things as they are at one moment. */
export function snapshot<Answer>(
  { source }: Pick<Stage, 'source'>,
  read: (manager: EntityManager) => Promise<Answer>,
): Promise<Answer> {
  return source.transaction('REPEATABLE READ', read);
}

/** What an act has done so far. */
class Trace implements Act {
  private recorded = false;
  private isNothing = false;
  /** The kind of the last event that changed facts. */
  private because: string | null = null;

  constructor(
    private readonly stage: Stage,
    readonly manager: EntityManager,
    readonly byId: string | null,
  ) {}

  readonly now = (): Date => this.stage.clock.now();

  readonly record = async (event: LabEvent): Promise<void> => {
    const { kind, subjectId, actorId = this.byId, before = null, after = null, why = null } = event;
    const { subject, topic } = EVENT_KINDS[kind];
    const entry = { actorId, kind, subjectKind: subject, subjectId, before, after, why, at: this.now() };
    const id = await append(this.manager, entry);
    this.recorded = true;
    for (const hear of this.stage.listeners) await hear(this.manager, id, entry);
    if (topic) await this.tell(topic, subjectId);
    if (changesFacts(event)) await this.factsChanged(kind);
  };

  readonly tell = (topic: LiveEvent['topic'], id: string): Promise<void> => notify(this.manager, { topic, id });

  readonly nothing = <Answer>(answer: Answer): Answer => {
    this.isNothing = true;
    return answer;
  };

  /** At the end one plan is announced for all that changed. */
  async close(): Promise<void> {
    if (!this.recorded && !this.isNothing)
      throw new Error('An act has to record an event, or say that there was nothing to do.');
    const { because, byId } = this;
    if (because) await announce(this.manager, 'replan', { because, byId }, { key: 'replan', delayMs: GATHER_MS });
  }

  /** At once, so that whoever reads the lab later in this act sees that it changed. */
  private async factsChanged(kind: string): Promise<void> {
    if (this.because === null) await touchFacts(this.manager, kind);
    this.because = kind;
  }
}
