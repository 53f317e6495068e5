import { instantOfMinute, sayInstant } from '#libs/calendar/src/index.js';
import type { CauseView } from '#libs/contract/src/index.js';
import type { Cause, CauseKind, FrameChoice } from '#libs/planning/src/index.js';
import type { PlanFacts } from '#libs/records/src/index.js';

const UUID = /[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/g;

/** Names and the wall clock, for saying what the planner found. */
export class Words {
  private readonly tags: Map<string, string>;
  private readonly references: Map<string, string>;

  constructor(
    facts: PlanFacts,
    private readonly originMs: number,
    private readonly zone = facts.settings.timeZone,
  ) {
    this.tags = new Map(facts.lab.items.map(({ id, tag }) => [id, tag]));
    this.references = new Map(facts.jobs.map(({ id, reference }) => [id, reference]));
  }

  tag(itemId: string): string {
    // A unit that is only tried bears the id of the one that it is like, and `+1`.
    const like = itemId.replace(/\+1$/, '');
    return `${this.tags.get(like) ?? like}${like === itemId ? '' : ' (one more)'}`;
  }

  job(jobId: string): string {
    return this.references.get(jobId) ?? jobId;
  }

  instant(minute: number): string {
    return new Date(instantOfMinute(this.originMs, minute)).toISOString();
  }

  /** A sentence about the problem, with tags and references instead of ids. */
  named(sentence: string): string {
    return sentence.replace(UUID, (id) => this.tags.get(id) ?? this.job(id));
  }

  at(minute: number): string {
    return sayInstant(instantOfMinute(this.originMs, minute), this.zone);
  }

  cause(cause: Cause): CauseView {
    return {
      kind: KINDS[cause.kind],
      hours: Math.round((cause.minutes / 60) * 100) / 100,
      sentence: this.causeSentence(cause),
    };
  }

  private causeSentence({ kind, minutes, jobId, itemId }: Cause): string {
    const time = sayMinutes(minutes);
    const by = jobId === null ? '' : ` with ${this.job(jobId)}`;
    switch (kind) {
      case 'release':
        return `${time} until its specimens are here and conditioned`;
      case 'frame-busy':
        return `${time} while the frame is busy${by}`;
      case 'item-busy':
        return `${time} while ${this.tag(itemId ?? '')} is in use${by}`;
      case 'calibration':
        return `${time} while ${this.tag(itemId ?? '')} is away for calibration`;
      case 'changeover':
        return `${time} of changeover`;
      case 'closed':
        return `${time} outside of the frame's hours`;
      case 'technician':
        return `${time} without a technician who may run it`;
      case 'pin':
        return `${time} because it is pinned to its start`;
      case 'work':
        return `${time} of testing`;
    }
  }

  chosen({ changeoverMin, fittedLinks, links }: FrameChoice, onlyOne: boolean): string[] {
    const hangs = links === 0 ? [] : [`${fittedLinks} of ${links} parts of its train hang there already`];
    const changeover =
      changeoverMin === null || changeoverMin === 0
        ? ['no changeover']
        : [`${sayMinutes(changeoverMin)} of changeover`];
    return [...(onlyOne ? ['No other frame can run it'] : []), ...changeover, ...hangs];
  }

  alternative({ frameId, freeAtMin, fittedLinks, links }: FrameChoice): { frameTag: string; sentence: string } {
    const hangs = links === 0 ? '' : `, ${fittedLinks} of ${links} parts hang there`;
    return { frameTag: this.tag(frameId), sentence: `${this.tag(frameId)} is free from ${this.at(freeAtMin)}${hangs}` };
  }
}

const KINDS: Record<CauseKind, CauseView['kind']> = {
  release: 'release',
  'frame-busy': 'capacity',
  'item-busy': 'item',
  calibration: 'calibration',
  changeover: 'changeover',
  closed: 'calendar',
  technician: 'technician',
  pin: 'pin',
  work: 'work',
};

/** E.g. `45 min`, `3.5 h`. */
export function sayMinutes(minutes: number): string {
  return minutes < 90 ? `${Math.round(minutes)} min` : `${Math.round(minutes / 6) / 10} h`;
}
