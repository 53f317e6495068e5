export { fieldProblem } from './field-problem.js';
export type { FieldProblem } from './field-problem.js';
export { InvalidInput, refuseIfAny } from './invalid-input.js';
export { LabError } from './lab-error.js';
export { numberProblem } from './number-problem.js';
export type { NumberBounds } from './number-problem.js';
