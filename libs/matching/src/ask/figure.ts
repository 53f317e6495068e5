import type { Figure } from './needs.js';

type Input = readonly [name: string, value: number, unit: string];

/** A number with its formula. Inputs are listed in the order of the formula. */
export function figure(value: number, unit: string, formula: string, inputs: readonly Input[], source: string): Figure {
  return { value, unit, formula, inputs: inputs.map(([name, each, of]) => ({ name, value: each, unit: of })), source };
}

/** An assumed number: it is shown as such, and the requester has to confirm it. */
export function assumed(
  value: number,
  unit: string,
  formula: string,
  inputs: readonly Input[],
  source: string,
): Figure {
  return { ...figure(value, unit, formula, inputs, source), assumed: true };
}

/** A declared number. */
export function declared(value: number, unit: string, name: string, source: string): Figure {
  return figure(value, unit, name, [], source);
}
