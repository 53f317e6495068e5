import { useState } from 'react';
import type { JobView } from '#libs/contract/src/index.js';
import { BenchFrame } from '../../features/bench/bench-frame.js';
import { RunDialogs } from '../../features/bench/run-dialogs.js';
import type { RunQuestion } from '../../features/bench/run-dialogs.js';
import { SpecimenEntry } from '../../features/bench/specimen-entry.js';
import type { EntryState } from '../../features/bench/specimen-entry.js';
import { isTyped } from '../../features/bench/specimen-form.js';
import { SpecimenTabs, shortLabel } from '../../features/bench/specimen-tabs.js';
import type { Specimen } from '../../features/bench/typed-figures.js';
import { CurvePlot } from '../../features/results/curve-plot.js';
import { useCurves } from '../../features/results/use-curves.js';
import { ui } from '../../ui/styles.js';
import { RunBar } from './run-bar.js';

const isOpen = ({ fate }: Specimen) => fate !== 'tested' && fate !== 'invalid';

/** Specimen by specimen: dimensions, then results typed or a curve; an invalid one is marked with a reason, never dropped. */
export function RunStep({ job, onFinish }: { job: JobView; onFinish: () => void }) {
  const [chosen, setChosen] = useState<string | null>(null);
  const [asking, setAsking] = useState<RunQuestion | null>(null);
  const [entry, setEntry] = useState<EntryState | null>(null);
  const [error, setError] = useState<Error | null>(null);
  const { specimens } = job;
  const specimen = specimens.find(({ id }) => id === chosen) ?? specimens.find(isOpen) ?? specimens.at(-1);

  function choose(id: string | null) {
    setError(null);
    setChosen(id);
  }
  function finish() {
    const typed = specimens.filter((each) => isTyped(job, each));
    if (typed.length === 0) return onFinish();
    setChosen(typed[0]!.id);
    setError(new Error(notKept(typed)));
  }

  const open = specimens.filter(isOpen).length;
  const bar = { job, specimen, entry, open, onAsk: setAsking, onFinish: finish };
  return (
    <BenchFrame job={job} step="run" bar={<RunBar {...bar} error={entry?.dirty ? error : null} />}>
      {job.state === 'paused' && <p className={ui.noteAct}>Paused: {job.why}</p>}
      <div className={ui.stackWide}>
        <SpecimenTabs job={job} at={specimen?.id} onChoose={choose} />
        {specimen && job.state !== 'paused' && (
          <SpecimenEntry
            key={specimen.id}
            job={job}
            specimen={specimen}
            onDone={() => choose(null)}
            onState={setEntry}
          />
        )}
        <JobCurves job={job} />
      </div>
      <RunDialogs
        job={job}
        specimen={specimen}
        asking={asking}
        onClose={() => setAsking(null)}
        onSettled={() => choose(null)}
      />
    </BenchFrame>
  );
}

function notKept(typed: readonly Specimen[]): string {
  const labels = typed.map(({ label }) => shortLabel(label)).join(', ');
  return `${labels}: something is typed that is not saved. Save it or throw it away, then finish.`;
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
