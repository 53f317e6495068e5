import { at } from '#libs/matching/src/index.js';
import type { ItemEntity } from '#libs/records/src/index.js';
import { writeCell } from '../exchange/csv-cell.js';
import { writeTable } from '../exchange/csv-table.js';
import { allColumns, columnsOf } from './csv-columns.js';

/** Items as CSV, one a line, in the form that the import takes. No cell begins a formula. */
export function exportItems(items: readonly ItemEntity[]): string {
  const kinds = [...new Set(items.map(({ kind }) => kind))];
  const columns = kinds.length > 0 ? allColumns(kinds) : allColumns();
  const rows = items.map((item) => {
    const own = new Set(columnsOf(item.kind).map(({ path }) => path));
    return [item.kind, ...columns.map(({ path, type }) => (own.has(path) ? writeCell(type, at(item, path)) : ''))];
  });
  return writeTable(['kind', ...columns.map(({ path }) => path)], rows);
}
