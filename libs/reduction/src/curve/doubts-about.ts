import type { CurveChannel } from './curve.js';
import type { FormatDoubt } from './curve-format.js';
import type { HeadingReading } from './read-heading.js';

const LOADS: readonly CurveChannel[] = ['forceN', 'stressMPa', 'torqueNm'];

/** What a person should look at before these columns are trusted; only a column that is to be read can block. */
export function doubtsAbout(columns: readonly HeadingReading[]): FormatDoubt[] {
  const channels = columns.map(({ channel }) => channel).filter((channel) => channel !== null);
  return [
    ...columns.flatMap((column, at) => aboutColumn(column, at, columns)),
    ...(channels.some((channel) => LOADS.includes(channel)) ? [] : [about('no-load-column', null, '')]),
    ...(new Set(channels).size > 1 ? [] : [about('no-second-column', null, '')]),
  ];
}

function aboutColumn(column: HeadingReading, at: number, columns: readonly HeadingReading[]): FormatDoubt[] {
  const { channel, unit, unitText, heading } = column;
  if (channel === null) return heading ? [about('column-not-recognised', at, heading)] : [];
  if (columns.findIndex((each) => each.channel === channel) < at) return [about('channel-twice', at, heading)];
  if (unit === null) return [about(unitText ? 'unit-does-not-fit' : 'unit-unknown', at, heading)];
  return channel === 'strain' && unitText === '' ? [about('strain-taken-as-fraction', at, heading)] : [];
}

/** Strain without a unit may be a fraction or percent: taken wrongly, every modulus is off by a hundred. */
const BLOCKING: readonly FormatDoubt['code'][] = [
  'strain-taken-as-fraction',
  'no-load-column',
  'no-second-column',
  'unit-unknown',
  'unit-does-not-fit',
];

function about(code: FormatDoubt['code'], at: number | null, found: string): FormatDoubt {
  return { code, blocking: BLOCKING.includes(code), column: at === null ? null : at + 1, found };
}
