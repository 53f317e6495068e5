import type { ReportBatch } from './reports.js';

/** The sizes measured on the specimens of a batch as a table: a row per specimen, `–` where one was not measured. */
export interface SizesTable {
  columns: { key: string; head: string }[];
  rows: { label: string; cells: string[] }[];
}

/** @returns null where nothing was measured on any of them */
export function sizesTable(specimens: ReportBatch['specimens']): SizesTable | null {
  const heads = new Map(
    specimens.flatMap(({ sizes = [] }) => sizes.map(({ key, label, unit }) => [key, `${label}, ${unit}`] as const)),
  );
  if (heads.size === 0) return null;
  return {
    columns: [...heads].map(([key, head]) => ({ key, head })),
    rows: specimens.map(({ label, sizes = [] }) => ({
      label,
      cells: [...heads.keys()].map((key) => {
        const size = sizes.find((each) => each.key === key);
        return size ? `${size.mean} (${size.readings.length})` : '–';
      }),
    })),
  };
}
