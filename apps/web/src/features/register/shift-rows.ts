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

export type RowProblems = Partial<Record<keyof ShiftRow, string>>;

const TIME = /^([01]\d|2[0-3]):[0-5]\d$/;

/** What is wrong with each row, by its field: said here, since the server would say it once for each day. */
export function rowProblems(rows: readonly ShiftRow[]): RowProblems[] {
  return rows.map(({ name, from, to, days }) => ({
    ...(name.trim().length >= 1 && name.trim().length <= 40 ? {} : { name: 'A name of 1 to 40 characters.' }),
    ...timeProblem('from', from),
    ...timeProblem('to', to),
    ...(days.length > 0 ? {} : { days: 'Tick a day, or remove the shift.' }),
  }));
}

function timeProblem(field: 'from' | 'to', text: string): RowProblems {
  return TIME.test(text.trim()) ? {} : { [field]: 'A time from 00:00 to 23:59, e.g. 06:00.' };
}
