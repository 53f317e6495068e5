import type { Geometry } from './ask.js';
import { figure } from './figure.js';
import type { Figure } from './needs.js';

/**
 * Area that carries the load, mm²: rectangle b·t, round π·d²/4, tube π·(D² − d²)/4, thread and others as given.
 *
 * @param geometry checked; the figures of its shape are there
 */
export function sectionArea(geometry: Geometry): Figure {
  const { widthMm = NaN, thicknessMm = NaN, diameterMm = NaN, outerDiameterMm = NaN, innerDiameterMm = NaN } = geometry;
  switch (geometry.shape) {
    case 'round':
      return area((Math.PI * diameterMm ** 2) / 4, 'A = π·d²/4', [['d', diameterMm, 'mm']]);
    case 'tube':
      return area((Math.PI * (outerDiameterMm ** 2 - innerDiameterMm ** 2)) / 4, 'A = π·(D² − d²)/4', [
        ['D', outerDiameterMm, 'mm'],
        ['d', innerDiameterMm, 'mm'],
      ]);
    case 'thread':
    case 'component':
      return area(geometry.areaMm2 ?? NaN, 'A as given', []);
    default:
      return area(widthMm * thicknessMm, 'A = b·t', [
        ['b', widthMm, 'mm'],
        ['t', thicknessMm, 'mm'],
      ]);
  }
}

function area(value: number, formula: string, inputs: readonly (readonly [string, number, string])[]): Figure {
  return figure(value, 'mm²', formula, inputs, 'geometry');
}
