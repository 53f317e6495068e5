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
      {proposal.problems.length > 0 && (
        <ul className={ui.noteAct}>
          {proposal.problems.slice(0, 8).map(({ line, reason }) => (
            <li key={`${line}-${reason}`}>
              Line {line}: {reason}
            </li>
          ))}
        </ul>
      )}
      <div className={ui.scrollX}>
        <table>
          <thead>
            <tr>
              {columns.map((column, index) => (
                <th key={`${index}-${column.heading}`}>
                  {column.heading || `column ${index + 1}`}
                  <br />
                  <select
                    aria-label={`What column ${index + 1} is`}
                    value={column.channel ?? ''}
                    onChange={(event) => choose(index, (event.target.value || null) as CurveChannel | null)}
                  >
                    <option value="">not read</option>
                    {CURVE_CHANNELS.map((channel) => (
                      <option key={channel} value={channel}>
                        {CHANNEL_WORDS[channel]}
                      </option>
                    ))}
                  </select>
                  <select
                    aria-label={`Unit of column ${index + 1}`}
                    value={column.unit ?? ''}
                    disabled={column.channel === null}
                    onChange={(event) => set(index, { unit: event.target.value || null })}
                  >
                    <option value="">no unit</option>
                    {(column.channel ? unitsIn(column.channel) : []).map((unit) => (
                      <option key={unit}>{unit}</option>
                    ))}
                  </select>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {proposal.preview.rows.map((row, index) => (
              <tr key={index}>
                {row.map((cell, at) => (
                  <td key={at} className={ui.num}>
                    {cell}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
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

function unitsIn(channel: CurveChannel): readonly string[] {
  return unitsOf(CHANNEL_QUANTITIES[channel]);
}
