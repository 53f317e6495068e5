import { clsx } from 'clsx';
import { useFieldArray, useWatch } from 'react-hook-form';
import { FormText } from '../../ui/form/form-text.js';
import { FormTicks } from '../../ui/form/form-ticks.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import type { SettingsTyped } from './settings-typed.js';
import type { ShiftRow } from './shift-rows.js';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const DAYS = WEEKDAYS.map((label, index) => ({ value: String(index + 1), label }));
const NEW_ROW: ShiftRow = { name: '', from: '', to: '', days: ['1', '2', '3', '4', '5'] };

/** The shifts of the week, each with its hours and days. Overlaps are fine: two people hand over. */
export function ShiftsForm({ form }: { form: LabForm<SettingsTyped> }) {
  const { fields, append, remove } = useFieldArray({ control: form.control, name: 'shifts' });
  return (
    <section className={ui.stack} aria-label="Shifts of the week">
      <h3>Shifts of the week</h3>
      {fields.length === 0 && <p className={ui.noteAct}>Without shifts nothing can be planned.</p>}
      {fields.map(({ id }, at) => (
        <Row key={id} form={form} at={at} onRemove={() => remove(at)} />
      ))}
      <div>
        <button type="button" className={ui.button} onClick={() => append(NEW_ROW)}>
          Add a shift
        </button>
      </div>
    </section>
  );
}

function Row({ form, at, onRemove }: { form: LabForm<SettingsTyped>; at: number; onRemove: () => void }) {
  const row = useWatch({ control: form.control, name: `shifts.${at}` });
  return (
    <fieldset className={clsx(ui.stack, ui.framed)}>
      <legend>{row.name.trim() || 'New shift'}</legend>
      <div className={ui.fields}>
        <FormText form={form} name={`shifts.${at}.name`} label="Name" />
        <FormText form={form} name={`shifts.${at}.from`} label="From" placeholder="06:00" />
        <FormText
          form={form}
          name={`shifts.${at}.to`}
          label="Until"
          placeholder="14:00"
          help={endsNextDay(row) ? 'Ends on the next day.' : undefined}
        />
        <FormTicks form={form} name={`shifts.${at}.days`} label="Starts on" whole choices={DAYS} />
      </div>
      <div>
        <button
          type="button"
          className={ui.buttonSmall}
          aria-label={`Remove the shift ${row.name || 'without a name'}`}
          onClick={onRemove}
        >
          Remove
        </button>
      </div>
    </fieldset>
  );
}

/** The shifts for who may only read. */
export function ShiftsTable({ rows }: { rows: readonly ShiftRow[] }) {
  return (
    <table style={{ maxWidth: '40rem' }}>
      <caption>Shifts of the week</caption>
      <tbody>
        {rows.map(({ name, from, to, days }) => (
          <tr key={name + from + to}>
            <th>
              {name} {from}–{to}
            </th>
            <td>{days.map((each) => WEEKDAYS[Number(each) - 1]).join(', ')}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function endsNextDay({ from, to }: ShiftRow): boolean {
  return from.length === 5 && to.length === 5 && to <= from;
}
