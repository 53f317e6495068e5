import { clsx } from 'clsx';
import { useState } from 'react';
import type { ItemDetail } from '#libs/contract/src/index.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { useMoments } from '../../ui/use-moments.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** The faults of an item, and the way to report and to close one. */
export function ItemFaults({
  item,
  mayClose,
  onReport,
}: {
  item: ItemDetail;
  mayClose: boolean;
  onReport: (() => void) | null;
}) {
  const { moment } = useMoments();
  const [remedy, setRemedy] = useState('');
  const close = useApiMutation(['items', 'plan'], () => setRemedy(''));
  return (
    <section className={ui.stackTight}>
      <div className={ui.rowBetween}>
        <h2>Faults</h2>
        {onReport && (
          <button type="button" className={clsx(ui.buttonSharp, ui.buttonSmall)} onClick={onReport}>
            Report a fault …
          </button>
        )}
      </div>
      {item.faults.length === 0 && <p className={ui.soft}>None was ever reported.</p>}
      <ul>
        {item.faults.map((fault) => (
          <li key={fault.id} className={fault.closedAt ? undefined : ui.noteAct}>
            <strong>{fault.what}</strong>
            <br />
            <span className={ui.small}>
              {fault.openedBy.name}, {moment(fault.openedAt)}
              {fault.closedAt
                ? `; closed ${moment(fault.closedAt)}: ${fault.remedy ?? ''}`
                : '; open: the item fits no job'}
            </span>
            {!fault.closedAt && mayClose && (
              <CloseFault
                remedy={remedy}
                onRemedy={setRemedy}
                onClose={() => close.mutate(api('POST /faults/{id}/close', { id: fault.id, body: { remedy } }))}
              />
            )}
          </li>
        ))}
      </ul>
      <ErrorMessage error={close.error} />
    </section>
  );
}

function CloseFault({
  remedy,
  onRemedy,
  onClose,
}: {
  remedy: string;
  onRemedy: (remedy: string) => void;
  onClose: () => void;
}) {
  return (
    <form
      className={ui.row}
      onSubmit={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <input
        aria-label="What was done"
        placeholder="What was done"
        value={remedy}
        onChange={(event) => onRemedy(event.target.value)}
      />
      <button type="submit" className={clsx(ui.button, ui.buttonSmall)} disabled={!remedy.trim()}>
        Close the fault
      </button>
    </form>
  );
}
