import { clsx } from 'clsx';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { BatchView, RequestView } from '#libs/contract/src/index.js';
import { useMoments } from '../../ui/use-moments.js';
import { JOB_STATE_WORDS } from './words.js';
import { ui } from '../../ui/styles.js';
import styles from './requests.module.css';

type Job = NonNullable<BatchView['job']>;

/** The batches of a request: what was asked, their job, and each specimen's fate. */
export function BatchTable({ request, jobActs }: { request: RequestView; jobActs?: (job: Job) => ReactNode }) {
  return (
    <section className={ui.stack}>
      {request.batches.map((batch) => (
        <Batch key={batch.id} batch={batch} jobActs={jobActs} />
      ))}
    </section>
  );
}

function Batch({ batch, jobActs }: { batch: BatchView; jobActs: ((job: Job) => ReactNode) | undefined }) {
  const { job } = batch;
  return (
    <article className={ui.stackTight}>
      <div className={clsx(ui.rowBetween, styles.batchHead)}>
        <h2>
          {batch.label || `Batch ${batch.position}`} <span className={ui.soft}>· {batch.method.designation}</span>
        </h2>
        {job && (
          <span className={ui.row}>
            <span className={ui.fig}>{job.reference}</span>{' '}
            <span className={job.state === 'blocked' ? ui.badgeAct : ui.badge}>{JOB_STATE_WORDS[job.state]}</span>
            {jobActs?.(job)}
          </span>
        )}
      </div>
      <Facts batch={batch} />
      {batch.specimens.length > 0 && <Specimens batch={batch} />}
    </article>
  );
}

function Facts({ batch }: { batch: BatchView }) {
  const { moment } = useMoments();
  const { job } = batch;
  return (
    <dl className={ui.facts}>
      <dt>Method</dt>
      <dd>
        {batch.method.designation} version {batch.method.version}, {batch.method.title}
      </dd>
      <dt>Material</dt>
      <dd>{batch.material?.name ?? 'declared by a strength band'}</dd>
      <dt>Figures</dt>
      <dd>{typedText(batch)}</dd>
      <dt>Results</dt>
      <dd>{resultsText(batch)}</dd>
      {job && (
        <>
          <dt>Planned</dt>
          <dd>
            {job.startsAt
              ? `${moment(job.startsAt)}${job.endsAt ? ` to ${moment(job.endsAt)}` : ''} on ${job.frameTag ?? 'a frame'}`
              : (job.why ?? 'not yet')}
          </dd>
        </>
      )}
    </dl>
  );
}

/** The specimens of a batch and their fates, folded away at first. */
function Specimens({ batch }: { batch: BatchView }) {
  const { moment } = useMoments();
  return (
    <details>
      <summary>{specimensText(batch)}</summary>
      <Link
        className={ui.small}
        href={`/reports/labels/${batch.id}?of=${encodeURIComponent(batch.specimens.map(({ label }) => label).join(','))}`}
      >
        print labels
      </Link>
      <div className={ui.scrollX}>
        <table>
          <thead>
            <tr>
              <th>Label</th>
              <th>Fate</th>
              <th>Arrived</th>
              <th>Condition</th>
            </tr>
          </thead>
          <tbody>
            {batch.specimens.map((specimen) => (
              <tr key={specimen.id}>
                <th className={ui.fig}>{specimen.label}</th>
                <td>{specimen.invalidWhy ? `invalid: ${specimen.invalidWhy}` : specimen.fate.replace('-', ' ')}</td>
                <td>{moment(specimen.arrivedAt)}</td>
                <td>{specimen.condition}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

function specimensText({ specimens }: BatchView): string {
  const here = specimens.filter(({ arrivedAt }) => arrivedAt).length;
  const all = specimens.length === 1 ? '1 specimen' : `${specimens.length} specimens`;
  if (here === 0) return `${all}, not at the lab yet`;
  return here === specimens.length ? `${all}, at the lab` : `${all}, ${here} of them at the lab`;
}

/** The figures as they were typed; for a request that came by another way, as they are kept. */
function typedText({ asTyped, ask }: BatchView): string {
  const typed = Object.entries(asTyped).map(
    ([path, { value, unit }]) => `${wordsOf(path)} ${value}${unit ? `\u00A0${unit}` : ''}`,
  );
  if (typed.length > 0) return typed.join(', ');
  const geometry = Object.entries((ask['geometry'] as Record<string, unknown> | undefined) ?? {});
  const kept = geometry.map(
    ([key, value]) =>
      `${wordsOf(key)} ${String(value)}${key.endsWith('Mm') ? ' mm' : key.endsWith('Mm2') ? ' mm²' : ''}`,
  );
  const temperature = typeof ask['temperatureC'] === 'number' ? [`at ${ask['temperatureC']} °C`] : [];
  return [...kept, ...temperature].join(', ') || 'as the method proposes';
}

function resultsText({ ask }: BatchView): string {
  const wanted = Array.isArray(ask['results']) ? ask['results'].map((key) => String(key).replaceAll('-', ' ')) : [];
  return wanted.join(', ') || 'the usual ones of the method';
}

/** `geometry.parallelLengthMm` reads `parallel length`. */
function wordsOf(path: string): string {
  const name = path.replace(/^geometry\./, '').replace(/\.(low|high)$/, ' $1 end');
  return name
    .replace(/(Mm2?|C|MPa|MmPerMin)\b/, '')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();
}
