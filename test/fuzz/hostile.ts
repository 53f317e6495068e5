import type { Chance } from './chance.js';

/** Text that has broken other programs: quoting, formats, templates, paths, control characters, sizes. */
const TEXTS = [
  '',
  ' ',
  `' or '1'='1`,
  `'; --`,
  `") or 1=1 --`,
  '%',
  '\\',
  '%00',
  'a\u0000b',
  '\u001b[31m',
  '\ud800',
  '\u202eevil',
  '../../../../etc/passwd',
  '..%2f..%2f',
  '<script>alert(1)</script>',
  '{{7*7}}${7*7}#{7*7}',
  '=cmd|calc!A1',
  '$gt',
  '__proto__',
  'null',
  'undefined',
  'NaN',
  '1e999',
  '-1',
  '0x10',
  '9223372036854775808',
  '2026-02-30',
  '275760-09-14T00:00:00Z',
  '0000-01-01T00:00:00Z',
  '9999-12-31T23:59:59.999999Z',
  '00000000-0000-0000-0000-000000000000',
  '🧪'.repeat(40),
  'x'.repeat(501),
  'x'.repeat(20_000),
];

const NUMBERS = [0, -0, -1, 1e-320, 5e-324, 1e308, -1e308, 2 ** 31, 2 ** 53, -(2 ** 63), 0.1 + 0.2];

const OTHERS: unknown[] = [
  null,
  true,
  [],
  {},
  [[]],
  [null],
  { toString: 'x' },
  { constructor: { prototype: { admin: true } } },
  { length: 1e9 },
  nested(80),
  Array.from({ length: 1_001 }, () => 1),
];

function nested(depth: number): unknown {
  return depth === 0 ? 'x' : { a: nested(depth - 1) };
}

export function hostileText(chance: Chance): string {
  return chance.pick(TEXTS);
}

export function hostileValue(chance: Chance): unknown {
  return chance.pick([TEXTS, TEXTS, NUMBERS, OTHERS].map((all) => chance.pick<unknown>(all)));
}

/** The same value with one to three places of it spoiled: another value, a field more, a field less. */
export function spoiled(value: unknown, chance: Chance): unknown {
  let now = structuredClone(value);
  for (let times = chance.whole(1, 3); times > 0; times--) now = spoiledOnce(now, chance);
  return now;
}

function spoiledOnce(value: unknown, chance: Chance): unknown {
  if (typeof value !== 'object' || value === null || chance.oneIn(12)) return hostileValue(chance);
  const fields = value as Record<string, unknown>;
  const keys = Object.keys(fields);
  if (keys.length === 0 || chance.oneIn(8)) return withField(fields, chance);
  const key = chance.pick(keys);
  if (chance.oneIn(6) && !Array.isArray(value)) {
    const { [key]: _, ...rest } = fields;
    return rest;
  }
  fields[key] = chance.oneIn(2) ? spoiledOnce(fields[key], chance) : hostileValue(chance);
  return fields;
}

function withField(value: Record<string, unknown>, chance: Chance): unknown {
  if (Array.isArray(value)) return [...value, hostileValue(chance)];
  const name = chance.pick(['__proto__', 'constructor', 'id', 'version', 'state', 'roles', 'isAdmin', '']);
  return JSON.parse(
    `{${JSON.stringify(name)}:${JSON.stringify(hostileValue(chance))}}`.replace('{', insert(value)),
  ) as unknown;
}

/** Written out, because an assignment to `__proto__` would not make a field. */
function insert(value: object): string {
  const inner = JSON.stringify(value).slice(0, -1);
  return inner === '{' ? '{' : `${inner},`;
}

/** Bodies that are no JSON of the right kind. */
export function hostileBytes(chance: Chance): string {
  return chance.pick([
    '',
    '{',
    '{"a":1e999}',
    '[]',
    '"text"',
    'null',
    '{"a":1,"a":2}',
    '\u0000\u0001\u0002',
    'x;y\n1;2\n'.repeat(50),
    `{"a":"${'x'.repeat(1_100_000)}"}`,
    '['.repeat(50_000),
    '%PDF-1.7 <script>',
  ]);
}
