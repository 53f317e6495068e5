import { MS_PER_DAY } from '#libs/calendar/src/index.js';
import type { Chance } from './chance.js';
import { resolved } from './operations.js';
import type { Description, Resolved, Schema } from './operations.js';

/** What the lab under test knows: ids by the name of the field that carries them, and objects by the name of theirs. */
export type Known = Readonly<Record<string, readonly unknown[]>>;

const DEEPEST = 6;

/** A value as its description asks for, as often as not at a limit. */
export function validValue(
  schema: Schema,
  name: string,
  known: Known,
  chance: Chance,
  api: Description,
  depth = 0,
): unknown {
  const { type, nullable, enum: choices, properties, items, required = [], ...limits } = resolved(schema, api);
  if (nullable && chance.oneIn(5)) return null;
  const fitting = known[name];
  if (fitting && fitting.length > 0 && !chance.oneIn(8)) return chance.pick(fitting);
  if (choices) return chance.pick(choices);
  if (properties && depth < DEEPEST) {
    const fields = Object.entries(properties).filter(([field]) => required.includes(field) || chance.oneIn(2));
    return Object.fromEntries(
      fields.map(([field, each]) => [field, validValue(each, field, known, chance, api, depth + 1)]),
    );
  }
  if (type === 'array') {
    const least = limits.minItems ?? 0;
    const length = chance.whole(least, Math.min(limits.maxItems ?? 3, least + 2));
    return Array.from({ length }, () => validValue(items ?? {}, singular(name), known, chance, api, depth + 1));
  }
  return plainValue(type, limits, chance);
}

function plainValue(type: string | undefined, limits: Partial<Resolved>, chance: Chance): unknown {
  if (type === 'boolean') return chance.oneIn(2);
  if (type === 'number' || type === 'integer') return figure(type, limits, chance);
  if (type === 'string' || type === undefined) return text(limits, chance);
  return {};
}

function figure(type: string, { exclusiveMinimum, ...limits }: Partial<Resolved>, chance: Chance): number {
  const { minimum = exclusiveMinimum ?? 0, maximum = 1_000 } = limits;
  const lowest = exclusiveMinimum === undefined ? minimum : exclusiveMinimum + (type === 'integer' ? 1 : 1e-6);
  const value = chance.pick([lowest, maximum, lowest + chance.next() * (Math.min(maximum, lowest + 1_000) - lowest)]);
  return type === 'integer' ? Math.round(value) : value;
}

function text({ format, minLength = 1, maxLength = 60 }: Partial<Resolved>, chance: Chance): string {
  const instant = new Date(Date.now() + chance.whole(-40, 40) * MS_PER_DAY).toISOString();
  if (format === 'date-time') return instant;
  if (format === 'date') return instant.slice(0, 10);
  if (format === 'uuid') return someId(chance);
  const length = chance.pick([minLength, maxLength, Math.min(maxLength, 12)]);
  return Array.from({ length }, () => chance.pick([...'abcdefgh 0123456789-äµ·']))
    .join('')
    .padStart(minLength, 'x');
}

/** An id that nothing has. */
export function someId(chance: Chance): string {
  const digits = (count: number) => Array.from({ length: count }, () => chance.whole(0, 15).toString(16)).join('');
  return `${digits(8)}-${digits(4)}-4${digits(3)}-8${digits(3)}-${digits(12)}`;
}

/** Lists are named after what is in them: `teamIds` holds a `teamId`. */
function singular(name: string): string {
  return name.replace(/ies$/, 'y').replace(/s$/, '');
}
