import { clsx } from 'clsx';
import type { ReactNode } from 'react';
import type { TaskView } from '#libs/contract/src/index.js';
import { FetchStates, FetchFailed } from '../../ui/fetch-states.js';
import { Progress } from '../../ui/steps.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

const ENDED = ['done', 'failed', 'cancelled'];

/** Follows long work: progress, a way to stop it, its trouble or what came of it. */
export function TaskWatch({
  id,
  title,
  children,
}: {
  id: string;
  title: string;
  children: (task: TaskView) => ReactNode;
}) {
  const task = useApiQuery('tasks', api('GET /tasks/{id}', { id }), (value) =>
    value && ENDED.includes(value.state) ? false : 1000,
  );
  const cancel = useApiMutation(['tasks']);
  return (
    <FetchStates of={task} what={title}>
      {(value) => {
        if (value.state === 'failed')
          return <FetchFailed error={new Error(value.error ?? 'It failed without saying why.')} />;
        if (value.state === 'cancelled') return <p className={ui.soft}>Stopped.</p>;
        if (value.state === 'done') return <>{children(value)}</>;
        return (
          <div className={ui.stackTight} style={{ maxWidth: '36rem' }}>
            <Progress percent={value.progressPct} label={title} />
            <div className={ui.rowBetween}>
              <span className={ui.soft}>
                {value.message || (value.state === 'waiting' ? 'Waits for the planner …' : 'Working …')}
              </span>
              <button
                type="button"
                className={clsx(ui.button, ui.buttonSmall)}
                onClick={() => cancel.mutate(api('POST /tasks/{id}/cancel', { id }))}
              >
                Stop
              </button>
            </div>
          </div>
        );
      }}
    </FetchStates>
  );
}
