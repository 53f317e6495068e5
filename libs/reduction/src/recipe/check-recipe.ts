import { fieldProblem, numberProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { RESULT_KEYS, SECTIONS, TEST_KINDS } from './recipe.js';
import type { BendingRecipe, ReductionRecipe } from './recipe.js';

type Problems = (FieldProblem | null)[];

/** What is wrong with the parameters of a method; empty when curves can be reduced by them. */
export function checkRecipe(recipe: ReductionRecipe): FieldProblem[] {
  const { kind, section, results, offsetStrains = [], peakUpToStrain, toe } = recipe;
  const problems: Problems = [
    oneOf('kind', kind, TEST_KINDS),
    oneOf('section', section, SECTIONS),
    ...results.map((key, at) => oneOf(`results[${at}]`, key, RESULT_KEYS)),
    ...slopeProblems(recipe),
    oneOf('toe.way', toe.way, ['none', 'slope-line', 'steepest', 'take-up']),
    toe.way === 'steepest' ? numberProblem('toe.spanShare', toe.spanShare, { above: 0, max: 1, unit: '1' }) : null,
    oneOf('break.way', recipe.break.way, ['end-of-curve', 'load-drop']),
    recipe.break.way === 'load-drop'
      ? numberProblem('break.share', recipe.break.share, { above: 0, below: 1, unit: '1' })
      : null,
    ...offsetStrains.map((offset, at) => numberProblem(`offsetStrains[${at}]`, offset, { above: 0, unit: 'mm/mm' })),
    ...(recipe.atStrains ?? []).map((strain, at) =>
      numberProblem(`atStrains[${at}]`, strain, { above: 0, unit: 'mm/mm' }),
    ),
    peakUpToStrain === undefined ? null : numberProblem('peakUpToStrain', peakUpToStrain, { above: 0, unit: 'mm/mm' }),
    recipe.loading === undefined ? null : numberProblem('loading', recipe.loading, { min: 1, max: 1000, unit: '' }),
    ...bendingProblems(recipe),
    ...windowProblems(recipe),
    ...yieldProblems(recipe),
  ];
  return problems.filter((problem) => problem !== null);
}

function slopeProblems({ slope }: ReductionRecipe): Problems {
  if (!slope) return [];
  const { over, from, to } = slope.bounds;
  return [
    oneOf('slope.way', slope.way, ['chord', 'regression']),
    oneOf('slope.bounds.over', over, ['strain', 'stress', 'peak-share', 'yield-share']),
    numberProblem('slope.bounds.from', from, { min: 0, unit: '' }),
    numberProblem('slope.bounds.to', to, { above: from, ...(over.endsWith('-share') ? { max: 1 } : {}), unit: '' }),
  ];
}

function bendingProblems({ kind, bending }: ReductionRecipe): Problems {
  if (!kind.startsWith('flexure')) return [];
  if (!bending)
    return [fieldProblem({ field: 'bending', found: undefined, allowed: 'the spans of the bending test', unit: '' })];
  return [
    numberProblem('bending.spanMm', bending.spanMm, { above: 0, unit: 'mm' }),
    oneOf('bending.deflectionAt', bending.deflectionAt, ['mid-span', 'load-points']),
    kind === 'flexure-4-point' ? innerSpanProblem(bending) : null,
  ];
}

function innerSpanProblem({ innerSpanMm, spanMm }: BendingRecipe): FieldProblem | null {
  return numberProblem('bending.innerSpanMm', innerSpanMm, { above: 0, below: spanMm, unit: 'mm' });
}

function windowProblems({ trace, hardening }: ReductionRecipe): Problems {
  return [
    trace ? numberProblem('trace.fromMm', trace.fromMm, { min: 0, unit: 'mm' }) : null,
    trace ? numberProblem('trace.toMm', trace.toMm, { above: trace.fromMm, unit: 'mm' }) : null,
    trace?.travelPerMm === undefined
      ? null
      : numberProblem('trace.travelPerMm', trace.travelPerMm, { above: 0, max: 10, unit: 'mm/mm' }),
    trace?.leaveOutShare === undefined
      ? null
      : numberProblem('trace.leaveOutShare', trace.leaveOutShare, { min: 0, below: 1, unit: '1' }),
    trace ? numberProblem('trace.peakDropShare', trace.peakDropShare, { above: 0, below: 1, unit: '1' }) : null,
    hardening ? numberProblem('hardening.fromStrain', hardening.fromStrain, { min: 0, unit: 'mm/mm' }) : null,
    hardening
      ? numberProblem('hardening.toStrain', hardening.toStrain, { above: hardening.fromStrain, unit: 'mm/mm' })
      : null,
    hardening ? oneOf('hardening.strain', hardening.strain, ['plastic', 'total']) : null,
  ];
}

function yieldProblems({ yieldPoint }: ReductionRecipe): Problems {
  if (!yieldPoint) return [];
  return [
    numberProblem('yieldPoint.dropShare', yieldPoint.dropShare, { above: 0, below: 1, unit: '1' }),
    numberProblem('yieldPoint.lastingStrain', yieldPoint.lastingStrain, { min: 0, unit: 'mm/mm' }),
  ];
}

function oneOf(field: string, found: string, allowed: readonly string[]): FieldProblem | null {
  return allowed.includes(found)
    ? null
    : fieldProblem({ field, found, allowed: `one of ${allowed.join(', ')}`, unit: '' });
}
