import { clsx } from 'clsx';
import type { ItemDetail } from '#libs/contract/src/index.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { useMoments } from '../../ui/use-moments.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** When an item is kept away from jobs, and why. */
export function ItemWindows({ item, onAdd }: { item: ItemDetail; onAdd: (() => void) | null }) {
  const { moment } = useMoments();
  const remove = useApiMutation(['items', 'plan']);
  return (
    <>
      <ul>
        {item.windows.map((window) => (
          <li key={window.id} className={ui.rowBetween}>
            <span>
              {window.kind.replaceAll('-', ' ')}: {window.why}
              <br />
              <span className={clsx(ui.small, ui.soft)}>
                {moment(window.startsAt)} to {moment(window.endsAt)}
              </span>
            </span>
            {onAdd && (
              <button
                type="button"
                className={clsx(ui.buttonBare, ui.buttonSmall)}
                onClick={() => remove.mutate(api('DELETE /windows/{id}', { id: window.id }))}
              >
                Take out
              </button>
            )}
          </li>
        ))}
      </ul>
      {item.windows.length === 0 && <p className={ui.soft}>Nothing keeps it away.</p>}
      {onAdd && (
        <div>
          <button type="button" className={clsx(ui.button, ui.buttonSmall)} onClick={onAdd}>
            Keep it away for a while …
          </button>
        </div>
      )}
      <ErrorMessage error={remove.error} />
    </>
  );
}
