export { QUANTITIES, fromInternal, internalUnitOf, isUnit, toInternal, unitsOf } from './convert.js';
export { findUnit } from './find-unit.js';
export { formatNumber, formatQuantity } from './format-quantity.js';
export { decimalMarkIn, parseHinted, parseNumber } from './parse-number.js';
export type { DecimalMark, Hint, ParsedNumber } from './parse-number.js';
export { G_MS2 } from './unit-table.js';
export type { Quantity, Unit, UnitOf } from './unit-table.js';
