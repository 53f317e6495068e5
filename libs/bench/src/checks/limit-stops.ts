import { tick } from './bench-check.js';
import { mm } from './check-facts.js';
import type { CheckRule } from './check-facts.js';

/** The limit stops stand where they were computed for the train. */
export const limitStops: CheckRule = ({ limitStops: stops }) =>
  stops &&
  tick(
    'limit-stops',
    'Limit stops set',
    `Opening between the coupling faces: lower stop at ${mm(stops.lowerStopMm)}, upper stop at ${mm(stops.upperStopMm)}; the test starts at ${mm(stops.startOpeningMm)}. Set them before anything moves.`,
  );
