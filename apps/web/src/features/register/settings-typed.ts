import type { LabSettings, LabSettingsView } from '#libs/contract/src/index.js';
import { parseNumber } from '#libs/units/src/index.js';
import { asText, readPath, withPath } from './paths.js';
import { SETTING_GROUPS } from './setting-groups.js';
import { rowProblems, rowsOf, shiftsOf } from './shift-rows.js';
import type { ShiftRow } from './shift-rows.js';

/** The settings as they are typed: texts and figures by their path, and the shifts in rows. */
export interface SettingsTyped {
  texts: Record<string, string>;
  shifts: ShiftRow[];
}

const TEXTS = ['name', 'timeZone', 'contact', 'address'];
const FIGURES = SETTING_GROUPS.flatMap(({ lines }) => lines.map(({ path }) => path));

/** The name of a setting in the form: dots would part it. */
export function nameOf(path: string): `texts.${string}` {
  return `texts.${path.replaceAll('.', '/')}`;
}

export function typedOf(settings: LabSettingsView): SettingsTyped {
  const texts = [...TEXTS, ...FIGURES].map((path) => [keyOf(path), asText(readPath(settings, path))] as const);
  return { texts: Object.fromEntries(texts), shifts: rowsOf(settings.shifts) };
}

/** What the server is sent. Whether this is the demo lab is no one's to set: it takes that in no body. */
export function bodyOf(
  { version: _version, demo: _demo, ...settings }: LabSettingsView,
  { texts, shifts }: SettingsTyped,
): Omit<LabSettings, 'demo'> {
  let body: Omit<LabSettings, 'demo'> = { ...settings, shifts: shiftsOf(shifts) };
  for (const path of TEXTS) body = withPath(body, path, texts[keyOf(path)]);
  for (const path of FIGURES) body = withPath(body, path, figureOf(texts[keyOf(path)] ?? ''));
  return body;
}

/** What the form itself can tell to be wrong, by field. */
export function problemsOf({ shifts }: SettingsTyped): Record<string, string> {
  const rows = rowProblems(shifts).flatMap((row, at) =>
    Object.entries(row).map(([key, sentence]) => [`shifts.${at}.${key}`, sentence] as const),
  );
  return Object.fromEntries(rows);
}

/**
 * The field of the form that a path of the server is about. A row of shifts stands for an entry on each of its days.
 */
export function fieldOf(path: string, shifts: readonly ShiftRow[]): string {
  const [, index, key] = /^shifts\[(\d+)\]\.(\w+)$/.exec(path) ?? [];
  if (index === undefined) return path === 'shifts' ? path : nameOf(path);
  let next = 0;
  const row = shifts.findIndex(({ days }) => (next += days.length) > Number(index));
  return `shifts.${row}.${key}`;
}

function keyOf(path: string): string {
  return path.replaceAll('.', '/');
}

/** A text that is no number goes to the server as it is, which refuses it by name. */
function figureOf(text: string): number | string {
  const read = parseNumber(text);
  return 'reason' in read ? text : read.value;
}
