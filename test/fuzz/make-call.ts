import { seedFor, chanceFrom } from './chance.js';
import type { Chance } from './chance.js';
import { hostileBytes, hostileText, hostileValue, spoiled } from './hostile.js';
import type { Description, Operation, Parameter } from './operations.js';
import { someId, validValue } from './values.js';
import type { Known } from './values.js';

export interface Call {
  method: string;
  /** Below `/api/v1`, ready to be sent. */
  path: string;
  headers: Record<string, string>;
  body: string | null;
}

/** How a call is meant: as described, described but at odds with how things stand, or to break something. */
export const MANNERS = ['valid', 'edge', 'hostile'] as const;
export type Manner = (typeof MANNERS)[number];

interface Making {
  operation: Operation;
  manner: Manner;
  known: Known;
  api: Description;
  chance: Chance;
}

/** One call of an operation; the same for the same seed and the same lab. */
export function makeCall(seed: number, name: string, rest: Omit<Making, 'chance'>): Call {
  const making = { ...rest, chance: chanceFrom(seedFor(seed, name)) };
  const { operation } = making;
  return { method: operation.method, path: pathOf(making), headers: headersOf(making), body: bodyOf(making) };
}

function pathOf(making: Making): string {
  const { operation } = making;
  const path = operation.path.replace(/\{(\w+)\}/g, (_, name: string) => encode(placeIn(name, making)));
  const asked = operation.parameters
    .filter((parameter) => parameter.in === 'query')
    .flatMap((each) => queryOf(each, making));
  return asked.length > 0 ? `${path}?${asked.join('&')}` : path;
}

function placeIn(name: string, { operation, manner, known, chance }: Making): string {
  const fitting = known[`${operation.id}/${name}`] ?? [];
  const all = known[`${operation.path.split('/')[1]}/${name}`] ?? known[name] ?? [];
  const ids = fitting.length > 0 && !chance.oneIn(4) ? fitting : all;
  if (manner === 'hostile' && chance.oneIn(3)) return hostileText(chance) || 'x';
  return ids.length > 0 && !(manner === 'edge' && chance.oneIn(3)) ? String(chance.pick(ids)) : someId(chance);
}

function queryOf({ name, required, schema = {} }: Parameter, { manner, known, api, chance }: Making): string[] {
  if (!required && chance.oneIn(2)) return [];
  if (manner === 'hostile' && chance.oneIn(2)) {
    const value = encode(hostileText(chance));
    return chance.pick([
      [`${name}=${value}`],
      [`${name}[]=${value}`],
      [`${name}[a]=${value}`],
      [`${name}=1`, `${name}=${value}`],
    ]);
  }
  const value = validValue(schema, name, known, chance, api);
  return value === null ? [] : [`${name}=${encode(typeof value === 'string' ? value : JSON.stringify(value))}`];
}

function headersOf({ operation, manner, chance }: Making): Record<string, string> {
  const headers: Record<string, string> = { 'x-lab-page': '1' };
  if (operation.method !== 'GET') headers['content-type'] = operation.raw ? 'text/plain' : 'application/json';
  if (/PATCH|PUT|issue/.test(operation.method + operation.path))
    headers['if-match'] = `"${chance.pick([1, 1, 1, 2, 3, 4])}"`;
  if (manner !== 'hostile') return headers;
  return { ...headers, ...chance.pick(ODD_HEADERS)(chance) };
}

const ascii = (chance: Chance) =>
  hostileText(chance)
    .replace(/[^\x20-\x7e]/g, '')
    .slice(0, 4_000);

const ODD_HEADERS: ((chance: Chance) => Record<string, string>)[] = [
  () => ({}),
  () => ({}),
  (chance) => ({ 'if-match': ascii(chance) }),
  (chance) => ({ 'idempotency-key': ascii(chance) }),
  (chance) => ({
    'content-type': chance.pick([
      'text/html',
      'application/xml',
      'application/json; charset=utf-7',
      'multipart/form-data',
    ]),
  }),
  () => ({ origin: 'https://elsewhere.example' }),
  (chance) => ({ authorization: `Bearer ${ascii(chance)}` }),
  (chance) => ({ 'x-request-id': ascii(chance), 'x-forwarded-for': ascii(chance) }),
];

function bodyOf({ operation, manner, known, api, chance }: Making): string | null {
  if (operation.method === 'GET') return null;
  if (operation.raw || (manner === 'hostile' && chance.oneIn(8))) return hostileBytes(chance);
  if (!operation.body) return manner === 'hostile' && chance.oneIn(2) ? JSON.stringify(hostileValue(chance)) : null;
  const examples = known[`@${operation.id}`] ?? [];
  const value =
    examples.length > 0 && !chance.oneIn(4)
      ? chance.pick(examples)
      : validValue(operation.body, '', known, chance, api);
  return JSON.stringify(manner === 'hostile' ? spoiled(value, chance) : value) ?? '';
}

/** Half a pair of code units has no form in an address. */
function encode(text: string): string {
  return encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\ufffd'));
}
