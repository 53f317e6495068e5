import { clsx } from 'clsx';
import { useState } from 'react';
import type { InvalidBody, JobView } from '#libs/contract/src/index.js';
import { BlockDialog } from '../../features/bench/block-dialog.js';
import { BenchFrame } from '../../features/bench/bench-frame.js';
import { useJobAct } from '../../features/bench/sending.js';
import { SPECIMEN_FORM, SpecimenEntry } from '../../features/bench/specimen-entry.js';
import { WhyDialog } from '../../features/bench/why-dialog.js';
import { CurvePlot } from '../../features/results/curve-plot.js';
import { useCurves } from '../../features/results/use-curves.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { api } from '../../api-client/api.js';
import { ui } from '../../ui/styles.js';
import styles from '../../features/bench/bench.module.css';

const SETTLED = ['tested', 'invalid'];

/** Specimen by specimen: dimensions, then results typed or a curve; an invalid one is marked with a reason, never dropped. */
export function RunStep({ job, onFinish }: { job: JobView; onFinish: () => void }) {
  const act = useJobAct(job.id);
  const firstOpen = job.specimens.find(({ fate }) => !SETTLED.includes(fate));
  const [chosen, setChosen] = useState<string | null>(null);
  const [asking, setAsking] = useState<'pause' | 'block' | 'invalid' | 'valid' | null>(null);
  const [keeping, setKeeping] = useState(false);
  const [error, setError] = useState<Error | null>(null);
  const specimen = job.specimens.find(({ id }) => id === chosen) ?? firstOpen ?? job.specimens.at(-1);
  const paused = job.state === 'paused';
  const open = job.specimens.filter(({ fate }) => !SETTLED.includes(fate)).length;
  const mark = (sid: string, body: InvalidBody) =>
    api('POST /jobs/{id}/specimens/{sid}/invalid', { id: job.id, sid, body });
  const resume = () =>
    void act(api('POST /jobs/{id}/resume', { id: job.id })).catch((refused: Error) => setError(refused));
  return (
    <BenchFrame
      job={job}
      step="run"
      bar={
        <>
          <ErrorMessage error={error} />
          {paused ? (
            <button type="button" className={clsx(ui.buttonMain, styles.go)} onClick={resume}>
              Go on with {job.reference}
            </button>
          ) : (
            <>
              <button type="button" className={ui.button} onClick={() => setAsking('pause')}>
                Pause …
              </button>
              <button type="button" className={ui.buttonSharp} onClick={() => setAsking('block')}>
                Something failed …
              </button>
              {specimen && (
                <button
                  type="button"
                  className={ui.button}
                  onClick={() => setAsking(specimen.fate === 'invalid' ? 'valid' : 'invalid')}
                >
                  {short(specimen.label)} is {specimen.fate === 'invalid' ? 'valid after all' : 'invalid'} …
                </button>
              )}
              <button
                type="button"
                className={open === 0 ? clsx(ui.buttonMain, styles.go) : ui.button}
                onClick={onFinish}
              >
                {open === 0 ? 'All done: finish' : `Finish …`}
              </button>
              {specimen && open > 0 && (
                <button
                  type="submit"
                  form={SPECIMEN_FORM}
                  className={clsx(ui.buttonMain, styles.go)}
                  disabled={keeping}
                >
                  {keeping ? 'Keeping …' : `Keep ${short(specimen.label)}`}
                </button>
              )}
            </>
          )}
        </>
      }
    >
      {paused && <p className={ui.noteAct}>Paused: {job.why}</p>}
      <div className={ui.stackWide}>
        <div className={styles.specimenTabs} role="group" aria-label="Specimens">
          {job.specimens.map((each) => (
            <button
              key={each.id}
              type="button"
              className={styles[each.fate]}
              aria-current={each.id === specimen?.id ? 'true' : undefined}
              onClick={() => setChosen(each.id)}
            >
              {short(each.label)}
              <span className={ui.unseen}> {each.fate}</span>
              {each.fate === 'tested' && ' ✓'}
            </button>
          ))}
        </div>
        {specimen && !paused && (
          <SpecimenEntry
            key={specimen.id}
            job={job}
            specimen={specimen}
            onDone={() => setChosen(null)}
            onBusy={setKeeping}
          />
        )}
        <JobCurves job={job} />
      </div>
      {asking === 'pause' && (
        <WhyDialog
          title="Pause"
          explain="The job stays yours and the train stays on the frame."
          button="Pause"
          usual={['Break', 'End of shift', 'Waiting for help']}
          onWhy={(why) => act(api('POST /jobs/{id}/pause', { id: job.id, body: { why } }))}
          onClose={() => setAsking(null)}
        />
      )}
      {asking === 'block' && <BlockDialog job={job} onClose={() => setAsking(null)} />}
      {asking === 'valid' && specimen && (
        <WhyDialog
          title={`${specimen.label} is valid after all`}
          explain="Its results count again. The record keeps both reasons."
          button={`Let ${specimen.label} count again`}
          usual={['Marked by mistake']}
          onWhy={(why) => act(mark(specimen.id, { why, fate: 'valid' }))}
          onClose={() => setAsking(null)}
        />
      )}
      {asking === 'invalid' && specimen && (
        <WhyDialog
          title={`${specimen.label} is invalid`}
          explain="It stays in the record and on the report with this reason, and counts in no statistics."
          button={`Mark ${specimen.label} as invalid`}
          usual={['Broke in the grip', 'Slipped', 'Flaw seen before the test', 'Wrong speed']}
          onWhy={(why) => act(mark(specimen.id, { why })).then(() => setChosen(null))}
          onClose={() => setAsking(null)}
        />
      )}
    </BenchFrame>
  );
}

function JobCurves({ job }: { job: JobView }) {
  const ids = job.specimens.flatMap(({ curve }) => (curve ? [curve.id] : []));
  if (ids.length === 0) return <p className={ui.soft}>The curves of this job show here as they come in.</p>;
  return <Curves ids={ids} />;
}

function Curves({ ids }: { ids: readonly string[] }) {
  const curves = useCurves(ids);
  return curves.length > 0 ? <CurvePlot curves={curves} /> : null;
}

/** What sets a label apart from the others of the job. */
function short(label: string): string {
  return label.split('-').at(-1) ?? label;
}
