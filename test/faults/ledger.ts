import type { Outcome } from './persistent-client.js';

/** Something that the lab has said is done: an event of its record that must be there, once. */
export interface Acknowledged {
  kind: string;
  subjectId: string;
}

/** A figure that was typed for a specimen, in N. */
export interface TypedResult {
  specimenId: string;
  valueN: number;
}

/** What people at work were told, kept outside of the lab. */
export class Ledger {
  readonly events: Acknowledged[] = [];
  readonly results: TypedResult[] = [];
  /** Titles of drafts, and whether they were acknowledged. */
  readonly drafts = new Map<string, boolean>();
  /** What went wrong before the eyes of the people, in words. */
  readonly complaints: string[] = [];

  /** Notes an act when it is done. @returns whether it is */
  note(outcome: Outcome, kind: string, subjectId: string): boolean {
    if (outcome.state === 'done') this.events.push({ kind, subjectId });
    if (outcome.state === 'never answered') this.complaints.push(`${kind} of ${subjectId} was never answered.`);
    return outcome.state === 'done';
  }

  get size(): number {
    return this.events.length + this.results.length + [...this.drafts.values()].filter(Boolean).length;
  }
}
