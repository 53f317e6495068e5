import { clsx } from 'clsx';
import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { BenchView } from '#libs/contract/src/index.js';
import { useSendSurely } from '../../features/bench/sending.js';
import { JOB_STATE_WORDS } from '../../features/requests/words.js';
import { Empty, FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { span } from '../../ui/moments.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';
import styles from '../../features/bench/bench.module.css';

/** What a technician has at hand, and the next right job. */
export function BenchScreen() {
  const bench = useApiQuery('jobs', api('GET /bench'));
  return (
    <div className={styles.bench}>
      <TitleBlock title="Bench" />
      <FetchStates of={bench} what="the next job">
        {(value) => (
          <div className={ui.stackWide}>
            {value.mine.length > 0 && (
              <section className={ui.stackTight}>
                <h2>Yours now</h2>
                {value.mine.map((job) => (
                  <Link key={job.id} className={styles.mineLink} href={`/bench/${job.id}`}>
                    <span className={ui.fig}>{job.frameTag}</span>
                    <strong>
                      <span className={ui.fig}>{job.reference}</span> {job.title}
                    </strong>
                    <span className={ui.badge}>{JOB_STATE_WORDS[job.state]}</span>
                  </Link>
                ))}
              </section>
            )}
            <Next bench={value} />
            <DayAhead bench={value} />
          </div>
        )}
      </FetchStates>
    </div>
  );
}

function Next({ bench }: { bench: BenchView }) {
  const send = useSendSurely();
  const { moment } = useMoments();
  const [, go] = useLocation();
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<Error | null>(null);
  const { next } = bench;
  if (!next) return <Empty>{bench.nothingWhy ?? 'There is no job for you right now.'}</Empty>;
  async function take() {
    setBusy(true);
    setError(null);
    try {
      const ask = () => send(api('POST /bench/take', { body: {} }));
      const job = (await ask()) ?? (await ask()); // who has a job gets the same one again
      if (job) go(`/bench/${job.id}`);
    } catch (refused) {
      setError(refused as Error);
    }
    setBusy(false);
  }
  return (
    <section className={ui.stackTight}>
      <h2>Next in the plan</h2>
      <div className={styles.benchNext}>
        <div>
          <span className={styles.frameTag}>{next.frameTag}</span>
          <p>
            <strong>
              <span className={ui.fig}>{next.reference}</span> {next.title}
            </strong>
          </p>
          <p className={ui.soft}>
            planned for {moment(next.startsAt)} ·{' '}
            {next.changeoverMin > 0
              ? `changeover about ${span(next.changeoverMin)}`
              : 'the train is on the frame already'}{' '}
            · {next.requestReference}
          </p>
        </div>
        <button type="button" className={clsx(ui.buttonMain, styles.go)} disabled={busy} onClick={() => void take()}>
          Take this job
        </button>
      </div>
      <ErrorMessage error={error} />
    </section>
  );
}

/** What is on the frames, and what begins within a day: after a weekend that is another day's work. */
function DayAhead({ bench }: { bench: BenchView }) {
  const { clock, day, nowMs } = useMoments();
  if (bench.today.length === 0) return null;
  const today = day(nowMs());
  const jobs = [...bench.today].sort((a, b) => a.startsAt.localeCompare(b.startsAt));
  return (
    <section>
      <h2>The next 24 hours</h2>
      <table>
        <thead>
          <tr>
            <th>Time</th>
            <th>Frame</th>
            <th>Job</th>
            <th>State</th>
            <th>Who</th>
          </tr>
        </thead>
        <tbody>
          {jobs.map((job) => (
            <tr key={job.jobId}>
              <td className={ui.fig}>
                {day(job.startsAt) !== today && `${day(job.startsAt)} `}
                {clock(job.startsAt)}–{day(job.endsAt) !== day(job.startsAt) && `${day(job.endsAt)} `}
                {clock(job.endsAt)}
              </td>
              <td className={ui.fig}>{job.frameTag}</td>
              <th>
                <Link href={`/bench/${job.jobId}`}>
                  <span className={ui.fig}>{job.reference}</span> {job.title}
                </Link>
              </th>
              <td>{JOB_STATE_WORDS[job.state]}</td>
              <td className={ui.oneLine}>{job.technician?.name ?? ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
