import type { BatchResults, StatisticsView } from '#libs/contract/src/index.js';
import { roundToSignificant, roundToStep, roundWithUncertainty } from '#libs/reduction/src/index.js';

/** Digits of a result whose method names no step of reporting. */
const DIGITS = 4;
/** A spread is worth two digits, no more. */
const SPREAD_DIGITS = 2;

type Column = BatchResults['columns'][number];

/** A value as its method reports it. */
export function reported(value: number, { step }: Pick<Column, 'step'>): string {
  return step === null ? roundToSignificant(value, DIGITS) : roundToStep(value, step);
}

export function spread(value: number | null): string {
  return value === null ? '–' : roundToSignificant(value, SPREAD_DIGITS);
}

/** Mean with its expanded uncertainty, both to the same place; the mean alone where no budget was made. */
export function meanWithUncertainty({ mean, uncertainty }: StatisticsView, column: Pick<Column, 'step'>): string {
  if (!uncertainty) return reported(mean, column);
  const { value, expanded } = roundWithUncertainty(mean, uncertainty.expanded);
  return `${value} ± ${expanded}`;
}

export function day(instant: string | null): string {
  return instant === null ? '–' : instant.slice(0, 10);
}
