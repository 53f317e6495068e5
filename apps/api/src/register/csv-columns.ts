import { ITEM_FIELDS, ITEM_KINDS } from '#libs/matching/src/index.js';
import type { ItemField, ItemKind } from '#libs/matching/src/index.js';

export type CsvColumn = Pick<ItemField, 'path' | 'type' | 'required'>;

/** What only the register keeps, beside the fields of the matching core. */
const OWN: readonly CsvColumn[] = [
  { path: 'serialNumber', type: 'text', required: false },
  { path: 'calibrationIntervalMonths', type: 'number', required: false },
];

/** Columns of one kind, without the kind itself. */
export function columnsOf(kind: ItemKind): readonly CsvColumn[] {
  return [...ITEM_FIELDS[kind], ...OWN];
}

/** Every column that a file of these kinds may have, each once, the common ones first. */
export function allColumns(kinds: readonly ItemKind[] = ITEM_KINDS): readonly CsvColumn[] {
  const all = new Map(kinds.flatMap(columnsOf).map((column) => [column.path, column]));
  return [...all.values()];
}
