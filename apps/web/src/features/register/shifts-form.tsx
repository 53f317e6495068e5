import { clsx } from 'clsx';
import { TextField } from '../../ui/fields/text-field.js';
import { Ticks } from '../../ui/fields/ticks.js';
import type { RowProblems, ShiftRow } from './shift-rows.js';
import { ui } from '../../ui/styles.js';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const DAYS = WEEKDAYS.map((label, index) => ({ value: String(index + 1), label }));
const NEW_ROW: ShiftRow = { name: '', from: '', to: '', days: ['1', '2', '3', '4', '5'] };

/** The shifts of the week, each with its hours and days. Overlaps are fine: two people hand over. */
export function ShiftsForm({
  rows,
  onChange,
  problems,
  wrong,
}: {
  rows: readonly ShiftRow[];
  onChange: (rows: ShiftRow[]) => void;
  /** What is wrong with each row. */
  problems: readonly RowProblems[];
  /** What is wrong with the list as a whole. */
  wrong: string | undefined;
}) {
  const change = (at: number, part: Partial<ShiftRow>) =>
    onChange(rows.map((row, index) => (index === at ? { ...row, ...part } : row)));
  return (
    <section className={ui.stack} aria-label="Shifts of the week">
      <h3>Shifts of the week</h3>
      {rows.length === 0 && <p className={ui.noteAct}>Without shifts nothing can be planned.</p>}
      {rows.map((row, at) => (
        <fieldset key={at} className={clsx(ui.stack, ui.framed)}>
          <legend>{row.name.trim() || 'New shift'}</legend>
          <div className={ui.fields}>
            <TextField
              label="Name"
              value={row.name}
              onChange={(name) => change(at, { name })}
              wrong={problems[at]?.name}
            />
            <TextField
              label="From"
              placeholder="06:00"
              value={row.from}
              onChange={(from) => change(at, { from })}
              wrong={problems[at]?.from}
            />
            <TextField
              label="Until"
              placeholder="14:00"
              value={row.to}
              onChange={(to) => change(at, { to })}
              wrong={problems[at]?.to}
              help={endsNextDay(row) ? 'Ends on the next day.' : undefined}
            />
            <Ticks
              label="Starts on"
              whole
              values={row.days}
              onChange={(days) => change(at, { days })}
              choices={DAYS}
              wrong={problems[at]?.days}
            />
          </div>
          <div>
            <button
              type="button"
              className={clsx(ui.button, ui.buttonSmall)}
              aria-label={`Remove the shift ${row.name || 'without a name'}`}
              onClick={() => onChange(rows.filter((_, index) => index !== at))}
            >
              Remove
            </button>
          </div>
        </fieldset>
      ))}
      <div>
        <button type="button" className={ui.button} onClick={() => onChange([...rows, NEW_ROW])}>
          Add a shift
        </button>
      </div>
      {wrong && <p className={ui.noteAct}>{wrong}</p>}
    </section>
  );
}

function endsNextDay({ from, to }: ShiftRow): boolean {
  return from.length === 5 && to.length === 5 && to <= from;
}
