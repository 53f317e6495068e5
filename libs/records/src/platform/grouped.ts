/** Rows by key, each group in the order of the rows. */
export function grouped<Row>(rows: readonly Row[], keyOf: (row: Row) => string): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const group = groups.get(keyOf(row));
    if (group) group.push(row);
    else groups.set(keyOf(row), [row]);
  }
  return groups;
}

/** The last row of each key, in the order in which the keys came up: of rows by rising revision, the newest of each. */
export function lastOfEach<Row>(rows: readonly Row[], keyOf: (row: Row) => string): Row[] {
  return [...new Map(rows.map((row) => [keyOf(row), row])).values()];
}

export function byId<Row extends { id: string }>(rows: readonly Row[]): Map<string, Row> {
  return new Map(rows.map((row) => [row.id, row]));
}
