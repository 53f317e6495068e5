import type { Frame, Item } from '../register/item.js';
import { choiceWords } from '../register/choice-words.js';
import { FAIL, PASS, worst } from './outcome.js';
import type { Outcome } from './outcome.js';
import type { Report } from './report.js';
import { rule } from './rule.js';
import type { Check } from './rule.js';

/** Compressed air, hydraulics, power and the like are at the frame for what the train needs. */
export const utilities = rule({
  code: 'utilities',
  source: 'item and frame data',
  checks: [
    {
      sees: ['frame', 'ends'],
      frameFields: ['utilitiesAtFrame'],
      judge: ({ frame, ends: { upper, lower } }, _context, report) =>
        worst(supplied(frame, upper, report), upper.id === lower.id ? PASS : supplied(frame, lower, report)),
    },
    suppliedTo('faces'),
    suppliedTo('chamber'),
    suppliedTo('extensometer'),
  ],
  sentences: {
    'not-supplied': ({ first, second, need, has, ok }) =>
      ok ? `${second} supplies ${need} for ${first}.` : `${first} needs ${need}; ${second} has ${has}.`,
  },
});

function suppliedTo(part: 'faces' | 'chamber' | 'extensometer'): Check {
  return {
    sees: ['frame', part],
    frameFields: ['utilitiesAtFrame'],
    judge: (parts, _context, report) => supplied(parts.frame, parts[part], report),
  };
}

function supplied(frame: Frame, item: Item | null, report: Report): Outcome {
  if (!item || item.utilities.length === 0) return PASS;
  const { utilitiesAtFrame } = frame.details;
  const missing = item.utilities.filter((utility) => !utilitiesAtFrame.includes(utility));
  return report.say(
    missing.length > 0 ? FAIL : PASS,
    'not-supplied',
    [item, frame],
    () => (missing.length > 0 ? missing : item.utilities).map(choiceWords).join(', '),
    () => utilitiesAtFrame.map(choiceWords).join(', ') || 'none',
  );
}
