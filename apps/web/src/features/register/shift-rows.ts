import type { WeeklyShift } from '#libs/contract/src/index.js';

/** A shift as a person thinks of it: its hours once, with the days of the week on which it starts. */
export interface ShiftRow {
  name: string;
  from: string;
  to: string;
  /** `1` is Monday, `7` Sunday. */
  days: string[];
}

/** Shifts with the same name and hours stand in one row, in the order in which they are kept. */
export function rowsOf(shifts: readonly WeeklyShift[]): ShiftRow[] {
  const rows = new Map<string, ShiftRow>();
  for (const { name, from, to, weekday } of shifts) {
    const key = JSON.stringify([name, from, to]);
    const row = rows.get(key) ?? { name, from, to, days: [] };
    rows.set(key, { ...row, days: [...row.days, String(weekday)] });
  }
  return [...rows.values()];
}

/** The rows as the lab keeps them, one entry for each day. */
export function shiftsOf(rows: readonly ShiftRow[]): WeeklyShift[] {
  return rows.flatMap(({ name, from, to, days }) =>
    [...days].sort().map((day) => ({ weekday: Number(day), from: from.trim(), to: to.trim(), name: name.trim() })),
  );
}

/**
 * What is wrong with each row, by its field.
 *
 * @param refused what the server said, by paths like `shifts[3].from`; the first of a row's days speaks for the row
 */
export function rowProblems(
  rows: readonly ShiftRow[],
  refused: Readonly<Record<string, string>>,
): Partial<Record<keyof ShiftRow, string>>[] {
  let next = 0;
  return rows.map(({ days }) => {
    const first = next;
    next += days.length;
    const said = (field: string) => refused[`shifts[${first}].${field}`];
    if (days.length === 0) return { days: 'Tick a day, or remove the shift.' };
    return definedOf({ name: said('name'), from: said('from'), to: said('to') });
  });
}

function definedOf(problems: Record<string, string | undefined>): Record<string, string> {
  return Object.fromEntries(Object.entries(problems).filter((each): each is [string, string] => each[1] !== undefined));
}
