import type { StatisticsView } from '#libs/contract/src/index.js';
import { testNormality, toleranceBound } from '#libs/reduction/src/index.js';

/** Fewest specimens from which a B-basis value is stated (CMH-17 asks for 18 and more, from three batches; from memory, high). */
const FEWEST = 18;
/** B-basis: 90 % of the population lies above it with 95 % confidence (CMH-17). */
const BOUND = { coverage: 0.9, confidence: 0.95 } as const;
/** Below this significance the values are not taken for normal (usual level). */
const LEAST_SIGNIFICANCE = 0.05;

/**
 * The bound that 90 % of the population lies above, with the conditions that it holds under. It is silent where they are not met: too few
 * specimens, or values that are not normally distributed.
 */
export function populationBound(values: readonly number[], unit: string): StatisticsView['toleranceBound'] {
  if (values.length < FEWEST) return null;
  const normality = testNormality(values);
  const found = toleranceBound(values, BOUND.coverage, BOUND.confidence);
  if (!found || !normality || normality.significance < LEAST_SIGNIFICANCE) return null;
  const sentence =
    `90 % of such specimens lie above ${found.bound.toPrecision(4)} ${unit} with 95 % confidence (k = ${found.k.toFixed(3)}), ` +
    `on these conditions: ${values.length} specimens of one batch, which stands for the population; normally distributed, as the ` +
    `Anderson–Darling test does not deny (significance ${normality.significance.toPrecision(2)}). An allowable for design needs more batches.`;
  return { low: found.bound, k: found.k, sentence };
}
