import { openingsOf } from './openings.js';
import { PASS, worst } from './outcome.js';
import { NO_ADAPTERS } from './parts.js';
import type { Parts } from './parts.js';
import { rule } from './rule.js';
import type { Context } from './rule.js';
import { limit } from './sentence.js';

/**
 * Stack, specimen and travel lie within the opening of the frame with the lab's clearance; the ends cannot meet; grips, platens,
 * fixture and specimen pass between the columns.
 */
export const testSpace = rule({
  code: 'test-space',
  source: 'grips + free length + travel + clearance within the opening: common practice, no source',
  checks: [
    {
      sees: ['frame', 'ends'],
      frameFields: ['columnClearanceMm'],
      judge({ frame, ends: { upper, lower } }, { needs }, report) {
        const wider = lower.details.outsideWidthMm > upper.details.outsideWidthMm ? lower : upper;
        const bodyMm = needs.specimen.bodyWidthMm;
        const widestMm = Math.max(wider.details.outsideWidthMm, bodyMm);
        const items = widestMm > bodyMm ? [wider, frame] : frame;
        return report.atLeast('too-wide', widestMm, frame.details.columnClearanceMm, 'mm', items);
      },
    },
    {
      // Whatever hangs there, what lies between the ends is the free length, and compression takes the travel from it.
      sees: [],
      judge(_parts, { needs }, report) {
        if (needs.direction !== 'compression' || needs.ends.by === 'fixture') return PASS;
        return report.atLeast('ends-meet', needs.travel.value, needs.specimen.freeLengthMm, 'mm', []);
      },
    },
    {
      sees: ['frame', 'cell', 'ends', 'adapters'],
      judge(parts, { needs, settings }, report) {
        const { leastMm, mostMm } = openingsOf(parts, needs);
        const { openingMinMm, openingMaxMm } = parts.frame.details;
        return worst(
          report.atLeast('too-tall', mostMm + settings.clearanceMm, openingMaxMm, 'mm', parts.frame),
          report.notBelow('too-short', leastMm, openingMinMm, 'mm', parts.frame),
        );
      },
    },
  ],
  sentences: {
    'too-wide': limit(
      ({ need, has, first, second }) =>
        `${first} is ${need} wide; between the columns of ${second || first} there are ${has}`,
      'Choose a wider frame.',
    ),
    'ends-meet': limit(
      ({ need, has }) => `The test closes the ends by ${need}; there are ${has} between them`,
      'Lower the travel or use a taller specimen.',
    ),
    'too-tall': limit(
      ({ need, has, first }) => `Stack, specimen, travel and clearance take ${need}; ${first} opens ${has}`,
      'Use shorter grips, a shorter specimen or a taller frame.',
    ),
    'too-short': limit(
      ({ need, has, first }) => `The train closes to ${need}; ${first} comes down to ${has} only`,
      'Add an adapter of that length.',
    ),
  },
});

/** Length that adapters may add so that the train fits the opening, mm; nothing fits when `most` is below `least`. */
export function adapterRoomMm(
  { frame, cell, ends }: Pick<Parts, 'frame' | 'cell' | 'ends'>,
  { needs, settings }: Pick<Context, 'needs' | 'settings'>,
): { least: number; most: number } {
  const { leastMm, mostMm } = openingsOf({ cell, ends, adapters: NO_ADAPTERS }, needs);
  const { openingMinMm, openingMaxMm } = frame.details;
  return { least: openingMinMm - leastMm - SLACK_MM, most: openingMaxMm - mostMm - settings.clearanceMm + SLACK_MM };
}

/** Keeps the estimate on the safe side of the rounding; the rule itself decides. */
const SLACK_MM = 1e-6;
