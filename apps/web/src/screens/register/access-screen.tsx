import { clsx } from 'clsx';
import { useWatch } from 'react-hook-form';
import type { TokenView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiMutation, useApiQuery } from '../../api-client/queries.js';
import { useSession } from '../../features/session/session.js';
import { ErrorMessage, FetchStates } from '../../ui/fetch-states.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { figureIn, FormNumber } from '../../ui/form/form-number.js';
import { FormText } from '../../ui/form/form-text.js';
import { FormTicks } from '../../ui/form/form-ticks.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { TitleBlock } from '../../ui/title-block.js';
import { useToast } from '../../ui/toasts.js';
import { useMoments } from '../../ui/use-moments.js';

/** One's own way in: password, open sessions, tokens for programs. */
export function AccessScreen() {
  const { person } = useSession();
  return (
    <>
      <TitleBlock
        title="My access"
        cells={[
          ['name', person.name],
          ['e-mail', person.email],
          ['roles', person.roles.join(', ')],
        ]}
      />
      <div className={ui.split}>
        <Password />
        <Sessions />
        <Tokens />
      </div>
    </>
  );
}

function Password() {
  const toast = useToast();
  const change = useApiMutation(['people']);
  const form = useLabForm({
    initial: { current: '', next: '' },
    send: async (body) => {
      await change.mutateAsync(api('PUT /own/password', { body }));
      toast('Your password is changed.');
    },
    after: 'clear',
  });
  return (
    <FormFrame form={form} label="Password">
      <h2>Password</h2>
      <FormText
        form={form}
        name="current"
        label="Present password"
        type="password"
        autoComplete="current-password"
        needed="Give your present password."
      />
      <FormText
        form={form}
        name="next"
        label="New password"
        type="password"
        autoComplete="new-password"
        needed="Give a new password."
        help="At least 12 characters."
      />
      <div>
        <SubmitButton form={form}>Change it</SubmitButton>
      </div>
    </FormFrame>
  );
}

function Sessions() {
  const { moment } = useMoments();
  const sessions = useApiQuery('people', api('GET /own/sessions'));
  const end = useApiMutation(['people']);
  return (
    <section className={ui.stack}>
      <h2>Where you are signed in</h2>
      <FetchStates of={sessions} what="your sessions">
        {(value) => (
          <ul className={ui.separated}>
            {value.map((session) => (
              <li key={session.id} className={ui.rowBetween}>
                <span>
                  {browserOf(session.agent)} {session.thisOne && <span className={ui.badge}>this one</span>}
                  <br />
                  <span className={clsx(ui.small, ui.soft)}>
                    since {moment(session.openedAt)}, last seen {moment(session.seenAt)}
                  </span>
                </span>
                {!session.thisOne && (
                  <button
                    type="button"
                    className={clsx(ui.button, ui.buttonSmall)}
                    onClick={() => end.mutate(api('DELETE /own/sessions/{id}', { id: session.id }))}
                  >
                    End it
                  </button>
                )}
              </li>
            ))}
          </ul>
        )}
      </FetchStates>
      <ErrorMessage error={end.error} />
    </section>
  );
}

/** A browser in two words, from what it says about itself. */
function browserOf(agent: string): string {
  const name = /Edg|Firefox|Chrome|Safari/.exec(agent)?.[0].replace('Edg', 'Edge');
  const on = /Windows|Android|iPhone|iPad|Mac OS X|Linux/.exec(agent)?.[0];
  return name ? `${name}${on ? ` on ${on}` : ''}` : agent || 'a browser';
}

function Tokens() {
  const { moment } = useMoments();
  const tokens = useApiQuery('people', api('GET /own/tokens'));
  const end = useApiMutation(['people']);
  return (
    <section className={ui.stack}>
      <h2>Tokens for programs</h2>
      <FetchStates of={tokens} what="your tokens">
        {(value) => (
          <ul className={ui.separated}>
            {value.map((token) => (
              <li key={token.id} className={ui.rowBetween}>
                <span>
                  <strong>{token.name}</strong>{' '}
                  <span className={clsx(ui.small, ui.soft)}>{token.permissions.join(', ')}</span>
                  <br />
                  <span className={clsx(ui.small, ui.soft)}>
                    good until {moment(token.expiresAt)}, last used {moment(token.usedAt)}
                  </span>
                </span>
                <button
                  type="button"
                  className={ui.buttonSmall}
                  onClick={() => end.mutate(api('DELETE /own/tokens/{id}', { id: token.id }))}
                >
                  Revoke
                </button>
              </li>
            ))}
          </ul>
        )}
      </FetchStates>
      <ErrorMessage error={end.error} />
      <NewToken />
    </section>
  );
}

function NewToken() {
  const { permissions } = useSession();
  const make = useApiMutation<TokenView>(['people']);
  const form = useLabForm<{ name: string; days: string; permissions: string[] }>({
    initial: { name: '', days: '90', permissions: [] },
    check: ({ permissions: chosen }) => (chosen.length > 0 ? {} : { permissions: 'Choose one thing at least.' }),
    send: ({ days, ...body }) =>
      make.mutateAsync(api('POST /own/tokens', { body: { ...body, days: figureIn(days)! } })),
    after: 'clear',
  });
  const { length: chosen } = useWatch({ control: form.control, name: 'permissions' });
  return (
    <>
      {make.data?.token && (
        <p className={ui.noteFit}>
          Copy it now; it is shown only once: <code style={{ overflowWrap: 'anywhere' }}>{make.data.token}</code>
        </p>
      )}
      <FormFrame form={form} label="New token">
        <div className={ui.fields}>
          <FormText form={form} name="name" label="What for" needed="Say what it is for." />
          <FormNumber form={form} name="days" label="Good for" unit="days" min={1} max={365} required />
        </div>
        <details>
          <summary>What it may do ({chosen})</summary>
          <FormTicks
            form={form}
            name="permissions"
            label="Never more than you may"
            choices={permissions.map((value) => ({ value, label: value.replaceAll('-', ' ') }))}
          />
        </details>
        <div>
          <SubmitButton form={form} className={ui.button}>
            Make a token
          </SubmitButton>
        </div>
      </FormFrame>
    </>
  );
}
