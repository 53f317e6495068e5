import type { Frame } from '../item.js';
import { cannotLoad } from './frame-capacity.js';
import { atLeast, notBelow, told, worst } from './rule.js';
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
  const limits = details.speedLimits.filter(({ aboveForceN }) => needs.peakHigh.value > aboveForceN);
  const atForce = Math.min(details.speedMaxMmPerMin, ...limits.map(({ speedMaxMmPerMin }) => speedMaxMmPerMin));
  const reason = atForce < details.speedMaxMmPerMin ? 'too-fast-at-force' : 'too-fast';
  return needs.speeds.flatMap(({ speed: { value } }) => [
    notBelow('too-slow', [id], value, details.speedMinMmPerMin, 'mm/min'),
    atLeast(reason, [id], value, atForce, 'mm/min'),
  ]);
}

function control({ id, details }: Frame, { needs }: Context): Finding | null {
  if (needs.control === 'position' || details.controlModes.includes(needs.control)) return null;
  return told('caution', 'no-load-control', [id], needs.control, details.controlModes.join(', '));
}
