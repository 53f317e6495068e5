import type { Needs } from '../ask/needs.js';
import { stackLengthMm } from './parts.js';
import type { Parts } from './parts.js';

/** Openings between the coupling faces of crosshead and base over the test, mm. */
export interface Openings {
  startMm: number;
  leastMm: number;
  mostMm: number;
  /** Opening at which the ends of the train touch; 0 for a fixture, whose halves pass each other. */
  touchMm: number;
}

/** Start at stack plus free length; the travel opens it in tension, closes it in compression, and leaves it in torsion. */
export function openingsOf(parts: Pick<Parts, 'cell' | 'adapters' | 'ends'>, needs: Needs): Openings {
  const stackMm = stackLengthMm(parts);
  const startMm = stackMm + needs.specimen.freeLengthMm;
  const travelMm = needs.travel.value;
  return {
    startMm,
    leastMm: needs.direction === 'compression' ? startMm - travelMm : startMm,
    mostMm: needs.direction === 'tension' ? startMm + travelMm : startMm,
    touchMm: needs.ends.by === 'fixture' ? 0 : stackMm,
  };
}
