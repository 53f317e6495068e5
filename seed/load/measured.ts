import { Chance } from '../northmoor/chance.js';
import type { Product, Scatter } from '../northmoor/products.js';
import type { DemoJob } from '../northmoor/demo-request.js';

export interface Measured {
  dimensions: Record<string, number[]>;
  results: { key: string; value: number; unit: string }[];
}

/** Results that follow from force: what a cell reads too high, they are too high. */
const FROM_FORCE = ['MPa', 'N', 'N/mm', 'N·m'];
const READINGS = 3;

/**
 * What is measured on one piece of a lot, the same whenever it is asked.
 *
 * @param lot name of the lot, e.g. the reference of the job
 * @param piece from 1
 * @param drift what the load cell reads too high, as a fraction
 */
export function measured(
  product: Product,
  lot: string,
  piece: number,
  drift: number,
  outlier: DemoJob['outlier'],
): Measured {
  const own = new Chance(`piece/${lot}/${piece}`);
  const share = outlier?.piece === piece ? outlier.share : 1;
  return {
    dimensions: Object.fromEntries(
      Object.entries(product.dimensions).map(([key, [mean, spread]]) => [key, readings(own, mean, spread)]),
    ),
    results: Object.entries(product.results).map(([key, scatter]) => {
      const lots = new Chance(`lot/${lot}/${key}`).normal() * (scatter.lots ?? 0);
      const factor = FROM_FORCE.includes(scatter.unit) ? (1 + drift) * share : share ** 0.5;
      return { key, value: significant(scattered(scatter, lots, own) * factor), unit: scatter.unit };
    }),
  };
}

function scattered({ mean, pieces }: Scatter, lots: number, chance: Chance): number {
  return mean * (1 + lots) * (1 + pieces * chance.normal());
}

/** A gauge that shows hundredths, or thousandths on turned bars. */
function readings(chance: Chance, mean: number, spread: number): number[] {
  const digits = spread < 0.01 ? 3 : 2;
  const middle = mean + spread * chance.normal();
  return Array.from({ length: READINGS }, () => Number((middle + (spread / 3) * chance.normal()).toFixed(digits)));
}

/** As somebody would type it: five figures at the most. */
function significant(value: number): number {
  return Number(value.toPrecision(5));
}
