import { applyDecorators } from '@nestjs/common';
import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { ArrayMaxSize, IsArray, IsOptional, ValidateBy, ValidateIf, ValidateNested } from 'class-validator';
import { numberProblem } from '#libs/errors/src/index.js';

/** What a refused field is told with: `allowed` in words and the unit of the figures in it. */
export interface FieldContext {
  allowed: string;
  unit: string;
  /** What was sent must not come back in the refusal. */
  secret?: boolean;
}

interface Common {
  /** May be left out. */
  optional?: boolean;
  /** May be null. */
  nullable?: boolean;
  /** Said in the API's description. */
  about?: string;
  example?: unknown;
}

interface FigureRules extends Common {
  unit?: string;
  min?: number;
  max?: number;
  above?: number;
  below?: number;
  whole?: boolean;
}

interface TextRules extends Common {
  min?: number;
  max?: number;
  pattern?: RegExp;
  /** The pattern in words, e.g. `letters, digits and dashes`. */
  allowed?: string;
}

const MOST_CHARACTERS = 500;
const MOST_ROWS = 1_000;

/** A number with its bounds, in the unit that the name of the field ends with. */
export function Figure({ unit = '', whole, min, max, above, below, ...common }: FigureRules = {}): PropertyDecorator {
  const bounds = { unit, ...defined({ min, max, above, below, whole }) };
  const described = {
    type: whole ? 'integer' : 'number',
    ...defined({
      minimum: min ?? above,
      maximum: max ?? below,
      exclusiveMinimum: above !== undefined || undefined,
      exclusiveMaximum: below !== undefined || undefined,
    }),
  };
  const allowed = numberProblem('', null, bounds)!.allowed;
  return field({ allowed, unit }, described, common, (value) => numberProblem('', value, bounds) === null);
}

/** Text with a limited length. Control characters other than line breaks and tabs are refused. */
export function Text({
  min = 1,
  max = MOST_CHARACTERS,
  pattern,
  allowed,
  ...common
}: TextRules = {}): PropertyDecorator {
  const words = allowed ?? `text of ${min} to ${max} characters`;
  const described = { type: 'string', minLength: min, maxLength: max, ...defined({ pattern: pattern?.source }) };
  return field({ allowed: words, unit: '' }, described, common, (value) => {
    if (typeof value !== 'string' || value.length > max || value.trim().length < min) return false;
    return !hasControlCharacters(value) && (pattern?.test(value) ?? true);
  });
}

/** A password: a refusal says how long it was, never what it was. */
export function Secret({ min = 1, max, ...common }: Common & { min?: number; max: number }): PropertyDecorator {
  const described = { type: 'string', format: 'password', minLength: min, maxLength: max };
  const context = { allowed: `${min} to ${max}`, unit: 'characters', secret: true };
  return field(context, described, common, (value) => {
    return typeof value === 'string' && value.length <= max && value.trim().length >= min;
  });
}

export function OneOf(values: readonly string[], common: Common = {}): PropertyDecorator {
  const allowed = `one of ${values.join(', ')}`;
  return field({ allowed, unit: '' }, { type: 'string', enum: [...values] }, common, (value) =>
    values.includes(value as string),
  );
}

export function YesNo(common: Common = {}): PropertyDecorator {
  return field(
    { allowed: 'true or false', unit: '' },
    { type: 'boolean' },
    common,
    (value) => typeof value === 'boolean',
  );
}

/** The id of something of ours. */
export function Id(common: Common = {}): PropertyDecorator {
  return field({ allowed: 'an id (UUID)', unit: '' }, { type: 'string', format: 'uuid' }, common, isId);
}

/** An instant in UTC, e.g. `2026-11-25T12:48:00.000Z`. */
export function When(common: Common = {}): PropertyDecorator {
  const allowed = 'an instant with its offset, e.g. 2026-11-25T12:48:00Z';
  return field({ allowed, unit: '' }, { type: 'string', format: 'date-time' }, common, isInstant);
}

/** A day of the lab's calendar, e.g. `2026-11-25`. */
export function Day(common: Common = {}): PropertyDecorator {
  return field({ allowed: 'a day, e.g. 2026-11-25', unit: '' }, { type: 'string', format: 'date' }, common, isDay);
}

/** A day of the lab's calendar, or an instant. */
export function DayOrWhen(common: Common = {}): PropertyDecorator {
  const allowed = 'a day, e.g. 2026-11-25, or an instant with its offset, e.g. 2026-11-25T12:48:00Z';
  const described = { type: 'string', anyOf: [{ format: 'date' }, { format: 'date-time' }] };
  return field({ allowed, unit: '' }, described, common, (value) => isDay(value) || isInstant(value));
}

/** A list of plain values, each checked like a field of its own. */
export function ListOf(
  each: (value: unknown) => boolean,
  allowed: string,
  items: object,
  common: Common & { min?: number; max?: number } = {},
): PropertyDecorator {
  const { min = 0, max = MOST_ROWS, ...rest } = common;
  const described = { type: 'array', items, minItems: min, maxItems: max };
  return field({ allowed: `${min} to ${max} of: ${allowed}`, unit: '' }, described, rest, (value) => {
    return Array.isArray(value) && value.length >= min && value.length <= max && value.every(each);
  });
}

/** An object with rules of its own. The described `type` is a function of that very name: by it Nest knows it from a class. */
export function Part(type: () => new () => object, common: Common = {}): PropertyDecorator {
  const checks = [ValidateNested({ context: { allowed: 'an object', unit: '' } }), Type(type)];
  return applyDecorators(...presence({ type: () => type() }, common), ...checks, ...[isObject()]);
}

/** A list of objects with rules of their own. */
export function Parts(
  type: () => new () => object,
  { max = MOST_ROWS, ...common }: Common & { max?: number } = {},
): PropertyDecorator {
  const context = { allowed: `a list of at most ${max} objects`, unit: '' } satisfies FieldContext;
  const checks = [
    IsArray({ context }),
    ArrayMaxSize(max, { context }),
    ValidateNested({ each: true, context }),
    isObject({ each: true }),
    Type(type),
  ];
  return applyDecorators(...presence({ type: () => type(), isArray: true }, common), ...checks);
}

/** An object whose fields a core checks, such as the details of an item. */
export function Free(common: Common = {}): PropertyDecorator {
  const context = { allowed: 'an object', unit: '' };
  return field(
    context,
    { type: 'object', additionalProperties: true },
    common,
    (value) => typeof value === 'object' && value !== null && !Array.isArray(value),
  );
}

export function isId(value: unknown): boolean {
  return typeof value === 'string' && /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i.test(value);
}

export function isInstant(value: unknown): boolean {
  if (typeof value !== 'string' || !/^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d{1,6})?)?(Z|[+-]\d\d:\d\d)$/.test(value))
    return false;
  return isDay(value.slice(0, 10)) && !Number.isNaN(Date.parse(value));
}

export function isDay(value: unknown): boolean {
  if (typeof value !== 'string' || !/^\d{4}-\d\d-\d\d$/.test(value)) return false;
  const day = new Date(`${value}T00:00:00Z`); // the 30th of February would become a day of March
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(value);
}

function field(
  context: FieldContext,
  described: object,
  common: Common,
  allows: (value: unknown) => boolean,
): PropertyDecorator {
  const check = ValidateBy(
    { name: 'allowed', validator: { validate: allows, defaultMessage: () => context.allowed } },
    { context },
  );
  return applyDecorators(
    ...presence({ ...described, ...(context.unit ? { 'x-unit': context.unit } : {}) }, common),
    check,
  );
}

function presence(described: object, { optional, nullable, about, example }: Common): PropertyDecorator[] {
  const property = { ...described, ...defined({ nullable, example, description: about }) } as object;
  const described_ = optional ? ApiPropertyOptional(property) : ApiProperty(property);
  if (optional && nullable) return [described_, IsOptional()];
  if (optional) return [described_, ValidateIf((_, value) => value !== undefined)];
  return nullable ? [described_, ValidateIf((_, value) => value !== null)] : [described_];
}

/** A list among the objects of a list would pass as one that has nothing wrong with it. */
function isObject({ each = false } = {}): PropertyDecorator {
  const context = { allowed: each ? 'a list of objects' : 'an object', unit: '' };
  const validate = (value: unknown) => typeof value === 'object' && value !== null && !Array.isArray(value);
  const validator = { validate, defaultMessage: () => context.allowed };
  return ValidateBy({ name: 'isObject', validator }, { each, context });
}

function hasControlCharacters(value: string): boolean {
  return [...value].some((character) => character < ' ' && !'\n\r\t'.includes(character)) || value.includes('\u007f');
}

function defined<Given extends Record<string, unknown>>(given: Given): Partial<Given> {
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as Partial<Given>;
}
