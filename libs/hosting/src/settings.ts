import { fieldProblem, numberProblem, refuseIfAny } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';

type Environment = Readonly<Record<string, string | undefined>>;

/** One setting: the variable it is read from, and how its text becomes a value. */
export interface Setting<Value> {
  variable: string;
  /** @returns the value, or what is wrong with the text (undefined where the variable is not set) */
  read(text: string | undefined): { value: Value } | { problem: FieldProblem };
}

type ValuesOf<Settings> = { [Name in keyof Settings]: Settings[Name] extends Setting<infer Value> ? Value : never };

/**
 * Reads all settings at once, so that a start that fails names everything that is wrong.
 *
 * @throws {InvalidInput} with each variable, what it was and what it may be; a secret is not repeated
 */
export function readSettings<Settings extends Record<string, Setting<unknown>>>(
  environment: Environment,
  settings: Settings,
): ValuesOf<Settings> {
  const read = Object.entries(settings).map(([name, setting]) => {
    const text = environment[setting.variable];
    return { name, ...setting.read(text === '' ? undefined : text) };
  });
  refuseIfAny(read.map((one) => ('problem' in one ? one.problem : null)));
  return Object.fromEntries(
    read.map((one) => [one.name, 'value' in one ? one.value : undefined]),
  ) as ValuesOf<Settings>;
}

/** A whole number. */
export function wholeNumber(
  variable: string,
  bounds: { min: number; max: number; unit?: string },
  otherwise: number,
): Setting<number> {
  return setting<number>(variable, otherwise, (text) => {
    const value = Number(text);
    const problem = numberProblem(variable, value, { unit: '', ...bounds, whole: true });
    return problem ? { problem: { ...problem, found: text } } : { value };
  });
}

/** An instant with its offset from UTC, e.g. `2027-02-28T03:00:00Z`; undefined where it is not set. @returns UTC ms */
export function instant(variable: string): Setting<number | undefined> {
  return setting<number | undefined>(variable, undefined, (text) => {
    const value = INSTANT.test(text) ? Date.parse(text) : NaN;
    const allowed = 'an instant with its offset from UTC, e.g. 2027-02-28T03:00:00Z';
    return Number.isNaN(value)
      ? { problem: fieldProblem({ field: variable, found: text, allowed, unit: '' }) }
      : { value };
  });
}

const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d.*(Z|[+-]\d\d:\d\d)$/;

/** The address of a server, which may hold a password. @param schemes e.g. `['postgres:', 'postgresql:']` */
export function address(variable: string, schemes: string[]): Setting<string | undefined> {
  return setting<string | undefined>(variable, undefined, (text) => {
    const allowed = `an address that begins with ${schemes.map((scheme) => `${scheme}//`).join(' or ')}`;
    const url = URL.canParse(text) ? new URL(text) : null;
    if (url && schemes.includes(url.protocol)) return { value: text };
    return {
      problem: fieldProblem({ field: variable, found: url ? `${url.protocol}//…` : 'no address', allowed, unit: '' }),
    };
  });
}

/** The same, and nothing works without it. */
export function neededAddress(variable: string, schemes: string[]): Setting<string> {
  const optional = address(variable, schemes);
  return {
    variable,
    read: (text) => {
      if (text !== undefined) return optional.read(text) as ReturnType<Setting<string>['read']>;
      const allowed = `an address that begins with ${schemes[0]}//`;
      return { problem: fieldProblem({ field: variable, found: undefined, allowed, unit: '' }) };
    },
  };
}

export function oneOf<Value extends string>(
  variable: string,
  values: readonly Value[],
  otherwise: Value,
): Setting<Value> {
  return setting<Value>(variable, otherwise, (text) => {
    if ((values as readonly string[]).includes(text)) return { value: text as Value };
    return {
      problem: fieldProblem({ field: variable, found: text, allowed: `one of ${values.join(', ')}`, unit: '' }),
    };
  });
}

export function text<Otherwise extends string | undefined>(
  variable: string,
  otherwise: Otherwise,
): Setting<string | Otherwise> {
  return setting<string | Otherwise>(variable, otherwise, (value) => ({ value }));
}

function setting<Value>(
  variable: string,
  otherwise: Value,
  parse: (text: string) => ReturnType<Setting<Value>['read']>,
): Setting<Value> {
  return { variable, read: (text) => (text === undefined ? { value: otherwise } : parse(text)) };
}
