import { clsx } from 'clsx';
import type { TrialView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { ui } from '../../ui/styles.js';
import { useMoments } from '../../ui/use-moments.js';
import { editText } from './trial-words.js';

/** The changes of a trial plan in their order, with what keeps one from being planned. */
export function TrialEdits({ trial }: { trial: TrialView }) {
  const moments = useMoments();
  const remove = useApiMutation<TrialView>(['plan']);
  if (trial.edits.length === 0)
    return <p className={ui.soft}>None yet. Move a job on the lanes, or choose a change here.</p>;
  return (
    <>
      <ErrorMessage error={remove.error} />
      <ol>
        {trial.edits.map((edit, index) => (
          <li key={JSON.stringify(edit)} className={ui.row}>
            <span className={ui.fig}>{index + 1}</span>
            <span>{editText(edit, trial, moments)}</span>
            {refusalOf(trial, index) && <span className={clsx(ui.act, ui.small)}>▲ {refusalOf(trial, index)}</span>}
            {trial.state === 'open' && (
              <button
                type="button"
                className={clsx(ui.buttonBare, ui.buttonSmall)}
                onClick={() => remove.mutate(api('DELETE /trials/{id}/edits/{index}', { id: trial.id, index }))}
              >
                Take back
              </button>
            )}
          </li>
        ))}
      </ol>
    </>
  );
}

function refusalOf({ refused }: TrialView, index: number): string {
  return (refused ?? [])
    .filter(({ edit }) => edit === index)
    .flatMap(({ reasons }) => reasons)
    .join(' ');
}
