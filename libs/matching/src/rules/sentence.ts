import { formatNumber, formatQuantity, isUnit } from '#libs/units/src/index.js';
import type { Unit } from '#libs/units/src/index.js';
import type { Finding } from './report.js';

/** Names an item for people, by its id. */
export type Naming = (itemId: string) => string;

/** The sentence of one reason: what was found, what is allowed, what to do. */
export type Sentence = (facts: Facts) => string;

/** What a sentence may speak of. */
export class Facts {
  constructor(
    private readonly finding: Finding,
    private readonly name: Naming,
  ) {}

  get first(): string {
    return this.nth(0);
  }

  get second(): string {
    return this.nth(1);
  }

  get all(): string {
    return this.finding.items.map(this.name).join(', ');
  }

  get need(): string {
    return text(this.finding.required, this.finding.unit);
  }

  get has(): string {
    return text(this.finding.available, this.finding.unit);
  }

  get short(): string {
    const { margin, unit } = this.finding;
    return margin === null ? '' : text(Math.abs(margin), unit);
  }

  get ok(): boolean {
    return this.finding.outcome === 'pass';
  }

  private nth(place: number): string {
    const id = this.finding.items[place];
    return id === undefined ? '' : this.name(id);
  }
}

/** A limit that is kept or broken, with what to do when it is broken. */
export function limit(is: Sentence, then: string): Sentence {
  return (facts) => (facts.ok ? `${is(facts)}.` : `${is(facts)}: ${facts.short} short. ${then}`);
}

/** For a reason without a sentence of its own. */
export function bareSentence({ reason, required, available, unit }: Finding): string {
  return `${reason}: needed ${text(required, unit)}, there is ${text(available, unit)}.`;
}

const DIGITS = 4;

function text(value: number | string | null, unit: string | null): string {
  if (typeof value !== 'number') return value ?? 'nothing';
  if (unit === 'ms') return new Date(value).toISOString().slice(0, 10);
  if (unit && isUnit(unit)) return formatQuantity(value, scaled(value, unit), DIGITS);
  return unit && unit !== 'channels' ? `${formatNumber(value, DIGITS)} ${unit}` : formatNumber(value, DIGITS);
}

/** Large forces read better in kN. */
function scaled(value: number, unit: Unit): Unit {
  return unit === 'N' && Math.abs(value) >= 10_000 ? 'kN' : unit;
}
