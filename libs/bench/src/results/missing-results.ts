/** A result that was asked for and that a specimen has no figure of. */
export interface MissingResult {
  key: string;
  label: string;
  /** Why there is none, as a person said or as the curve shows; null while nobody knows. */
  why: string | null;
  /** What stands in the way of finding it in the curve; null where nothing does, or where it settles the matter. */
  hint: string | null;
}

/** What the reduction of a curve says of a result that it could not give. */
export interface CurveLack {
  key: string;
  /** A sentence. */
  why: string;
  /** The test itself has no such result: it was not reached. Otherwise a dimension, a column or a parameter is missing. */
  isFinal: boolean;
}

export interface SpecimenFound {
  fate: string;
  /** Keys of the results that it has. */
  found: readonly string[];
  /** By result key, why it has none. */
  missingWhy: Readonly<Record<string, string>>;
  curveLacks: readonly CurveLack[];
}

/**
 * The results that were asked for and that a tested specimen lacks. A specimen that is invalid or was not tested says that
 * itself; one that is still open has to be tested first.
 */
export function missingResults(
  wanted: readonly { key: string; label: string }[],
  { fate, found, missingWhy, curveLacks }: SpecimenFound,
): MissingResult[] {
  if (fate !== 'tested') return [];
  return wanted
    .filter(({ key }) => !found.some((each) => each.split('@')[0] === key.split('@')[0]))
    .map(({ key, label }) => {
      const lack = curveLacks.find((each) => each.key === key);
      const shown = lack?.isFinal ? lack.why : null;
      return { key, label, why: missingWhy[key] ?? shown, hint: lack && !lack.isFinal ? lack.why : null };
    });
}

/** A specimen with the results that it lacks. */
export interface SpecimenLacks {
  id: string;
  label: string;
  missing: readonly MissingResult[];
}
