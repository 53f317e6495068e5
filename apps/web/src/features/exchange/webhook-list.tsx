import { clsx } from 'clsx';
import { useState } from 'react';
import type { DeliveryView } from '#libs/contract/src/index.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { useMoments } from '../../ui/use-moments.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';
import { NewWebhook } from './new-webhook.js';

/** Other programs that are told of what happens, and how the telling went. */
export function WebhookList() {
  const webhooks = useApiQuery('settings', api('GET /webhooks'));
  const [open, setOpen] = useState<string | null>(null);
  return (
    <section className={ui.stack}>
      <h2>Other programs</h2>
      <p>Each is sent a signed message when something happens, and asks for the rest with a token.</p>
      <FetchStates of={webhooks} what="the addresses">
        {(rows) => (
          <ul className={ui.stack}>
            {rows.map((webhook) => (
              <li key={webhook.id} className={ui.stackTight}>
                <div className={ui.rowBetween}>
                  <code>{webhook.url}</code>
                  <button
                    type="button"
                    className={ui.buttonSmall}
                    aria-expanded={open === webhook.id}
                    onClick={() => setOpen(open === webhook.id ? null : webhook.id)}
                  >
                    Deliveries{webhook.lastState === 'failed' ? ' ▲' : ''}
                  </button>
                </div>
                <span className={clsx(ui.soft, ui.small)}>{webhook.kinds.join(', ')}</span>
                {open === webhook.id && <Deliveries id={webhook.id} />}
              </li>
            ))}
          </ul>
        )}
      </FetchStates>
      <NewWebhook />
    </section>
  );
}

const LOOK_EVERY_MS = 3_000;

function Deliveries({ id }: { id: string }) {
  const deliveries = useApiQuery('settings', api('GET /webhooks/{id}/deliveries', { id }), () => LOOK_EVERY_MS);
  const change = useApiMutation(['settings']);
  const again = (deliveryId: string) =>
    change.mutate(api('POST /webhooks/{id}/deliveries/{deliveryId}/again', { id, deliveryId }));
  return (
    <div className={ui.stackTight}>
      <div className={ui.row}>
        <button
          type="button"
          className={ui.buttonSmall}
          onClick={() => change.mutate(api('POST /webhooks/{id}/try', { id }))}
        >
          Try it
        </button>
        <button
          type="button"
          className={ui.buttonSmall}
          onClick={() => change.mutate(api('DELETE /webhooks/{id}', { id }))}
        >
          Deliver no more
        </button>
      </div>
      <ErrorMessage error={change.error} />
      <FetchStates of={deliveries} what="the deliveries" empty={(rows) => rows.length === 0 && <p>None yet.</p>}>
        {(rows) => (
          <ul>
            {rows.map((row) => (
              <DeliveryLine key={row.id} delivery={row} onAgain={() => again(row.id)} />
            ))}
          </ul>
        )}
      </FetchStates>
    </div>
  );
}

function DeliveryLine({ delivery, onAgain }: { delivery: DeliveryView; onAgain: () => void }) {
  const { moment } = useMoments();
  const { announcedAt, kind, state, trouble, nextTryAt } = delivery;
  return (
    <li className={ui.rowBetween}>
      <span>
        {moment(announcedAt)} {kind}: {state}
        {trouble && <span className={ui.act}> ▲ {trouble}</span>}
        {nextTryAt && <span className={clsx(ui.soft, ui.small)}> again {moment(nextTryAt)}</span>}
      </span>
      {state === 'failed' && (
        <button type="button" className={ui.buttonSmall} onClick={onAgain}>
          Deliver again
        </button>
      )}
    </li>
  );
}
