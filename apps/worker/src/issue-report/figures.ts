import type { BatchResults, StatisticsView } from '#libs/contract/src/index.js';
import { reported, roundToSignificant, roundWithUncertainty } from '#libs/reduction/src/index.js';

/** A spread is worth two digits, no more. */
const SPREAD_DIGITS = 2;

type Column = Pick<BatchResults['columns'][number], 'step' | 'digits'>;

export function spread(value: number | null): string {
  return value === null ? '–' : roundToSignificant(value, SPREAD_DIGITS);
}

/** Mean with its expanded uncertainty, both to the same place; the mean alone where no budget was made. */
export function meanWithUncertainty({ mean, uncertainty }: StatisticsView, column: Column): string {
  if (!uncertainty) return reported(mean, column);
  const { value, expanded } = roundWithUncertainty(mean, uncertainty.expanded);
  return `${value} ± ${expanded}`;
}

export function day(instant: string | null): string {
  return instant === null ? '–' : instant.slice(0, 10);
}
