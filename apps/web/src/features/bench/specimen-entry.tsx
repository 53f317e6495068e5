import { clsx } from 'clsx';
import { useRef, useState } from 'react';
import type { CurveProposalView, JobView } from '#libs/contract/src/index.js';
import { decimalMarkIn, formatNumber, parseHinted } from '#libs/units/src/index.js';
import type { Hint } from '#libs/units/src/index.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { useLocalStorage } from '../../ui/local-storage.js';
import { api } from '../../api-client/api.js';
import { call, newIdempotencyKey } from '../../api-client/call.js';
import { useJobAct } from './sending.js';
import { FormatConfirm } from './format-confirm.js';
import { ui } from '../../ui/styles.js';
import styles from './bench.module.css';

type Specimen = JobView['specimens'][number];

interface Typed {
  readings: Record<string, string[]>;
  results: Record<string, string>;
}

/** Id of the form, for the button that sends it from the bar below. */
export const SPECIMEN_FORM = 'specimen-form';

/** What is measured and found on one specimen. What is typed stays on this device until the server has it. */
export function SpecimenEntry({
  job,
  specimen,
  onDone,
  onBusy,
}: {
  job: JobView;
  specimen: Specimen;
  onDone: () => void;
  onBusy: (busy: boolean) => void;
}) {
  const act = useJobAct(job.id);
  const ids = { id: job.id, sid: specimen.id };
  const [typed, setTyped, forget] = useLocalStorage<Typed>(`job.${job.id}.${specimen.id}`, startOf(job, specimen));
  const [error, setError] = useState<Error | null>(null);
  const [busy, setBusyHere] = useState(false);
  const setBusy = (now: boolean) => {
    setBusyHere(now);
    onBusy(now);
  };
  const typedResults = job.resultsNeeded.filter(({ typed: isTyped }) => isTyped);
  const correcting = specimen.results.some(({ origin }) => origin === 'typed');
  const [why, setWhy] = useState('');
  const results = typedResults.flatMap(({ key, unit }) =>
    figure(typed.results[key] ?? '', hintFor(typed)).map((value) => ({ key, value, unit })),
  );
  const unread = unreadable(job, typed);

  async function keep() {
    if (busy) return;
    if (unread.length > 0) {
      setError(new Error(`Nothing is kept yet. ${unread.map(({ label, reason }) => `${label}: ${reason}`).join(' ')}`));
      return;
    }
    const dimensions = dimensionsOf(job, typed);
    if (Object.keys(dimensions).length === 0 && results.length === 0) {
      setError(new Error('Nothing is typed yet. Type the dimensions, then the results or the curve.'));
      return;
    }
    setBusy(true);
    setError(null);
    try {
      if (Object.keys(dimensions).length > 0)
        await act(api('PUT /jobs/{id}/specimens/{sid}/dimensions', { ...ids, body: { dimensions } }));
      if (results.length > 0)
        await act(
          api('POST /jobs/{id}/specimens/{sid}/results', { ...ids, body: { results, ...(correcting ? { why } : {}) } }),
        );
      forget();
      if (results.length > 0) onDone();
    } catch (refused) {
      setError(refused as Error);
    }
    setBusy(false);
  }

  return (
    <form
      id={SPECIMEN_FORM}
      className={styles.run}
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      <div className={ui.stack}>
        <h2>
          <span className={ui.fig}>{specimen.label}</span>{' '}
          {specimen.invalidWhy ? (
            <span className={ui.act}>invalid: {specimen.invalidWhy}</span>
          ) : (
            <span className={ui.soft}>{specimen.condition}</span>
          )}
        </h2>
        {job.dimensionsNeeded.map((need) => (
          <Readings
            key={need.key}
            need={need}
            values={typed.readings[need.key] ?? []}
            onChange={(values) => setTyped({ ...typed, readings: { ...typed.readings, [need.key]: values } })}
          />
        ))}
        <CurveUpload job={job} specimen={specimen} onDone={onDone} />
      </div>
      <div className={ui.stack}>
        <ErrorMessage error={error} />
        {typedResults.map(({ key, label, unit }) => (
          <div className={styles.resultRow} key={key}>
            <label htmlFor={`result-${key}`}>
              {label}
              {unit && `, ${unit}`}
            </label>
            <input
              id={`result-${key}`}
              inputMode="decimal"
              autoComplete="off"
              aria-invalid={reasonAgainst(typed.results[key] ?? '', hintFor(typed)) ? true : undefined}
              value={typed.results[key] ?? ''}
              onChange={(event) => setTyped({ ...typed, results: { ...typed.results, [key]: event.target.value } })}
            />
          </div>
        ))}
        {correcting && results.length > 0 && (
          <div className={ui.field}>
            <label htmlFor="why-correct">Why the result is corrected</label>
            <input id="why-correct" required value={why} onChange={(event) => setWhy(event.target.value)} />
          </div>
        )}
        {specimen.results.length > 0 && <KeptResults specimen={specimen} />}
      </div>
    </form>
  );
}

function KeptResults({ specimen }: { specimen: Specimen }) {
  return (
    <table>
      <caption>Kept for {specimen.label}</caption>
      <tbody>
        {specimen.results.map(({ key, label, value, unit, origin, flags }) => (
          <tr key={key}>
            <th>{label}</th>
            <td className={ui.num}>
              {formatNumber(value, 5)} {unit}
            </td>
            <td className={clsx(ui.small, ui.soft)}>
              {origin} {flags.length > 0 && <span className={ui.act}>▲ {flags.join(', ')}</span>}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function startOf(job: JobView, specimen: Specimen): Typed {
  const readings = job.dimensionsNeeded.map(({ key, readings: count }) => [
    key,
    Array.from({ length: count }, (_, index) => String(specimen.dimensions[key]?.[index] ?? '')),
  ]);
  return { readings: Object.fromEntries(readings) as Record<string, string[]>, results: {} };
}

function dimensionsOf(job: JobView, typed: Typed): Record<string, number[]> {
  const read = job.dimensionsNeeded.map(({ key, nominal }): [string, number[]] => [
    key,
    (typed.readings[key] ?? []).flatMap((text) => figure(text, hintFor(typed, nominal))),
  ]);
  return Object.fromEntries(read.filter(([, values]) => values.length > 0));
}

/** A length is near its nominal figure; everything else is written as the other figures of the specimen are. */
function hintFor({ readings, results }: Typed, nominal: number | null = null): Hint {
  return { near: nominal, mark: decimalMarkIn([...Object.values(readings).flat(), ...Object.values(results)]) };
}

function figure(text: string, hint: Hint): number[] {
  const number = parseHinted(text, hint);
  return 'reason' in number ? [] : [number.value];
}

/** Why something that was typed is no figure; null where it is one, or nothing was typed. */
function reasonAgainst(text: string, hint: Hint): string | null {
  if (!text.trim()) return null;
  const number = parseHinted(text, hint);
  return 'reason' in number ? number.reason : null;
}

/** Every figure that cannot be read: what is left out in silence would be missing from the record. */
function unreadable(job: JobView, typed: Typed): { label: string; reason: string }[] {
  const { readings, results } = typed;
  const texts = [
    ...job.dimensionsNeeded.flatMap(({ key, label, nominal }) =>
      (readings[key] ?? []).map((text) => ({ label, text, hint: hintFor(typed, nominal) })),
    ),
    ...job.resultsNeeded.map(({ key, label }) => ({ label, text: results[key] ?? '', hint: hintFor(typed) })),
  ];
  return texts.flatMap(({ label, text, hint }) => {
    const reason = reasonAgainst(text, hint);
    return reason ? [{ label, reason }] : [];
  });
}

function Readings({
  need,
  values,
  onChange,
}: {
  need: JobView['dimensionsNeeded'][number];
  values: readonly string[];
  onChange: (values: string[]) => void;
}) {
  const hint = { near: need.nominal };
  const read = values.flatMap((text) => figure(text, hint));
  const mean = read.length > 0 ? read.reduce((sum, value) => sum + value, 0) / read.length : null;
  const off = mean !== null && need.nominal ? Math.abs(mean / need.nominal - 1) : 0;
  const apart = mean ? (Math.max(...read) - Math.min(...read)) / mean : 0;
  return (
    <fieldset className={ui.field}>
      <legend>
        {need.label}, {need.unit}{' '}
        {need.nominal !== null && <span className={ui.soft}>nominal {formatNumber(need.nominal)}</span>}
      </legend>
      <div className={styles.readingRow}>
        {values.map((value, index) => (
          <input
            key={index}
            aria-label={`${need.label}, reading ${index + 1}`}
            inputMode="decimal"
            autoComplete="off"
            aria-invalid={reasonAgainst(value, hint) ? true : undefined}
            value={value}
            onChange={(event) => onChange(values.map((other, at) => (at === index ? event.target.value : other)))}
          />
        ))}
        {mean !== null && (
          <span className={off > FAR_OFF || apart > FAR_OFF ? clsx(ui.fig, ui.act) : ui.fig}>
            {(off > FAR_OFF || apart > FAR_OFF) && '▲ '}mean {formatNumber(mean, 5)}
            {off > FAR_OFF && ', far from nominal'}
            {apart > FAR_OFF && ', readings far apart'}
          </span>
        )}
      </div>
    </fieldset>
  );
}

/** Results that no curve holds: they are measured on the broken specimen. */
const BY_HAND: readonly string[] = ['elongation-after-fracture', 'reduction-of-area'];

/** Whether a result is still to be typed that the curve cannot give. */
function toType(job: JobView, { results }: Specimen): boolean {
  return job.resultsNeeded.some(({ key }) => BY_HAND.includes(key) && !results.some((kept) => kept.key === key));
}

/** Share from which a mean off its nominal figure, or readings off each other, are worth a second look; common practice, no source. */
const FAR_OFF = 0.1;

function CurveUpload({ job, specimen, onDone }: { job: JobView; specimen: Specimen; onDone: () => void }) {
  const act = useJobAct(job.id);
  const ids = { id: job.id, sid: specimen.id };
  const [proposal, setProposal] = useState<CurveProposalView | null>(null);
  const [error, setError] = useState<Error | null>(null);
  const [busy, setBusy] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  async function confirm(found: CurveProposalView, format: Record<string, unknown>) {
    const body = { fileId: found.fileId, format };
    await act(api('POST /jobs/{id}/specimens/{sid}/curve/confirm', { ...ids, body }));
    setProposal(null);
    if (!toType(job, specimen)) onDone();
  }
  async function upload(file: File) {
    setBusy(true);
    setError(null);
    try {
      const found = await call(api('POST /jobs/{id}/specimens/{sid}/curve', { ...ids, name: file.name, body: file }), {
        key: newIdempotencyKey(),
      });
      if (found.known && found.problems.length === 0) await confirm(found, found.format);
      else setProposal(found);
    } catch (refused) {
      setError(refused as Error);
    }
    setBusy(false);
    if (input.current) input.current.value = '';
  }
  return (
    <div className={ui.field}>
      <label htmlFor="curve-file">
        {specimen.curve
          ? `Curve kept, ${specimen.curve.rows} rows; another file replaces it`
          : 'Or the recorded curve, as a text file'}
      </label>
      <input
        id="curve-file"
        ref={input}
        type="file"
        accept=".csv,.txt,.tsv,.dat,text/plain,text/csv"
        disabled={busy}
        onChange={(event) => event.target.files?.[0] && void upload(event.target.files[0])}
      />
      {specimen.reading && <Reading reading={specimen.reading} />}
      <ErrorMessage error={error} />
      {proposal && (
        <FormatConfirm
          proposal={proposal}
          onClose={() => setProposal(null)}
          onConfirm={(format) => confirm(proposal, format)}
        />
      )}
    </div>
  );
}

/** How far the worker is with the curve file. */
function Reading({ reading }: { reading: NonNullable<Specimen['reading']> }) {
  const failed = reading.state === 'failed';
  return (
    <p className={failed ? ui.noteAct : ui.note} role="status">
      {failed ? 'The file could not be read: ' : 'The curve is being read and reduced … '}
      {reading.message}
    </p>
  );
}
