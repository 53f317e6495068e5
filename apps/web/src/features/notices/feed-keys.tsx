import { clsx } from 'clsx';
import { useState } from 'react';
import type { FeedKeyView } from '#libs/contract/src/index.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useMoments } from '../../ui/use-moments.js';
import { api } from '../../api-client/api.js';
import type { Call } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { urlOf } from '../../api-client/call.js';
import { ui } from '../../ui/styles.js';

/** One's own keys for calendar programs: made, shown once, taken back. */
export function FeedKeys({ personId }: { personId: string }) {
  const { moment } = useMoments();
  const [name, setName] = useState('');
  const [made, setMade] = useState<FeedKeyView | null>(null);
  const keys = useApiQuery('notices', api('GET /feed-keys'));
  const make = useApiMutation<FeedKeyView>(['notices'], (view) => {
    setMade(view);
    setName('');
  });
  const end = useApiMutation(['notices']);
  return (
    <section className={ui.stack}>
      <h2>Your calendar</h2>
      <p>
        A calendar program reads the plan from an address with a key in it. Who has the address sees the plan, so give
        it to nobody; a key that got lost is taken back here.
      </p>
      <FetchStates of={keys} what="your keys">
        {(rows) => (
          <ul className={ui.stackTight}>
            {rows.map(({ id, name: place, usedAt }) => (
              <li key={id} className={ui.rowBetween}>
                <span>
                  {place}{' '}
                  <span className={clsx(ui.soft, ui.small)}>{usedAt ? `used ${moment(usedAt)}` : 'not used yet'}</span>
                </span>
                <button
                  type="button"
                  className={clsx(ui.button, ui.buttonSmall)}
                  onClick={() => end.mutate(api('DELETE /feed-keys/{id}', { id }))}
                >
                  Take back
                </button>
              </li>
            ))}
          </ul>
        )}
      </FetchStates>
      {made?.key && <Addresses personId={personId} feedKey={made.key} />}
      <form
        className={ui.rowEnd}
        onSubmit={(event) => {
          event.preventDefault();
          make.mutate(api('POST /feed-keys', { body: { name } }));
        }}
      >
        <TextField label="Where it is used" placeholder="Phone" value={name} onChange={setName} />
        <button type="submit" className={ui.button} disabled={!name.trim() || make.isPending}>
          Make a key
        </button>
      </form>
      <ErrorMessage error={make.error ?? end.error} />
    </section>
  );
}

function Addresses({ personId, feedKey }: { personId: string; feedKey: string }) {
  const whole = (feed: Call<string, 'GET'>) => `${location.origin}${urlOf(feed)}`;
  return (
    <div className={clsx(ui.noteFit, ui.stackTight)} role="status">
      <strong>Copy this now: the key is not shown again.</strong>
      <p>
        Your jobs: <code>{whole(api('GET /feeds/people/{id}.ics', { id: personId, key: feedKey }))}</code>
      </p>
      <p>
        A frame, with its tag: <code>{whole(api('GET /feeds/frames/{tag}.ics', { tag: 'TAG', key: feedKey }))}</code>
      </p>
    </div>
  );
}
