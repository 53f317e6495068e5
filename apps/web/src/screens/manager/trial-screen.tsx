import { useMoments } from '../../ui/use-moments.js';
import { clsx } from 'clsx';
import { useCallback, useState } from 'react';
import { useLocation } from 'wouter';
import type { BookingView, TrialEdit, TrialView } from '#libs/contract/src/index.js';
import { Board } from '../../features/plan/board.js';
import { Comparison } from '../../features/plan/figures.js';
import { TrialEditForm } from '../../features/plan/trial-edit-form.js';
import { editText } from '../../features/plan/trial-words.js';
import { Empty, FetchStates, ErrorMessage, Loading } from '../../ui/fetch-states.js';
import { useToast } from '../../ui/toasts.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { call } from '../../api-client/call.js';
import { ui } from '../../ui/styles.js';

/** One trial plan: its changes, its lanes, and the difference to the published plan. */
export function TrialScreen({ id }: { id: string }) {
  const trial = useApiQuery('plan', api('GET /trials/{id}', { id }), (value) => (value?.pending ? 1000 : false));
  return (
    <FetchStates of={trial} what="the trial plan">
      {(value) => <Trial trial={value} />}
    </FetchStates>
  );
}

/** Until a trial is planned, the published plan stands in for it. */
function Trial({ trial: asked }: { trial: TrialView }) {
  const moments = useMoments();
  const published = useApiQuery('plan', api('GET /plan'));
  const trial = { ...asked, plan: asked.plan ?? published.value ?? null };
  const [, go] = useLocation();
  const toast = useToast();
  const [chosen, setChosen] = useState<BookingView | null>(null);
  const edit = useApiMutation<TrialView>(['plan']);
  const publish = useApiMutation(['plan', 'requests'], () => {
    toast('The trial plan is published.');
    go('/planning/lanes');
  });
  const drop = useApiMutation(['plan'], () => go('/planning/trials'));
  const open = trial.state === 'open';
  const add = (body: TrialEdit) => edit.mutate(api('POST /trials/{id}/edits', { id: trial.id, body }));
  const takeBack = (index: number) => edit.mutate(api('DELETE /trials/{id}/edits/{index}', { id: trial.id, index }));
  const askFit = useCallback(
    (jobId: string, startsAt: string) => call(api('GET /plan/fit', { jobId, startsAt, trialId: trial.id })),
    [trial.id],
  );
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
        {open && (
          <>
            <button
              type="button"
              className={ui.buttonMain}
              disabled={publish.isPending || trial.edits.length === 0 || trial.pending}
              onClick={() => publish.mutate(api('POST /trials/{id}/publish', { id: trial.id }))}
            >
              Publish: replaces the plan for everybody
            </button>
            <button
              type="button"
              className={ui.buttonSharp}
              disabled={drop.isPending}
              onClick={() => drop.mutate(api('DELETE /trials/{id}', { id: trial.id }))}
            >
              Drop this trial
            </button>
          </>
        )}
      </TitleBlock>
      <div className={ui.stackWide}>
        <ErrorMessage error={publish.error ?? drop.error ?? edit.error} />
        {trial.stale && open && (
          <div className={clsx(ui.noteAct, ui.rowBetween)}>
            <span>
              The lab has changed since this trial was planned, so it cannot be published as it stands. Its changes stay
              when it is planned anew.
            </span>
            <button
              type="button"
              className={clsx(ui.button, ui.buttonSmall)}
              disabled={trial.pending || edit.isPending}
              onClick={() => edit.mutate(api('POST /trials/{id}/replan', { id: trial.id }))}
            >
              Plan it anew
            </button>
          </div>
        )}
        <section className={ui.stackTight}>
          <h2>Changes tried</h2>
          {trial.edits.length === 0 && (
            <p className={ui.soft}>None yet. Move a job on the lanes, or choose a change here.</p>
          )}
          <ol>
            {trial.edits.map((each, index) => (
              <li key={JSON.stringify(each)} className={ui.row}>
                <span className={ui.fig}>{index + 1}</span>
                <span>{editText(each, trial, moments)}</span>
                {refusalOf(trial, index) && <span className={clsx(ui.act, ui.small)}>▲ {refusalOf(trial, index)}</span>}
                {open && (
                  <button type="button" className={clsx(ui.buttonBare, ui.buttonSmall)} onClick={() => takeBack(index)}>
                    Take back
                  </button>
                )}
              </li>
            ))}
          </ol>
          {open && <TrialEditForm trial={trial} chosen={chosen} onAdd={add} busy={edit.isPending} />}
        </section>
        {trial.pending && (
          <Loading
            what={
              asked.plan
                ? 'the plan with the last change; the one before it is shown meanwhile'
                : 'the planned trial; the published plan is shown meanwhile'
            }
          />
        )}
        {trial.plan && open ? (
          <Board
            plan={trial.plan}
            chosen={chosen?.id ?? null}
            onChoose={setChosen}
            {...(open
              ? {
                  askFit,
                  onMove: (booking, frameId, startsAt) =>
                    booking.jobId && add({ kind: 'move', jobId: booking.jobId, frameId, startsAt }),
                }
              : {})}
          />
        ) : (
          !open && <Empty>This trial is {trial.state}.</Empty>
        )}
        {trial.comparison && !trial.pending && <Comparison comparison={trial.comparison} />}
      </div>
    </>
  );
}

function refusalOf({ refused }: TrialView, index: number): string {
  return (refused ?? [])
    .filter(({ edit }) => edit === index)
    .flatMap(({ reasons }) => reasons)
    .join(' ');
}
