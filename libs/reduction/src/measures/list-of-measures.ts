import type { ResultKey } from '../recipe/recipe.js';
import { elongationAfterFracture, reductionOfArea } from './after-fracture.js';
import { energyToBreak, energyToPeak, workDensityToBreak } from './energy.js';
import { hardeningCoefficient, hardeningExponent } from './hardening.js';
import { offsetYield } from './offset-yield.js';
import { peakLoad, peakStress } from './peak.js';
import type { Measure } from './prepared-test.js';
import { modulus, stiffness } from './slope-results.js';
import {
  plasticStrainAtBreak,
  plasticStrainAtPeak,
  strainAtBreak,
  strainAtPeak,
  stressAtBreak,
  travelAtPeak,
} from './strains.js';
import { stressAtStrain } from './stress-at-strain.js';
import { meanTearPeaks, medianTearPeaks } from './tear-peaks.js';
import { highestPeel, leastPeel, meanPeel } from './trace.js';
import { lowerYield, upperYield } from './yield-point.js';

/** Every result that can be asked for, and the rule that finds it. */
export const MEASURES: Readonly<Record<ResultKey, Measure>> = {
  'peak-load': peakLoad,
  'peak-stress': peakStress,
  'strain-at-peak': strainAtPeak,
  'plastic-strain-at-peak': plasticStrainAtPeak,
  'strain-at-break': strainAtBreak,
  'plastic-strain-at-break': plasticStrainAtBreak,
  'stress-at-break': stressAtBreak,
  modulus,
  'offset-yield': offsetYield,
  'upper-yield': upperYield,
  'lower-yield': lowerYield,
  'stress-at-strain': stressAtStrain,
  'energy-to-peak': energyToPeak,
  'energy-to-break': energyToBreak,
  'work-density-to-break': workDensityToBreak,
  'hardening-exponent': hardeningExponent,
  'hardening-coefficient': hardeningCoefficient,
  'mean-peel': meanPeel,
  'least-peel': leastPeel,
  'highest-peel': highestPeel,
  'mean-tear-peaks': meanTearPeaks,
  'median-tear-peaks': medianTearPeaks,
  stiffness,
  'travel-at-peak': travelAtPeak,
  'elongation-after-fracture': elongationAfterFracture,
  'reduction-of-area': reductionOfArea,
};
