import { useCallback, useState } from 'react';
import { useLocation } from 'wouter';
import type { BookingView, TrialEdit, TrialView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { call } from '../../api-client/call.js';
import { useApiMutation, useApiQuery } from '../../api-client/queries.js';
import { Board } from '../../features/plan/board.js';
import { Comparison } from '../../features/plan/figures.js';
import { TrialEditForm } from '../../features/plan/trial-edit-form.js';
import { TrialEdits } from '../../features/plan/trial-edits.js';
import { Empty, ErrorMessage, FetchStates, Loading } from '../../ui/fetch-states.js';
import { ui } from '../../ui/styles.js';
import { TitleBlock } from '../../ui/title-block.js';
import { useToast } from '../../ui/toasts.js';

/** One trial plan: its changes, its lanes, and the difference to the published plan. */
export function TrialScreen({ id }: { id: string }) {
  const trial = useApiQuery('plan', api('GET /trials/{id}', { id }), (value) => (value?.pending ? 1000 : false));
  return (
    <FetchStates of={trial} what="the trial plan">
      {(value) => (
        <>
          <TrialHead trial={value} />
          <Trial trial={value} />
        </>
      )}
    </FetchStates>
  );
}

function TrialHead({ trial }: { trial: TrialView }) {
  const [, go] = useLocation();
  const toast = useToast();
  const publish = useApiMutation(['plan', 'requests'], () => {
    toast('The trial plan is published.');
    go('/planning/lanes');
  });
  const drop = useApiMutation(['plan'], () => go('/planning/trials'));
  const { id } = trial;
  return (
    <>
      <TitleBlock
        title={trial.name}
        back={{ to: '/planning/trials', label: 'Trial plans' }}
        cells={[
          ['based on', `v${trial.basedOnVersion}`],
          ['state', trial.state],
        ]}
      >
        {trial.state === 'open' && (
          <>
            <button
              type="button"
              className={ui.buttonMain}
              disabled={publish.isPending || trial.edits.length === 0 || trial.pending}
              onClick={() => publish.mutate(api('POST /trials/{id}/publish', { id }))}
            >
              Publish: replaces the plan for everybody
            </button>
            <button
              type="button"
              className={ui.buttonSharp}
              disabled={drop.isPending}
              onClick={() => drop.mutate(api('DELETE /trials/{id}', { id }))}
            >
              Drop this trial
            </button>
          </>
        )}
      </TitleBlock>
      <ErrorMessage error={publish.error ?? drop.error} />
    </>
  );
}

/** Until a trial is planned, the published plan stands in for it. */
function Trial({ trial: fetched }: { trial: TrialView }) {
  const published = useApiQuery('plan', api('GET /plan'));
  const trial = { ...fetched, plan: fetched.plan ?? published.value ?? null };
  const [chosen, setChosen] = useState<BookingView | null>(null);
  const edit = useApiMutation<TrialView>(['plan']);
  const open = trial.state === 'open';
  const add = (body: TrialEdit) => edit.mutateAsync(api('POST /trials/{id}/edits', { id: trial.id, body }));
  return (
    <div className={ui.stackWide}>
      {trial.stale && open && <Stale trial={trial} />}
      <section className={ui.stackTight}>
        <h2>Changes tried</h2>
        <TrialEdits trial={trial} />
        {open && <TrialEditForm trial={trial} chosen={chosen} onAdd={add} />}
      </section>
      {trial.pending && <Loading what={pendingWords(fetched)} />}
      {!open && <Empty>This trial is {trial.state}.</Empty>}
      {open && <TrialBoard trial={trial} chosen={chosen} onChoose={setChosen} />}
      {trial.comparison && !trial.pending && <Comparison comparison={trial.comparison} />}
    </div>
  );
}

function pendingWords({ plan }: TrialView): string {
  return plan
    ? 'the plan with the last change; the one before it is shown meanwhile'
    : 'the planned trial; the published plan is shown meanwhile';
}

function Stale({ trial }: { trial: TrialView }) {
  const replan = useApiMutation<TrialView>(['plan']);
  return (
    <div className={ui.noteAct}>
      <div className={ui.rowBetween}>
        <span>
          The lab has changed since this trial was planned, so it cannot be published as it stands. Its changes stay
          when it is replanned.
        </span>
        <button
          type="button"
          className={ui.buttonSmall}
          disabled={trial.pending || replan.isPending}
          onClick={() => replan.mutate(api('POST /trials/{id}/replan', { id: trial.id }))}
        >
          Replan it
        </button>
      </div>
      <ErrorMessage error={replan.error} />
    </div>
  );
}

interface BoardProps {
  trial: TrialView;
  chosen: BookingView | null;
  onChoose: (booking: BookingView | null) => void;
}

/** The lanes of a trial, on which jobs can be moved. */
function TrialBoard({ trial, chosen, onChoose }: BoardProps) {
  const move = useApiMutation<TrialView>(['plan']);
  const { id } = trial;
  const askFit = useCallback(
    (jobId: string, startsAt: string) => call(api('GET /plan/fit', { jobId, startsAt, trialId: id })),
    [id],
  );
  if (!trial.plan) return null;
  const onMove = ({ jobId }: BookingView, frameId: string, startsAt: string) => {
    if (jobId) move.mutate(api('POST /trials/{id}/edits', { id, body: { kind: 'move', jobId, frameId, startsAt } }));
  };
  return (
    <>
      <ErrorMessage error={move.error} />
      <Board plan={trial.plan} chosen={chosen?.id ?? null} onChoose={onChoose} askFit={askFit} onMove={onMove} />
    </>
  );
}
