import { useState } from 'react';
import { Link } from 'wouter';
import type { JobView } from '#libs/contract/src/index.js';
import { openStep } from '../../features/bench/setup-steps.js';
import { JOB_STATE_WORDS } from '../../features/requests/words.js';
import { useSession } from '../../features/session/session.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { ChecksStep } from './checks-step.js';
import { FinishStep } from './finish-step.js';
import { RunStep } from './run-step.js';
import { SetupStep } from './setup-step.js';
import { ui } from '../../ui/styles.js';

/** A job at the frame: its state says which step is due. */
export function JobScreen({ id }: { id: string }) {
  const job = useApiQuery('jobs', api('GET /jobs/{id}', { id }));
  return (
    <FetchStates of={job} what="the job">
      {(value) => <JobSteps job={value} />}
    </FetchStates>
  );
}

function JobSteps({ job }: { job: JobView }) {
  const { person } = useSession();
  const [finishing, setFinishing] = useState(false);
  const mine = job.technician?.id === person.id;
  if (mine && job.state === 'taken' && openStep(job)) return <SetupStep job={job} />;
  if (mine && (job.state === 'taken' || job.state === 'rigged')) return <ChecksStep job={job} />;
  if (mine && (job.state === 'running' || job.state === 'paused')) {
    return finishing ? (
      <FinishStep job={job} onBack={() => setFinishing(false)} />
    ) : (
      <RunStep job={job} onFinish={() => setFinishing(true)} />
    );
  }
  return (
    <>
      <TitleBlock
        title={`${job.reference} ${job.request.title}`}
        back={{ to: '/bench', label: 'Bench' }}
        cells={[
          ['state', JOB_STATE_WORDS[job.state]],
          ['frame', job.frame?.tag ?? 'none yet'],
          ['technician', job.technician?.name ?? 'nobody'],
        ]}
      />
      <Empty
        action={
          <Link className={ui.buttonMain} href="/bench">
            To the next job
          </Link>
        }
      >
        {endText(job)}
      </Empty>
    </>
  );
}

function endText(job: JobView): string {
  if (job.state === 'done') return 'This job is done. Its results are with the manager.';
  if (job.state === 'blocked')
    return `This job is blocked: ${job.why ?? 'no reason is given'}. The manager plans it anew.`;
  if (job.state === 'aborted') return `This job was ended: ${job.why ?? 'no reason is given'}.`;
  if (job.technician) return `${job.technician.name} has this job.`;
  return 'Nobody has taken this job yet. It is taken from the bench, when it is next in the plan and its train is free.';
}
