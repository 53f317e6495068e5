import { clsx } from 'clsx';
import { useState } from 'react';
import type { BenchCheckView, JobView } from '#libs/contract/src/index.js';
import { decimalMarkIn, formatNumber, parseHinted, parseNumber, unitsOf } from '#libs/units/src/index.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useMoments } from '../../ui/use-moments.js';
import { useJobAct } from './sending.js';
import { api } from '../../api-client/api.js';
import type { Call } from '../../api-client/api.js';
import { ui } from '../../ui/styles.js';
import styles from './bench.module.css';

/** The checks before the first specimen: the open ones one after another, what is done above. */
export function CheckList({ job }: { job: JobView }) {
  const { clock } = useMoments();
  const now = job.checks.find(({ done, kind }) => !done && kind !== 'auto');
  return (
    <ol className={styles.checks}>
      {job.checks.map((check) => (
        <li key={check.key} className={check === now ? styles.now : undefined}>
          <div className={styles.line}>
            <span
              className={check.done ? ui.fit : check.problem ? ui.act : ui.soft}
              role="img"
              aria-label={check.done ? 'done' : check.problem ? 'in the way' : 'open'}
            >
              {check.done ? '✓' : check.problem ? '▲' : '○'}
            </span>
            <span>
              <strong>{check.label}</strong>
              {!check.required && <span className={ui.soft}> where it applies</span>}
              <br />
              <span className={ui.small}>{check.problem ?? check.detail}</span>
            </span>
            <span className={clsx(ui.small, ui.soft)}>
              {check.doneAt && `${clock(check.doneAt)}${check.by ? ` ${check.by.name}` : ''}`}
            </span>
          </div>
          {check === now && <CheckEntry key={check.key} job={job} check={check} />}
        </li>
      ))}
    </ol>
  );
}

function CheckEntry({ job, check }: { job: JobView; check: BenchCheckView }) {
  const act = useJobAct(job.id);
  const [value, setValue] = useState('');
  const [error, setError] = useState<Error | null>(null);
  const [busy, setBusy] = useState(false);
  async function send(done: Call<JobView>) {
    setBusy(true);
    setError(null);
    try {
      await act(done);
    } catch (refused) {
      setError(refused as Error);
    }
    setBusy(false);
  }
  const number = parseNumber(value);
  const read = 'reason' in number ? null : number.value;
  return (
    <div className={ui.stackTight} style={{ padding: '0.5rem 0 0.25rem 2.75rem' }}>
      {check.kind === 'shift-check' ? (
        <ShiftCheck
          job={job}
          busy={busy}
          onSend={(body) => void send(api('POST /jobs/{id}/shift-check', { id: job.id, body }))}
        />
      ) : (
        <div className={ui.rowEnd}>
          {check.kind === 'value' && (
            <TextField label={`Reading${check.unit ? `, ${check.unit}` : ''}`} value={value} onChange={setValue} />
          )}
          <button
            type="button"
            className={ui.buttonMain}
            disabled={busy || (check.kind === 'value' && read === null)}
            onClick={() => {
              const body = { key: check.key, ...(read === null ? {} : { value: read }) };
              void send(api('POST /jobs/{id}/tick', { id: job.id, body }));
            }}
          >
            Done
          </button>
        </div>
      )}
      <ErrorMessage error={error} />
    </div>
  );
}

interface ShiftCheckEntry {
  cellId: string;
  reference: number;
  reading: number;
  unit: string;
}

function ShiftCheck({ job, busy, onSend }: { job: JobView; busy: boolean; onSend: (body: ShiftCheckEntry) => void }) {
  const cell = job.train.find(({ role }) => role === 'load-cell');
  const isTorque = cell?.ratingUnit === 'N·m';
  const [reference, setReference] = useState('');
  const [reading, setReading] = useState('');
  const [unit, setUnit] = useState(isTorque ? 'N·m' : 'N');
  const mark = decimalMarkIn([reference, reading]);
  const a = parseHinted(reference, { mark });
  const b = parseHinted(reading, { mark, near: 'reason' in a ? null : Math.abs(a.value) });
  const ready = !('reason' in a) && !('reason' in b) && cell;
  const error = ready && a.value !== 0 ? ((b.value - a.value) / a.value) * 100 : null;
  return (
    <form
      className={ui.rowEnd}
      onSubmit={(event) => {
        event.preventDefault();
        if (ready) onSend({ cellId: cell.itemId, reference: a.value, reading: b.value, unit });
      }}
    >
      <TextField label="Reference" value={reference} onChange={setReference} />
      <TextField label={`${cell?.tag ?? 'Cell'} reads`} value={reading} onChange={setReading} />
      <div className={ui.field}>
        <label htmlFor="shift-unit">Unit</label>
        <select id="shift-unit" value={unit} onChange={(event) => setUnit(event.target.value)}>
          {unitsOf(isTorque ? 'torque' : 'force').map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      </div>
      <button type="submit" className={ui.buttonMain} disabled={!ready || busy}>
        Check
      </button>
      {error !== null && <span className={ui.fig}>{error.toFixed(2)} %</span>}
      <span className={clsx(ui.small, ui.soft)}>
        {cell?.rating && `${cell.tag} carries ${formatNumber(cell.rating)} ${cell.ratingUnit ?? ''}. `}Outside of the
        tolerance it goes out of use at once.
      </span>
    </form>
  );
}
