import { isWithinLimit } from '../within-limit.js';
import { allowedExtension } from '#libs/accuracy/src/index.js';
import type { ExtensionClass } from '#libs/accuracy/src/index.js';
import type { ExtensionReadings, ExtensionStep } from './extension-readings.js';

/** One figure against one limit of a class, in mm; for the gauge length in percent. */
export interface ExtensionFinding {
  criterion: 'gauge-length' | 'bias' | 'resolution';
  found: number;
  limit: number;
  unit: 'mm' | '%';
  met: boolean;
}

/** Measured minus nominal gauge length, % of nominal; null when there is none to measure. */
export function gaugeLengthErrorPct({ gaugeLengthNominalMm, gaugeLengthMeasuredMm }: ExtensionReadings): number | null {
  if (gaugeLengthMeasuredMm === null) return null;
  return (100 * (gaugeLengthMeasuredMm - gaugeLengthNominalMm)) / gaugeLengthNominalMm;
}

/** The run that is farthest off minus the reference, mm. */
export function worstBiasMm({ referenceMm, runs }: ExtensionStep): number {
  const biases = runs.map((run) => run - referenceMm);
  return biases.reduce((worst, bias) => (Math.abs(bias) > Math.abs(worst) ? bias : worst));
}

/** Every criterion of a class at one step. */
export function extensionFindings(
  step: ExtensionStep,
  readings: ExtensionReadings,
  limits: ExtensionClass,
): ExtensionFinding[] {
  const allowed = allowedExtension(limits, step.referenceMm, readings.gaugeLengthNominalMm);
  return [
    finding('gauge-length', gaugeLengthErrorPct(readings) ?? 0, limits.gaugeLengthPct, '%'),
    finding('bias', worstBiasMm(step), allowed.biasMm, 'mm'),
    finding('resolution', readings.resolutionMm, allowed.resolutionMm, 'mm'),
  ];
}

function finding(
  criterion: ExtensionFinding['criterion'],
  found: number,
  limit: number,
  unit: 'mm' | '%',
): ExtensionFinding {
  return { criterion, found, limit, unit, met: isWithinLimit(found, limit) };
}
