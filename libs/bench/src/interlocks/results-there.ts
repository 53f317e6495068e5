import type { Finding } from '../finding.js';
import type { MissingResult } from '../results/missing-results.js';

/** A specimen with the results that it lacks. */
export interface SpecimenLacks {
  id: string;
  label: string;
  missing: readonly MissingResult[];
}

/** Every result that was asked for has a figure on every tested specimen, or a reason why it has none. */
export function resultsThere({
  reference,
  lacks,
}: {
  reference: string;
  lacks: readonly SpecimenLacks[];
}): Finding | null {
  const open = lacks
    .map(({ id, label, missing }) => ({ id, label, missing: missing.filter(({ why }) => why === null) }))
    .filter(({ missing }) => missing.length > 0);
  if (open.length === 0) return null;
  const named = open.map(({ label, missing }) => `${label} (${missing.map((each) => each.label).join(', ')})`);
  return {
    code: 'bench/results-missing',
    sentence: `Results of ${reference} that were asked for are missing: ${named.join('; ')}. Enter them, or say for each why there is none.`,
    facts: {
      missing: open.map(({ id, label, missing }) => ({
        specimenId: id,
        label,
        results: missing.map(({ key, label: name, hint }) => ({ key, label: name, hint })),
      })),
    },
  };
}
