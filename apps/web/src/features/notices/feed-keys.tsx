import { clsx } from 'clsx';
import type { FeedKeyView } from '#libs/contract/src/index.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { useMoments } from '../../ui/use-moments.js';
import { api } from '../../api-client/api.js';
import type { Call } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { urlOf } from '../../api-client/call.js';
import { ui } from '../../ui/styles.js';

/** One's own keys for calendar programs: made, shown once, taken back. */
export function FeedKeys({ personId }: { personId: string }) {
  const { moment } = useMoments();
  const keys = useApiQuery('notices', api('GET /feed-keys'));
  const make = useApiMutation<FeedKeyView>(['notices']);
  const form = useLabForm({
    initial: { name: '' },
    send: (body) => make.mutateAsync(api('POST /feed-keys', { body })),
    after: 'clear',
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
                  className={ui.buttonSmall}
                  onClick={() => end.mutate(api('DELETE /feed-keys/{id}', { id }))}
                >
                  Take back
                </button>
              </li>
            ))}
          </ul>
        )}
      </FetchStates>
      {make.data?.key && <Addresses personId={personId} feedKey={make.data.key} />}
      <FormFrame form={form} className={ui.rowEnd} label="New key">
        <FormText form={form} name="name" label="Where it is used" placeholder="Phone" needed="Say where it is used." />
        <SubmitButton form={form} className={ui.button}>
          Make a key
        </SubmitButton>
      </FormFrame>
      <ErrorMessage error={end.error} />
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
