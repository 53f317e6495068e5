import { clsx } from 'clsx';
import { useState } from 'react';
import type { FinishBody, JobView } from '#libs/contract/src/index.js';
import { parseNumber } from '#libs/units/src/index.js';
import { BenchFrame } from '../../features/bench/bench-frame.js';
import { useJobAct } from '../../features/bench/sending.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useLocalStorage } from '../../ui/local-storage.js';
import { api } from '../../api-client/api.js';
import { ui } from '../../ui/styles.js';
import styles from '../../features/bench/bench.module.css';

const NOTHING = { temperature: '', humidity: '', remarks: '', deviations: '', notTestedWhy: '' };

/** Conditions and remarks, then the end: what is on the frame becomes its rig. */
export function FinishStep({ job, onBack }: { job: JobView; onBack: () => void }) {
  const act = useJobAct(job.id);
  const [typed, setTyped, forget] = useLocalStorage(`job.${job.id}.finish`, NOTHING);
  const [error, setError] = useState<Error | null>(null);
  const [busy, setBusy] = useState(false);
  const set = (part: Partial<typeof NOTHING>) => setTyped({ ...typed, ...part });
  const open = job.specimens.length - fates(job, 'tested') - fates(job, 'invalid') - fates(job, 'not-tested');
  const counts = { tested: fates(job, 'tested'), invalid: fates(job, 'invalid') };
  async function finish() {
    const unread = unreadable(typed);
    if (unread.length > 0) return setError(new Error(unread.join(' ')));
    setBusy(true);
    setError(null);
    try {
      await act(api('POST /jobs/{id}/finish', { id: job.id, body: bodyOf(typed, open) }));
      forget();
    } catch (refused) {
      setError(refused as Error);
    }
    setBusy(false);
  }
  return (
    <BenchFrame
      job={job}
      step="finish"
      bar={
        <>
          <button type="button" className={ui.button} onClick={onBack}>
            Back to the specimens
          </button>
          <ErrorMessage error={error} />
          <button
            type="button"
            className={clsx(ui.buttonMain, styles.go)}
            disabled={busy}
            onClick={() => void finish()}
          >
            Finish {job.reference}
          </button>
        </>
      }
    >
      <div className={ui.stackWide} style={{ maxWidth: '44rem' }}>
        <p className={ui.note}>
          {counts.tested} tested, {counts.invalid} invalid, {job.specimens.length - counts.tested - counts.invalid} not
          tested. What is fitted on {job.frame?.tag} stays there as its rig.
        </p>
        <div className={ui.fields}>
          {open > 0 && (
            <TextField
              label={`Why ${open} ${open === 1 ? 'specimen is' : 'specimens are'} not tested`}
              whole
              value={typed.notTestedWhy}
              onChange={(notTestedWhy) => set({ notTestedWhy })}
            />
          )}
          <TextField
            label="Room temperature, °C"
            value={typed.temperature}
            onChange={(temperature) => set({ temperature })}
          />
          <TextField label="Relative humidity, %" value={typed.humidity} onChange={(humidity) => set({ humidity })} />
          <TextField
            label="Remarks"
            required={false}
            whole
            rows={2}
            value={typed.remarks}
            onChange={(remarks) => set({ remarks })}
          />
          <TextField
            label="Deviations from the method"
            required={false}
            whole
            rows={2}
            value={typed.deviations}
            onChange={(deviations) => set({ deviations })}
            help="They are stated on the report."
          />
        </div>
      </div>
    </BenchFrame>
  );
}

function fates(job: JobView, fate: string): number {
  return job.specimens.filter((specimen) => specimen.fate === fate).length;
}

/** What was typed for the room and is no figure: left out in silence it would be missing on the report. */
function unreadable({ temperature, humidity }: typeof NOTHING): string[] {
  const typed = [
    ['Room temperature', temperature],
    ['Relative humidity', humidity],
  ] as const;
  return typed.flatMap(([label, text]) => {
    const read = text.trim() ? parseNumber(text) : null;
    return read && 'reason' in read ? [`${label}: ${read.reason}`] : [];
  });
}

function bodyOf(typed: typeof NOTHING, open: number): FinishBody {
  const number = (text: string) => {
    const read = parseNumber(text);
    return 'reason' in read ? undefined : read.value;
  };
  const [temperatureC, humidityPct] = [number(typed.temperature), number(typed.humidity)];
  return {
    ...(open > 0 ? { notTestedWhy: typed.notTestedWhy } : {}),
    conditions: {
      ...(temperatureC === undefined ? {} : { temperatureC }),
      ...(humidityPct === undefined ? {} : { humidityPct }),
      ...(typed.remarks ? { remarks: typed.remarks } : {}),
      ...(typed.deviations ? { deviations: typed.deviations } : {}),
    },
  };
}
