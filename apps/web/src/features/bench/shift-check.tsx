import { clsx } from 'clsx';
import { useWatch } from 'react-hook-form';
import type { JobView } from '#libs/contract/src/index.js';
import { decimalMarkIn, formatNumber, parseHinted, unitsOf } from '#libs/units/src/index.js';
import { api } from '../../api-client/api.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormSelect } from '../../ui/form/form-select.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { useJobAct } from './sending.js';

interface Typed {
  reference: string;
  reading: string;
  unit: string;
}

/** Compares the load cell with a reference, before the first specimen of a shift. */
export function ShiftCheck({ job }: { job: JobView }) {
  const act = useJobAct(job.id);
  const cell = job.train.find(({ role }) => role === 'load-cell');
  const quantity = cell?.ratingUnit === 'N·m' ? 'torque' : 'force';
  const form = useLabForm<Typed>({
    initial: { reference: '', reading: '', unit: quantity === 'torque' ? 'N·m' : 'N' },
    check: unreadable,
    send: async (typed) => {
      const { reference, reading } = readBoth(typed);
      if (!cell || 'reason' in reference || 'reason' in reading) throw new Error('The train has no load cell.');
      const body = { cellId: cell.itemId, reference: reference.value, reading: reading.value, unit: typed.unit };
      await act(api('POST /jobs/{id}/shift-check', { id: job.id, body }));
    },
  });
  return (
    <FormFrame form={form} className={ui.rowEnd} label="Shift check">
      <FormText form={form} name="reference" label="Reference" />
      <FormText form={form} name="reading" label={`${cell?.tag ?? 'Cell'} reads`} />
      <FormSelect
        form={form}
        name="unit"
        label="Unit"
        choices={unitsOf(quantity).map((unit) => ({ value: unit, label: unit }))}
      />
      <SubmitButton form={form}>Check</SubmitButton>
      <Difference form={form} />
      <span className={clsx(ui.small, ui.soft)}>
        {cell?.rating && `${cell.tag} carries ${formatNumber(cell.rating)} ${cell.ratingUnit ?? ''}. `}Outside of the
        tolerance it goes out of use at once.
      </span>
    </FormFrame>
  );
}

/** How far the cell is off, as it is typed. */
function Difference({ form }: { form: LabForm<Typed> }) {
  const [reference, reading, unit] = useWatch({ control: form.control, name: ['reference', 'reading', 'unit'] });
  const read = readBoth({ reference, reading, unit });
  if ('reason' in read.reference || 'reason' in read.reading || read.reference.value === 0) return null;
  const off = ((read.reading.value - read.reference.value) / read.reference.value) * 100;
  return <span className={ui.fig}>{off.toFixed(2)} %</span>;
}

/** Both figures are written by one hand and are near each other. */
function readBoth({ reference: first, reading: second }: Typed) {
  const mark = decimalMarkIn([first, second]);
  const reference = parseHinted(first, { mark });
  const near = 'reason' in reference ? null : Math.abs(reference.value);
  return { reference, reading: parseHinted(second, { mark, near }) };
}

function unreadable(typed: Typed): Record<string, string> {
  return Object.fromEntries(
    Object.entries(readBoth(typed)).flatMap(([field, read]) => ('reason' in read ? [[field, read.reason]] : [])),
  );
}
