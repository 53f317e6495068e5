import { formatNumber } from '#libs/units/src/index.js';
import { tick } from './bench-check.js';
import { tagsOf } from './check-facts.js';
import type { CheckRule } from './check-facts.js';

/** The chamber is at temperature and the specimen soaked. */
export const temperature: CheckRule = ({ needs, train, soakMin }) => {
  if (soakMin === null) return null;
  const tag = tagsOf(train, ['chamber']);
  return tick(
    'temperature',
    'Chamber at temperature, specimen soaked',
    `${tag} at ${formatNumber(needs.temperature.value)} °C, then ${soakMin} min of soak before each specimen.`,
  );
};

/** How long a specimen soaks, whole min: a base and so much for each mm of its thickness. */
export function soakMinOf(chamber: { soakBaseMin: number; soakMinPerMm: number }, bodyThicknessMm: number): number {
  return Math.ceil(chamber.soakBaseMin + chamber.soakMinPerMm * bodyThicknessMm);
}
