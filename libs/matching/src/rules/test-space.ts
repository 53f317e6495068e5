import { openingsOf } from '../space.js';
import { atLeast, notBelow, reaches, worse } from './rule.js';
import type { Rule } from './rule.js';

/**
 * Stack, specimen and travel lie within the opening of the frame with the lab's clearance; the ends cannot meet; grips, platens,
 * fixture and specimen pass between the columns.
 */
export const testSpace: Rule = {
  code: 'test-space',
  source: 'grips + free length + travel + clearance within the opening: common practice, no source',
  checks: [
    {
      sees: ['frame', 'ends'],
      judge({ frame, ends: { upper, lower } }, { needs }) {
        const wider = lower.details.outsideWidthMm > upper.details.outsideWidthMm ? lower : upper;
        const bodyMm = needs.specimen.bodyWidthMm;
        const widestMm = Math.max(wider.details.outsideWidthMm, bodyMm);
        const items = widestMm > bodyMm ? [wider.id, frame.id] : [frame.id];
        return atLeast('too-wide', items, widestMm, frame.details.columnClearanceMm, 'mm');
      },
      passes: ({ frame, ends: { upper, lower } }, { needs }) =>
        reaches(
          frame.details.columnClearanceMm,
          Math.max(upper.details.outsideWidthMm, lower.details.outsideWidthMm, needs.specimen.bodyWidthMm),
        ),
      otherwise: 'fail',
    },
    {
      // Whatever hangs there, what lies between the ends is the free length, and compression takes the travel from it.
      sees: [],
      judge(_parts, { needs }) {
        if (needs.direction !== 'compression' || needs.ends.by === 'fixture') return null;
        return atLeast('ends-meet', [], needs.travel.value, needs.specimen.freeLengthMm, 'mm');
      },
    },
    {
      sees: ['frame', 'cell', 'ends', 'adapters'],
      judge(parts, { needs, settings }) {
        const { leastMm, mostMm } = openingsOf(parts, needs);
        const { openingMinMm, openingMaxMm } = parts.frame.details;
        const frame = [parts.frame.id];
        return worse(
          atLeast('too-tall', frame, mostMm + settings.clearanceMm, openingMaxMm, 'mm'),
          notBelow('too-short', frame, leastMm, openingMinMm, 'mm'),
        );
      },
      passes(parts, { needs, settings }) {
        const { leastMm, mostMm } = openingsOf(parts, needs);
        const { openingMinMm, openingMaxMm } = parts.frame.details;
        return reaches(openingMaxMm, mostMm + settings.clearanceMm) && reaches(leastMm, openingMinMm);
      },
      otherwise: 'fail',
    },
  ],
};
