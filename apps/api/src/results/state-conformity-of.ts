import type { BatchResults, ConformityAsk, StatisticsView } from '#libs/contract/src/index.js';
import { reported, stateConformity } from '#libs/reduction/src/index.js';
import type { Reporting, Verdict } from '#libs/reduction/src/index.js';

type Statement = NonNullable<BatchResults['conformity']>;

const STATEMENTS: Record<Verdict, Statement['statement']> = {
  conforms: 'conforms',
  'does-not-conform': 'does not conform',
  undecided: 'cannot be stated',
};

/** What the statement rests on. */
export interface Measured {
  statistics: StatisticsView;
  /** Every specimen that was tested; null where its result is missing. */
  specimens: readonly { label: string; value: number | null }[];
  reporting: Reporting;
  /** U of the mean, or of one specimen, as the agreement asks; null where none could be computed. */
  expanded: number | null;
}

/**
 * By the rule agreed at acceptance, on the values as computed, before rounding (ASTM E29, absolute method). It cannot be stated where
 * limits are in another unit, where it is guarded and no uncertainty is known, or while a tested specimen lacks its result: unless one of
 * the others fails already.
 */
export function stateConformityOf(ask: ConformityAsk, measured: Measured): Statement {
  const { statistics, specimens, expanded } = measured;
  const rule = ask.rule === 'simple' ? 'simple acceptance' : 'guarded by the expanded uncertainty U';
  const base = { specification: ask.specification, rule };
  const asked = `${statistics.label} of ${ask.of === 'mean' ? 'the mean' : 'each specimen'}: ${limitsOf(ask)}.`;
  const unstated = (why: string): Statement => ({ ...base, statement: 'cannot be stated', detail: `${asked} ${why}` });
  if (ask.unit !== statistics.unit)
    return unstated(`The limits are not in the unit of the result, ${statistics.unit}.`);
  if (ask.rule === 'guarded' && expanded === null) return unstated('No uncertainty could be computed.');
  const values = specimens.flatMap(({ value }) => value ?? []);
  const { verdict } = stateConformity(values, specificationOf(ask), expanded);
  const lacking = specimens.filter(({ value }) => value === null).map(({ label }) => label);
  const failsAlready = verdict === 'does-not-conform' && ask.of === 'each';
  if (lacking.length > 0 && !failsAlready) return unstated(`The result of ${lacking.join(', ')} is missing.`);
  const details = [asked, ...guardOf(ask, expanded), ...nearLimit(ask, measured)];
  return { ...base, statement: STATEMENTS[verdict], detail: details.join(' ') };
}

function specificationOf({ lower, upper, of, rule }: ConformityAsk) {
  return { ...(lower === null ? {} : { lower }), ...(upper === null ? {} : { upper }), of, rule };
}

function limitsOf({ lower, upper, unit }: ConformityAsk): string {
  const limits = [lower === null ? [] : `at least ${lower}`, upper === null ? [] : `at most ${upper}`].flat();
  return `${limits.join(' and ')} ${unit}`;
}

function guardOf({ rule, of, unit }: ConformityAsk, expanded: number | null): string[] {
  return rule === 'guarded' ? [`U of ${of === 'mean' ? 'the mean' : 'one'}: ${expanded!.toPrecision(2)} ${unit}.`] : [];
}

/** Digits that show on which side of a limit a value lies. */
const SHOWN_DIGITS = 6;

/** Where the printed figure would lie on the other side of a limit than the value does, the value is told. */
function nearLimit(ask: ConformityAsk, { statistics, specimens, reporting }: Measured): string[] {
  const compared = ask.of === 'mean' ? [{ label: 'the mean', value: statistics.mean }] : specimens;
  const told = compared.flatMap(({ label, value }) => {
    if (value === null || isWithin(value, ask) === isWithin(Number(reported(value, reporting)), ask)) return [];
    return [
      `${label} is ${Number(value.toPrecision(SHOWN_DIGITS))} ${ask.unit}, printed as ${reported(value, reporting)}`,
    ];
  });
  return told.length === 0 ? [] : [`Compared as computed, before rounding: ${told.join('; ')}.`];
}

function isWithin(value: number, { lower, upper }: ConformityAsk): boolean {
  return (lower === null || value >= lower) && (upper === null || value <= upper);
}
