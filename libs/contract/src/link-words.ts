import type { LinkRole } from '#libs/matching/src/index.js';

const WORDS: Readonly<Record<LinkRole, string>> = {
  'load-cell': 'load cell',
  'upper-adapter': 'adapter above',
  'upper-adapter-2': 'second adapter above',
  'lower-adapter': 'adapter below',
  'lower-adapter-2': 'second adapter below',
  ends: 'grips or fixture',
  upper: 'upper grip or fixture',
  lower: 'lower grip or fixture',
  faces: 'jaw faces',
  extensometer: 'extensometer',
  chamber: 'chamber',
  guard: 'guard',
  thermocouple: 'thermocouple',
};

/** A place in a load train as people call it; a place that is not known here keeps its name. */
export function linkWords(role: string): string {
  return WORDS[role as LinkRole] ?? role.replaceAll('-', ' ');
}
