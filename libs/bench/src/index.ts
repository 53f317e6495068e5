export type { Carrier } from './figures/figure-bounds.js';
export { figureProblem } from './figures/figure-problem.js';
export type { TypedFigure } from './figures/typed-figure.js';
export { readFigure } from './figures/read-figure.js';
export type { ShownAs } from './figures/read-figure.js';
