import { placeReaching } from './crossings.js';
import type { Place } from './crossings.js';
import { lacking, measured } from './prepared-test.js';
import { ofStressAtStrain } from './sensitivities.js';
import type { Measure, Measured, PreparedTest } from './prepared-test.js';
import type { Flag } from './reduction-outcome.js';

/** Stress where the strain (travel of a component) first reaches each given value, e.g. σ10 of ISO 844 or σc of ISO 178. */
export const stressAtStrain: Measure = (test) => {
  const strains = test.recipe.atStrains ?? [];
  if (strains.length === 0) return lacking('recipe-missing', 'atStrains');
  return strains.flatMap((strain) => atStrain(test, strain));
};

function atStrain(test: PreparedTest, strain: number): Measured[] {
  const { x, y, axes, toeShift, breakIndex, stressLacks, strainLacks } = test;
  if (stressLacks !== null) return lacking('dimension-missing', stressLacks, strain);
  if (axes.xName === 'row') return lacking('no-travel-column', strainLacks ?? 'displacementMm', strain);
  const isTravelMeant = axes.xName === 'travel' && strainLacks !== null;
  if (isTravelMeant) return lacking('dimension-missing', strainLacks, strain);
  const place = placeReaching(x, y, 'x', strain + toeShift, 0, breakIndex);
  if (!place) return lacking('not-reached', `strain ${strain}`, strain);
  const sensitivity = ofStressAtStrain(test, place, strain);
  const found = measured(
    place.y,
    axes.yUnit,
    [{ role: 'at-strain', index: place.index, x: place.x, y: place.y }],
    pastPeak(test, place, strain),
    strain,
  );
  return found.map((each) => ({ ...each, sensitivity }));
}

function pastPeak({ x, y, peakIndex, toeShift, axes }: PreparedTest, at: Place, strain: number): Flag[] {
  if (at.x <= x[peakIndex]! || at.y >= y[peakIndex]!) return [];
  return [{ code: 'stress-at-strain-past-peak', found: x[peakIndex]! - toeShift, allowed: strain, unit: axes.xUnit }];
}
