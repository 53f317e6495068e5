import type { Frame, Item } from '../item.js';
import { told, worstEnd } from './rule.js';
import type { Finding, Rule } from './rule.js';

/** Compressed air, hydraulics, power and the like are at the frame for what the train needs. */
export const utilities: Rule = {
  code: 'utilities',
  source: 'item and frame data',
  checks: [
    {
      sees: ['frame', 'ends'],
      judge: ({ frame, ends }) => worstEnd(ends, (item) => supplied(frame, item)),
      passes: ({ ends: { upper, lower } }) => needsNone(upper) && needsNone(lower),
    },
    {
      sees: ['frame', 'faces'],
      judge: ({ frame, faces }) => supplied(frame, faces),
      passes: ({ faces }) => needsNone(faces),
    },
    {
      sees: ['frame', 'chamber'],
      judge: ({ frame, chamber }) => supplied(frame, chamber),
      passes: ({ chamber }) => needsNone(chamber),
    },
    {
      sees: ['frame', 'extensometer'],
      judge: ({ frame, extensometer }) => supplied(frame, extensometer),
      passes: ({ extensometer }) => needsNone(extensometer),
    },
  ],
};

function supplied(frame: Frame, item: Item | null): Finding | null {
  if (!item || needsNone(item)) return null;
  const missing = item.utilities.filter((utility) => !frame.details.utilitiesAtFrame.includes(utility));
  const there = frame.details.utilitiesAtFrame.join(', ') || 'none';
  return told(
    missing.length > 0 ? 'fail' : 'pass',
    'not-supplied',
    [item.id, frame.id],
    (missing.length > 0 ? missing : item.utilities).join(', '),
    there,
  );
}

function needsNone(item: Item | null): boolean {
  return !item || item.utilities.length === 0;
}
