import type { Frame, FrameDetails } from '../register/item.js';
import { cannotLoad } from './frame-capacity.js';
import { CAUTION, PASS, worst } from './outcome.js';
import type { Outcome } from './outcome.js';
import type { Report } from './report.js';
import { rule } from './rule.js';
import type { Context } from './rule.js';
import { limit } from './sentence.js';

/** Every speed of the method lies within the frame's range, and within its limit at that force; load-rate control where the method sets a stress rate. */
export const speed = rule({
  code: 'speed',
  source: 'the method; frame data',
  checks: [
    {
      sees: ['frame'],
      judge: ({ frame }, context, report) =>
        cannotLoad(frame.details, context.needs.direction)
          ? PASS
          : worst(speeds(frame, context, report), control(frame, context, report)),
    },
  ],
  sentences: {
    'too-slow': limit(
      ({ need, has, first }) => `The method asks for ${need}; ${first} goes no slower than ${has}`,
      'Choose another frame.',
    ),
    'too-fast': limit(
      ({ need, has, first }) => `The method asks for ${need}; ${first} reaches ${has}`,
      'Choose a faster frame.',
    ),
    'too-fast-at-force': limit(
      ({ need, has, first }) => `The method asks for ${need}; at this force ${first} reaches ${has}`,
      'Choose a stronger frame.',
    ),
    'no-load-control': ({ first, need }) =>
      `The method sets a load rate; ${first} has no ${need} control, so that the speed only comes near it.`,
  },
});

function speeds(frame: Frame, { needs }: Context, report: Report): Outcome {
  const { details } = frame;
  const turns = needs.direction === 'torque';
  const slowest = turns ? details.rotationMinDegPerMin : details.speedMinMmPerMin;
  const fastest = turns ? details.rotationMaxDegPerMin : fastestAt(needs.peakHigh.value, details);
  const reason = !turns && fastest < details.speedMaxMmPerMin ? 'too-fast-at-force' : 'too-fast';
  const unit = turns ? '°/min' : 'mm/min';
  let outcome: Outcome = PASS;
  for (const {
    speed: { value },
  } of needs.speeds)
    outcome = worst(
      outcome,
      report.notBelow('too-slow', value, slowest, unit, frame),
      report.atLeast(reason, value, fastest, unit, frame),
    );
  return outcome;
}

/** Highest speed at a force, mm/min. */
function fastestAt(forceN: number, { speedMaxMmPerMin, speedLimits }: FrameDetails): number {
  let fastest = speedMaxMmPerMin;
  for (const each of speedLimits) if (forceN > each.aboveForceN) fastest = Math.min(fastest, each.speedMaxMmPerMin);
  return fastest;
}

function control(frame: Frame, { needs }: Context, report: Report): Outcome {
  const { controlModes } = frame.details;
  if (needs.control === 'position' || controlModes.includes(needs.control)) return PASS;
  return report.say(CAUTION, 'no-load-control', frame, needs.control, () => controlModes.join(', '));
}
