import { fieldProblem, numberProblem, refuseIfAny } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { studentQuantile } from '../statistics/student.js';
import type { BudgetLine, Coverage, DoubtKind, UncertaintyBudget, UncertaintyComponent } from './uncertainty-types.js';

/** Half-width over standard uncertainty for each distribution (JCGM 100:2008, 4.3; JCGM 101:2008, 6.4.6 for the arcsine). */
const DIVISORS: Readonly<Record<Exclude<DoubtKind, 'expanded'>, number>> = {
  standard: 1,
  rectangular: Math.sqrt(3),
  triangular: Math.sqrt(6),
  arcsine: Math.SQRT2,
};

const USUAL_K = 2;

/**
 * Combines uncorrelated components by the law of propagation (JCGM 100:2008, 5.1.2), effective degrees of freedom by
 * Welch–Satterthwaite (G.4.1), expanded by k (or by Student's t at those degrees of freedom, cut to a whole number).
 *
 * @param components at least one; correlated inputs must be joined beforehand
 * @throws {InvalidInput} naming each component with an amount that is negative or not finite
 */
export function buildBudget(
  components: readonly UncertaintyComponent[],
  coverage: Coverage = { way: 'factor', k: USUAL_K },
): UncertaintyBudget {
  refuseIfAny(componentProblems(components));
  const contributions = components.map((component) => ({ component, standard: standardOf(component) }));
  const variance = contributions.reduce(
    (sum, { component, standard }) => sum + (component.sensitivity * standard) ** 2,
    0,
  );
  const lines: BudgetLine[] = contributions.map(({ component, standard }) => {
    const contribution = Math.abs(component.sensitivity) * standard;
    return { ...component, standard, contribution, share: variance > 0 ? contribution ** 2 / variance : 0 };
  });
  const combined = Math.sqrt(variance);
  const effective = effectiveDegreesOfFreedom(lines, combined);
  const k = coverage.way === 'factor' ? coverage.k : coverageFactor(coverage.confidence, effective);
  return { lines, combined, effectiveDegreesOfFreedom: effective, k, expanded: k * combined };
}

function componentProblems(components: readonly UncertaintyComponent[]): (FieldProblem | null)[] {
  if (components.length === 0)
    return [fieldProblem({ field: 'components', found: 0, allowed: 'at least one', unit: '' })];
  return components.flatMap(({ name, amount, sensitivity, coverageK, degreesOfFreedom }) => [
    numberProblem(`${name}.amount`, amount, { min: 0, unit: '' }),
    numberProblem(`${name}.sensitivity`, sensitivity, { unit: '' }),
    coverageK === undefined ? null : numberProblem(`${name}.coverageK`, coverageK, { above: 0, unit: '' }),
    degreesOfFreedom === null
      ? null
      : numberProblem(`${name}.degreesOfFreedom`, degreesOfFreedom, { above: 0, unit: '' }),
  ]);
}

/** u(x) of one component. */
export function standardOf({
  kind,
  amount,
  coverageK = USUAL_K,
}: Pick<UncertaintyComponent, 'kind' | 'amount' | 'coverageK'>): number {
  return amount / (kind === 'expanded' ? coverageK : DIVISORS[kind]);
}

function effectiveDegreesOfFreedom(lines: readonly BudgetLine[], combined: number): number | null {
  const sum = lines.reduce(
    (total, { contribution, degreesOfFreedom }) =>
      degreesOfFreedom === null ? total : total + contribution ** 4 / degreesOfFreedom,
    0,
  );
  return sum > 0 ? combined ** 4 / sum : null;
}

/** JCGM 100:2008, G.4.1: degrees of freedom are cut to the next lower whole number. */
function coverageFactor(confidence: number, effective: number | null): number {
  const infinite = 1e9;
  return studentQuantile((1 + confidence) / 2, effective === null ? infinite : Math.max(1, Math.floor(effective)));
}
