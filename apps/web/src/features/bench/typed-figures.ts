import type { JobView } from '#libs/contract/src/index.js';
import { decimalMarkIn, parseHinted } from '#libs/units/src/index.js';
import type { Hint } from '#libs/units/src/index.js';

export type Specimen = JobView['specimens'][number];

/** What is typed for one specimen, as it is typed. */
export interface TypedFigures {
  /** Readings of the dimensions, by {@link readingKey}. */
  readings: Record<string, string>;
  /** Results, by their keys. */
  results: Record<string, string>;
  /** Why a result that is kept already is corrected. */
  why: string;
}

/** The dimensions that the server has; results that it has are shown beside the form and typed anew only to correct them. */
export function startOf(job: JobView, specimen: Specimen): TypedFigures {
  const readings = job.dimensionsNeeded.flatMap(({ key, readings: count }) =>
    Array.from({ length: count }, (_, at) => [readingKey(key, at), String(specimen.dimensions[key]?.[at] ?? '')]),
  );
  const results = resultsToType(job).map(({ key }) => [key, '']);
  return {
    readings: Object.fromEntries(readings) as Record<string, string>,
    results: Object.fromEntries(results) as Record<string, string>,
    why: '',
  };
}

/** Results that a person may type. */
export function resultsToType(job: JobView): JobView['resultsNeeded'] {
  return job.resultsNeeded.filter(({ typed }) => typed);
}

/** The key of one reading of a dimension: `widthMm:0` is the first of the width. */
export function readingKey(key: string, at: number): string {
  return `${key}:${at}`;
}

export function dimensionsOf(job: JobView, typed: TypedFigures): Record<string, number[]> {
  const read = job.dimensionsNeeded.map((need): [string, number[]] => [
    need.key,
    readingsOf(need, typed).flatMap((text) => figure(text, hintFor(typed, need.nominal))),
  ]);
  return Object.fromEntries(read.filter(([, values]) => values.length > 0));
}

export function resultsOf(job: JobView, typed: TypedFigures): { key: string; value: number; unit: string }[] {
  return resultsToType(job).flatMap(({ key, unit }) =>
    figure(typed.results[key] ?? '', hintFor(typed)).map((value) => ({ key, value, unit })),
  );
}

/** Every figure that cannot be read, by its field: what is left out in silence would be missing from the record. */
export function unreadable(job: JobView, typed: TypedFigures): Record<string, string> {
  const texts = [
    ...job.dimensionsNeeded.flatMap((need) =>
      readingsOf(need, typed).map((text, at) => ({
        field: `readings.${readingKey(need.key, at)}`,
        text,
        near: need.nominal,
      })),
    ),
    ...resultsToType(job).map(({ key }) => ({ field: `results.${key}`, text: typed.results[key] ?? '', near: null })),
  ];
  return Object.fromEntries(
    texts.flatMap(({ field, text, near }) => {
      const reason = reasonAgainst(text, hintFor(typed, near));
      return reason ? [[field, reason]] : [];
    }),
  );
}

function readingsOf(need: JobView['dimensionsNeeded'][number], { readings }: TypedFigures): string[] {
  return Array.from({ length: need.readings }, (_, at) => readings[readingKey(need.key, at)] ?? '');
}

export function figure(text: string, hint: Hint): number[] {
  const number = parseHinted(text, hint);
  return 'reason' in number ? [] : [number.value];
}

/** Why something that was typed is no figure; null where it is one, or nothing was typed. */
function reasonAgainst(text: string, hint: Hint): string | null {
  if (!text.trim()) return null;
  const number = parseHinted(text, hint);
  return 'reason' in number ? number.reason : null;
}

/** A length is near its nominal figure; everything else is written as the other figures of the specimen are. */
function hintFor({ readings, results }: TypedFigures, nominal: number | null = null): Hint {
  return { near: nominal, mark: decimalMarkIn([...Object.values(readings), ...Object.values(results)]) };
}

/** Results that no curve holds: they are measured on the broken specimen. */
const BY_HAND: readonly string[] = ['elongation-after-fracture', 'reduction-of-area'];

/** Whether a result is still to be typed that the curve cannot give. */
export function isToBeTyped(job: JobView, { results }: Specimen): boolean {
  return job.resultsNeeded.some(({ key }) => BY_HAND.includes(key) && !results.some((kept) => kept.key === key));
}
