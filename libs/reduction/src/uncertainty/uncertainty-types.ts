/**
 * How an input's doubt is stated. `standard`: a standard uncertainty; `expanded`: U with its k;
 * the others: the half-width of that distribution (JCGM 100:2008, 4.3).
 */
export type DoubtKind = 'standard' | 'expanded' | 'rectangular' | 'triangular' | 'arcsine';

/** One line of an uncertainty budget as it is entered. */
export interface UncertaintyComponent {
  readonly name: string;
  readonly kind: DoubtKind;
  /** In the unit of the input (percent in a relative budget), not negative. */
  readonly amount: number;
  /** Coverage factor of an `expanded` amount; 2 when left out. */
  readonly coverageK?: number;
  /** Change of the result per change of the input. */
  readonly sensitivity: number;
  /** Degrees of freedom; null means infinitely many. */
  readonly degreesOfFreedom: number | null;
}

/** The same line worked out: u(x) and its contribution |c|·u(x) to the result. */
export interface BudgetLine extends UncertaintyComponent {
  readonly standard: number;
  readonly contribution: number;
  /** Share of the variance, 0 to 1. */
  readonly share: number;
}

/** `factor` states k outright; `confidence` takes k from Student's t with the effective degrees of freedom. */
export type Coverage =
  { readonly way: 'factor'; readonly k: number } | { readonly way: 'confidence'; readonly confidence: number };

export interface UncertaintyBudget {
  readonly lines: readonly BudgetLine[];
  readonly combined: number;
  /** Welch–Satterthwaite; null means infinitely many. */
  readonly effectiveDegreesOfFreedom: number | null;
  readonly k: number;
  readonly expanded: number;
}
