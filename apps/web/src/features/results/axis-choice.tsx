import { clsx } from 'clsx';
import type { CurveView } from '#libs/contract/src/index.js';
import { ui } from '../../ui/styles.js';

/** Which column of the curves an axis shows. */
export function AxisChoice({
  label,
  value,
  columns,
  onChange,
}: {
  label: string;
  value: string;
  columns: CurveView['columns'];
  onChange: (key: string) => void;
}) {
  return (
    <label className={clsx(ui.row, ui.small)}>
      {label}
      <select value={value} onChange={(event) => onChange(event.target.value)}>
        {columns.map((column) => (
          <option key={column.key} value={column.key}>
            {column.label}
          </option>
        ))}
      </select>
    </label>
  );
}
