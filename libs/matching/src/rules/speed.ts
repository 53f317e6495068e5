import type { Frame, FrameDetails } from '../item.js';
import { cannotLoad } from './frame-capacity.js';
import { atLeast, notBelow, reaches, told, worst } from './rule.js';
import type { Context, Finding, Rule } from './rule.js';

/** Every speed of the method lies within the frame's range, and within its limit at that force; load-rate control where the method sets a stress rate. */
export const speed: Rule = {
  code: 'speed',
  source: 'the method; frame data',
  checks: [
    {
      sees: ['frame'],
      judge: ({ frame }, context) =>
        cannotLoad(frame.details, context.needs.direction)
          ? null
          : worst([...speeds(frame, context), control(frame, context)]),
      passes: ({ frame }, context) => runs(frame, context) && control(frame, context) === null,
    },
  ],
};

function speeds({ id, details }: Frame, { needs }: Context): Finding[] {
  if (needs.direction === 'torque') {
    return needs.speeds.flatMap(({ speed: { value } }) => [
      notBelow('too-slow', [id], value, details.rotationMinDegPerMin, '°/min'),
      atLeast('too-fast', [id], value, details.rotationMaxDegPerMin, '°/min'),
    ]);
  }
  const atForce = fastestAt(needs.peakHigh.value, details);
  const reason = atForce < details.speedMaxMmPerMin ? 'too-fast-at-force' : 'too-fast';
  return needs.speeds.flatMap(({ speed: { value } }) => [
    notBelow('too-slow', [id], value, details.speedMinMmPerMin, 'mm/min'),
    atLeast(reason, [id], value, atForce, 'mm/min'),
  ]);
}

/** Highest speed at a force, mm/min. */
function fastestAt(forceN: number, { speedMaxMmPerMin, speedLimits }: FrameDetails): number {
  let fastest = speedMaxMmPerMin;
  for (const limit of speedLimits) if (forceN > limit.aboveForceN) fastest = Math.min(fastest, limit.speedMaxMmPerMin);
  return fastest;
}

function runs({ details }: Frame, { needs }: Context): boolean {
  const turns = needs.direction === 'torque';
  const slowest = turns ? details.rotationMinDegPerMin : details.speedMinMmPerMin;
  const fastest = turns ? details.rotationMaxDegPerMin : fastestAt(needs.peakHigh.value, details);
  return needs.speeds.every(({ speed: { value } }) => reaches(value, slowest) && reaches(fastest, value));
}

function control({ id, details }: Frame, { needs }: Context): Finding | null {
  if (needs.control === 'position' || details.controlModes.includes(needs.control)) return null;
  return told('caution', 'no-load-control', [id], needs.control, details.controlModes.join(', '));
}
