import { useState } from 'react';
import type { CurveProposalView } from '#libs/contract/src/index.js';
import { CHANNEL_QUANTITIES, CURVE_CHANNELS } from '#libs/reduction/src/index.js';
import type { CurveChannel } from '#libs/reduction/src/index.js';
import { unitsOf } from '#libs/units/src/index.js';
import { Dialog } from '../../ui/dialog.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { ui } from '../../ui/styles.js';

interface Column {
  heading: string;
  channel: CurveChannel | null;
  unit: string | null;
}

const CHANNEL_WORDS: Readonly<Record<CurveChannel, string>> = {
  timeS: 'time',
  forceN: 'force',
  stressMPa: 'stress',
  displacementMm: 'travel of the crosshead',
  extensionMm: 'extension',
  strain: 'strain',
  torqueNm: 'torque',
  angleDeg: 'angle of twist',
  temperatureC: 'temperature',
};

/** Shows how a curve file was understood; a person confirms it once, and the next file of that source is read the same way. */
export function FormatConfirm({
  proposal,
  onConfirm,
  onClose,
}: {
  proposal: CurveProposalView;
  onConfirm: (format: Record<string, unknown>) => Promise<void>;
  onClose: () => void;
}) {
  const [columns, setColumns] = useState<Column[]>((proposal.format['columns'] as Column[] | undefined) ?? []);
  const [error, setError] = useState<Error | null>(null);
  const set = (at: number, part: Partial<Column>) =>
    setColumns(columns.map((column, index) => (index === at ? { ...column, ...part } : column)));
  const choose = (at: number, channel: CurveChannel | null) => {
    const { unit } = columns[at]!;
    const fits = channel !== null && unit !== null && unitsIn(channel).includes(unit);
    set(at, { channel, unit: fits ? unit : channel && (unitsIn(channel)[0] ?? null) });
  };
  return (
    <Dialog title="Is this how the file is meant?" onClose={onClose} wide>
      <p>
        Delimiter {String(proposal.format['delimiter'])}, decimal {String(proposal.format['decimalMark'])}. Once
        confirmed, files with the same headings are read this way by themselves.
      </p>
      <Problems problems={proposal.problems} />
      <div className={ui.scrollX}>
        <table>
          <thead>
            <tr>
              {columns.map((column, index) => (
                <ColumnHead
                  key={`${index}-${column.heading}`}
                  column={column}
                  number={index + 1}
                  onChannel={(channel) => choose(index, channel)}
                  onUnit={(unit) => set(index, { unit })}
                />
              ))}
            </tr>
          </thead>
          <Preview rows={proposal.preview.rows} />
        </table>
      </div>
      <ErrorMessage error={error} />
      <button
        type="button"
        className={ui.buttonMain}
        onClick={() => void onConfirm({ ...proposal.format, columns }).catch((refused: Error) => setError(refused))}
      >
        Yes, read it like this
      </button>
    </Dialog>
  );
}

function Problems({ problems }: Pick<CurveProposalView, 'problems'>) {
  if (problems.length === 0) return null;
  return (
    <ul className={ui.noteAct}>
      {problems.slice(0, 8).map(({ line, reason }) => (
        <li key={`${line}-${reason}`}>
          Line {line}: {reason}
        </li>
      ))}
    </ul>
  );
}

/** What a column is and in which unit, to be set right where it was misread. */
function ColumnHead({
  column,
  number,
  onChannel,
  onUnit,
}: {
  column: Column;
  number: number;
  onChannel: (channel: CurveChannel | null) => void;
  onUnit: (unit: string | null) => void;
}) {
  return (
    <th>
      {column.heading || `column ${number}`}
      <br />
      <select
        aria-label={`What column ${number} is`}
        value={column.channel ?? ''}
        onChange={(event) => onChannel((event.target.value || null) as CurveChannel | null)}
      >
        <option value="">not read</option>
        {CURVE_CHANNELS.map((channel) => (
          <option key={channel} value={channel}>
            {CHANNEL_WORDS[channel]}
          </option>
        ))}
      </select>
      <select
        aria-label={`Unit of column ${number}`}
        value={column.unit ?? ''}
        disabled={column.channel === null}
        onChange={(event) => onUnit(event.target.value || null)}
      >
        <option value="">no unit</option>
        {(column.channel ? unitsIn(column.channel) : []).map((unit) => (
          <option key={unit}>{unit}</option>
        ))}
      </select>
    </th>
  );
}

function Preview({ rows }: Pick<CurveProposalView['preview'], 'rows'>) {
  return (
    <tbody>
      {rows.map((row, index) => (
        <tr key={index}>
          {row.map((cell, at) => (
            <td key={at} className={ui.num}>
              {cell}
            </td>
          ))}
        </tr>
      ))}
    </tbody>
  );
}

function unitsIn(channel: CurveChannel): readonly string[] {
  return unitsOf(CHANNEL_QUANTITIES[channel]);
}
