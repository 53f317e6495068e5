import { clsx } from 'clsx';
import { useState } from 'react';
import { WEBHOOK_KINDS } from '#libs/contract/src/index.js';
import type { WebhookKind, WebhookView } from '#libs/contract/src/index.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { Ticks } from '../../ui/fields/ticks.js';
import { useMoments } from '../../ui/use-moments.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ApiError } from '../../api-client/call.js';
import { ui } from '../../ui/styles.js';

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
                    className={clsx(ui.button, ui.buttonSmall)}
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
  const { moment } = useMoments();
  const deliveries = useApiQuery('settings', api('GET /webhooks/{id}/deliveries', { id }), () => LOOK_EVERY_MS);
  const act = useApiMutation(['settings']);
  return (
    <div className={ui.stackTight}>
      <div className={ui.row}>
        <button
          type="button"
          className={clsx(ui.button, ui.buttonSmall)}
          onClick={() => act.mutate(api('POST /webhooks/{id}/try', { id }))}
        >
          Try it
        </button>
        <button
          type="button"
          className={clsx(ui.button, ui.buttonSmall)}
          onClick={() => act.mutate(api('DELETE /webhooks/{id}', { id }))}
        >
          Deliver no more
        </button>
      </div>
      <ErrorMessage error={act.error} />
      <FetchStates of={deliveries} what="the deliveries" empty={(rows) => rows.length === 0 && <p>None yet.</p>}>
        {(rows) => (
          <ul>
            {rows.map((row) => (
              <li key={row.id} className={ui.rowBetween}>
                <span>
                  {moment(row.announcedAt)} {row.kind}: {row.state}
                  {row.trouble && <span className={ui.act}> ▲ {row.trouble}</span>}
                  {row.nextTryAt && <span className={clsx(ui.soft, ui.small)}> again {moment(row.nextTryAt)}</span>}
                </span>
                {row.state === 'failed' && (
                  <button
                    type="button"
                    className={clsx(ui.button, ui.buttonSmall)}
                    onClick={() =>
                      act.mutate(api('POST /webhooks/{id}/deliveries/{deliveryId}/again', { id, deliveryId: row.id }))
                    }
                  >
                    Deliver again
                  </button>
                )}
              </li>
            ))}
          </ul>
        )}
      </FetchStates>
    </div>
  );
}

function NewWebhook() {
  const [url, setUrl] = useState('');
  const [kinds, setKinds] = useState<WebhookKind[]>([]);
  const [made, setMade] = useState<WebhookView | null>(null);
  const add = useApiMutation<WebhookView>(['settings'], (view) => {
    setMade(view);
    setUrl('');
    setKinds([]);
  });
  const wrong = add.error instanceof ApiError ? add.error.fields : {};
  return (
    <form
      className={ui.stack}
      onSubmit={(event) => {
        event.preventDefault();
        add.mutate(api('POST /webhooks', { body: { url, kinds } }));
      }}
    >
      <TextField
        label="Address"
        type="url"
        value={url}
        onChange={setUrl}
        wrong={wrong['url']}
        help="Begins with https."
      />
      <Ticks
        label="What it is told of"
        values={kinds}
        onChange={setKinds}
        choices={WEBHOOK_KINDS.map((kind) => ({ value: kind, label: kind.replace('/', ' ').replaceAll('-', ' ') }))}
      />
      <ErrorMessage error={add.error} />
      {made?.secret && (
        <div className={ui.noteFit} role="status">
          <strong>Copy this now, it is not shown again. It signs every message:</strong>
          <p>
            <code>{made.secret}</code>
          </p>
        </div>
      )}
      <div>
        <button type="submit" className={ui.button} disabled={!url || kinds.length === 0 || add.isPending}>
          Add
        </button>
      </div>
    </form>
  );
}
