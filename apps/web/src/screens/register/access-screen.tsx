import { clsx } from 'clsx';
import { useState } from 'react';
import type { TokenView } from '#libs/contract/src/index.js';
import { useSession } from '../../features/session/session.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { Ticks } from '../../ui/fields/ticks.js';
import { useMoments } from '../../ui/use-moments.js';
import { useToast } from '../../ui/toasts.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ApiError } from '../../api-client/call.js';
import { ui } from '../../ui/styles.js';

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
  const [current, setCurrent] = useState('');
  const [next, setNext] = useState('');
  const change = useApiMutation(['people'], () => {
    toast('Your password is changed.');
    setCurrent('');
    setNext('');
  });
  const wrong = change.error instanceof ApiError ? change.error.fields : {};
  return (
    <form
      className={ui.stack}
      onSubmit={(event) => {
        event.preventDefault();
        change.mutate(api('PUT /own/password', { body: { current, next } }));
      }}
    >
      <h2>Password</h2>
      <TextField
        label="Present password"
        type="password"
        autoComplete="current-password"
        value={current}
        onChange={setCurrent}
        wrong={wrong['current']}
      />
      <TextField
        label="New password"
        type="password"
        autoComplete="new-password"
        value={next}
        onChange={setNext}
        wrong={wrong['next']}
        help="At least 12 characters."
      />
      <ErrorMessage error={change.error} />
      <div>
        <button type="submit" className={ui.buttonMain} disabled={!current || !next || change.isPending}>
          Change it
        </button>
      </div>
    </form>
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
  const { permissions } = useSession();
  const tokens = useApiQuery('people', api('GET /own/tokens'));
  const [name, setName] = useState('');
  const [days, setDays] = useState('90');
  const [chosen, setChosen] = useState<string[]>([]);
  const make = useApiMutation<TokenView>(['people'], () => setName(''));
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
                  className={clsx(ui.button, ui.buttonSmall)}
                  onClick={() => end.mutate(api('DELETE /own/tokens/{id}', { id: token.id }))}
                >
                  Revoke
                </button>
              </li>
            ))}
          </ul>
        )}
      </FetchStates>
      {make.data?.token && (
        <p className={ui.noteFit}>
          Copy it now; it is shown only once: <code style={{ overflowWrap: 'anywhere' }}>{make.data.token}</code>
        </p>
      )}
      <form
        className={ui.stack}
        onSubmit={(event) => {
          event.preventDefault();
          make.mutate(api('POST /own/tokens', { body: { name, permissions: chosen, days: Number(days) } }));
        }}
      >
        <div className={ui.fields}>
          <TextField label="What for" value={name} onChange={setName} />
          <TextField label="Good for, days" type="number" value={days} onChange={setDays} />
        </div>
        <details>
          <summary>What it may do ({chosen.length})</summary>
          <Ticks
            label="Never more than you may"
            values={chosen}
            onChange={setChosen}
            choices={permissions.map((value) => ({ value, label: value.replaceAll('-', ' ') }))}
          />
        </details>
        <ErrorMessage error={make.error ?? end.error} />
        <div>
          <button type="submit" className={ui.button} disabled={!name.trim() || chosen.length === 0 || make.isPending}>
            Make a token
          </button>
        </div>
      </form>
    </section>
  );
}
