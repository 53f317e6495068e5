import { clsx } from 'clsx';
import { useCallback, useState } from 'react';
import type { ReactNode } from 'react';
import { Link, useLocation } from 'wouter';
import { eventWords } from '#libs/contract/src/index.js';
import type { BookingView, PlanView, TaskView, TrialView } from '#libs/contract/src/index.js';
import { Board } from '../../features/plan/board.js';
import { BookingSheet } from '../../features/plan/booking-sheet.js';
import { PlanChanges } from '../../features/plan/plan-changes.js';
import { TaskWatch } from '../../features/plan/task-watch.js';
import { useHasRole } from '../../features/session/session.js';
import { Empty, FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { useMoments } from '../../ui/use-moments.js';
import { useToast } from '../../ui/toasts.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ApiError, call } from '../../api-client/call.js';
import { OutOfPlan } from './out-of-plan.js';
import { ui } from '../../ui/styles.js';

/** The published plan as frame lanes. Moving a job pins it where it is set down; the planner then plans around it. */
export function LanesScreen() {
  const plan = useApiQuery('plan', api('GET /plan'));
  if (plan.error instanceof ApiError && plan.error.problem.status === 404) return <NoPlan />;
  return (
    <FetchStates of={plan} what="the plan">
      {(value) => <Lanes plan={value} />}
    </FetchStates>
  );
}

function NoPlan() {
  const replan = useApiMutation<TaskView>(['plan']);
  return (
    <>
      <TitleBlock title="Frame lanes" />
      <Empty
        action={
          <button type="button" className={ui.buttonMain} onClick={() => replan.mutate(api('POST /plan/replan'))}>
            Plan now
          </button>
        }
      >
        No plan is published yet. Planning places every accepted job on a frame.
      </Empty>
      {replan.data && (
        <TaskWatch id={replan.data.id} title="the planning">
          {() => <p className={ui.fit}>The plan is published.</p>}
        </TaskWatch>
      )}
    </>
  );
}

function Lanes({ plan }: { plan: PlanView }) {
  const mayChange = useHasRole('manager');
  const [chosenId, setChosenId] = useState<string | null>(null);
  const { pin, move } = useMove();
  const replan = useApiMutation<TaskView>(['plan']);
  const trial = useTrial();
  const chosen = plan.lanes.flatMap(({ bookings }) => bookings).find(({ id }) => id === chosenId) ?? null;
  const askFit = useCallback((jobId: string, startsAt: string) => call(api('GET /plan/fit', { jobId, startsAt })), []);
  return (
    <>
      <LanesTitle plan={plan}>{mayChange && <PlanActs replan={replan} trial={trial} />}</LanesTitle>
      <div className={ui.stack}>
        <ErrorMessage error={pin.error ?? replan.error ?? trial.error} />
        {plan.stale && (
          <p className={ui.note}>Something changed since this plan was made; the next one is on its way.</p>
        )}
        {replan.data && (
          <TaskWatch id={replan.data.id} title="the planning">
            {() => null}
          </TaskWatch>
        )}
        <Board
          plan={plan}
          chosen={chosenId}
          onChoose={({ id }) => setChosenId(id)}
          {...(mayChange ? { askFit, onMove: move } : {})}
        />
        {chosen ? (
          <BookingSheet key={chosen.id} booking={chosen} mayChange={mayChange} onClose={() => setChosenId(null)} />
        ) : (
          <p className={clsx(ui.soft, ui.small)}>
            Choose a job to see why it is where it is.{' '}
            {mayChange &&
              'Drag it to move it; or with the keys: Space takes it up, arrows move it (Shift: 4 hours), Enter sets it down.'}
          </p>
        )}
        <OutOfPlan plan={plan} mayChange={mayChange} />
        <PlanChanges plan={plan} />
      </div>
    </>
  );
}

/** Pins a job where it is set down. */
function useMove() {
  const { moment } = useMoments();
  const toast = useToast();
  const pin = useApiMutation(['plan', 'requests']);
  const move = ({ jobId, jobReference }: BookingView, frameId: string, startsAt: string) => {
    if (!jobId) return;
    pin.mutate(api('POST /plan/pins', { body: { jobId, frameId, startsAt } }), {
      onSuccess: () =>
        toast(`${jobReference} is pinned to ${moment(startsAt)}. The planner works around it.`, () =>
          pin.mutate(api('DELETE /plan/pins/{jobId}', { jobId })),
        ),
    });
  };
  return { pin, move };
}

function useTrial() {
  const [, go] = useLocation();
  return useApiMutation<TrialView>(['plan'], ({ id }) => go(`/planning/trials/${id}`));
}

function LanesTitle({ plan, children }: { plan: PlanView; children: ReactNode }) {
  const { moment } = useMoments();
  return (
    <TitleBlock
      title="Frame lanes"
      cells={[
        ['plan', <span className={ui.fig} key="v">{`v${plan.version}`}</span>],
        ['published', moment(plan.publishedAt)],
        ['because', eventWords(plan.cause)],
        ['moved', <Moved key="m" plan={plan} />],
        [
          'late',
          plan.figures.lateJobs === 0 ? (
            'none'
          ) : (
            <Link
              key="l"
              className={ui.act}
              href="/planning/late"
            >{`▲ ${plan.figures.lateJobs} ${plan.figures.lateJobs === 1 ? 'job' : 'jobs'}`}</Link>
          ),
        ],
      ]}
    >
      {children}
    </TitleBlock>
  );
}

/** How many jobs this plan moved, and the way to them below the board. */
function Moved({ plan: { changes, changedBy, version } }: { plan: PlanView }) {
  if (changedBy?.version !== version) return 'nothing';
  return <a href="#changed">{changes.length === 1 ? '1 job' : `${changes.length} jobs`}</a>;
}

type PlanActsProps = { replan: ReturnType<typeof useApiMutation<TaskView>>; trial: ReturnType<typeof useTrial> };

function PlanActs({ replan, trial }: PlanActsProps) {
  const { moment, nowMs } = useMoments();
  return (
    <>
      <button
        type="button"
        className={ui.button}
        disabled={trial.isPending}
        onClick={() => trial.mutate(api('POST /trials', { body: { name: `Trial of ${moment(nowMs())}` } }))}
      >
        Try a change
      </button>
      <button
        type="button"
        className={ui.button}
        disabled={replan.isPending}
        onClick={() => replan.mutate(api('POST /plan/replan'))}
      >
        Replan now
      </button>
    </>
  );
}
