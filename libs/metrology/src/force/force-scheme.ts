import { formatNumber } from '#libs/units/src/index.js';
import { reachesLimit } from '../within-limit.js';
import { DEFAULT_SHARE, FEWEST_STEPS, isGap } from './force-range.js';
import type { Note } from '../outcome.js';
import type { ForceReadings, ForceStep } from './force-readings.js';

/** What the choice of steps leaves open; ISO 7500-1:2018 6.4 (from memory). */
export function schemeNotes(sorted: readonly ForceStep[], readings: ForceReadings): Note[] {
  return [
    ...tooFewSteps(sorted),
    ...notToTheTop(sorted, readings),
    ...gaps(sorted, readings),
    ...reversibility(sorted),
    ...torque(readings),
  ];
}

function tooFewSteps(sorted: readonly ForceStep[]): Note[] {
  const top = sorted.at(-1)?.nominal ?? 0;
  const count = sorted.filter(({ nominal }) => reachesLimit(nominal, DEFAULT_SHARE * top)).length;
  if (count >= FEWEST_STEPS) return [];
  const sentence = `${count} steps lie between 20 % and 100 % of the highest; ${FEWEST_STEPS} are needed, so that no class is given.`;
  return [{ code: 'too-few-steps', sentence }];
}

function notToTheTop(sorted: readonly ForceStep[], { capacity, unit }: ForceReadings): Note[] {
  const top = sorted.at(-1)?.nominal;
  if (top === undefined || reachesLimit(top, capacity)) return [];
  const [reached, full] = [formatNumber(top), formatNumber(capacity)];
  return [
    {
      code: 'below-capacity',
      sentence: `The highest step is ${reached} ${unit} of ${full} ${unit}; nothing above it is verified.`,
    },
  ];
}

function gaps(sorted: readonly ForceStep[], { unit }: ForceReadings): Note[] {
  const top = sorted.at(-1)?.nominal ?? 0;
  return sorted.slice(1).flatMap(({ nominal: upper }, index) => {
    const lower = sorted[index]!.nominal;
    if (!isGap(lower, upper, top)) return [];
    const between = `${formatNumber(lower)} ${unit} and ${formatNumber(upper)} ${unit}`;
    return [
      {
        code: 'gap',
        sentence: `A step is missing between ${between}; no range reaches below ${formatNumber(upper)} ${unit}.`,
      },
    ];
  });
}

/** Where reversibility is asked for, ISO 7500-1 wants it at four steps or more (from memory). */
const FEWEST_FALLING = 4;

function reversibility(sorted: readonly ForceStep[]): Note[] {
  const count = sorted.filter(({ falling }) => falling !== null).length;
  if (count === 0) return [{ code: 'v-not-determined', sentence: 'Reversibility was not determined.' }];
  if (count >= FEWEST_FALLING) return [];
  return [
    {
      code: 'v-at-few-steps',
      sentence: `Reversibility was determined at ${count} steps; ${FEWEST_FALLING} are needed.`,
    },
  ];
}

function torque({ direction }: ForceReadings): Note[] {
  if (direction !== 'torque') return [];
  const sentence =
    'ISO 7500-1 is written for force; its limits are used for torque as well (common practice, no source).';
  return [{ code: 'torque-by-analogy', sentence }];
}
