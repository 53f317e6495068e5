import { openingsOf } from '../space.js';
import { atLeast, notBelow, worst } from './rule.js';
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
      judge({ frame, ends }, { needs }) {
        const widths = [ends.upper, ends.lower].map((end) => [end.id, end.details.outsideWidthMm] as const);
        const widest = Math.max(...widths.map(([, width]) => width), needs.specimen.bodyWidthMm);
        const item = widths.find(([, width]) => width === widest)?.[0];
        return atLeast('too-wide', item ? [item, frame.id] : [frame.id], widest, frame.details.columnClearanceMm, 'mm');
      },
    },
    {
      sees: ['frame', 'cell', 'ends', 'adapters'],
      judge(parts, { needs, settings }) {
        const { startMm, leastMm, mostMm, touchMm } = openingsOf(parts, needs);
        const { openingMinMm, openingMaxMm } = parts.frame.details;
        const frame = [parts.frame.id];
        return worst([
          atLeast('too-tall', frame, Math.max(mostMm, startMm) + settings.clearanceMm, openingMaxMm, 'mm'),
          notBelow('too-short', frame, leastMm, openingMinMm, 'mm'),
          touchMm > 0
            ? notBelow('ends-meet', [parts.ends.upper.id, parts.ends.lower.id], leastMm, touchMm, 'mm')
            : null,
        ]);
      },
    },
  ],
};
