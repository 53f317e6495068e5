import { clsx } from 'clsx';
import { useState } from 'react';
import type { SessionView } from '#libs/contract/src/index.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { FrameDrawing } from './frame-drawing.js';
import { ui } from '../../ui/styles.js';
import styles from './sign-in.module.css';

/** The door. In the demo lab its people are offered by name. */
export function SignInScreen() {
  const [email, setEmail] = useState('');
  const [password, setPassword] = useState('');
  const signIn = useApiMutation<SessionView>(['session']);
  const demo = useApiQuery('people', api('GET /session/demo'));
  const enter = (body: { email: string; password: string }) => signIn.mutate(api('POST /session', { body }));
  return (
    <div className={styles.gate}>
      <main className={clsx(ui.stackWide, styles.sign)}>
        <div className={ui.stackTight}>
          <h1>Loadtrain</h1>
          <p className={ui.soft}>Test requests, load trains and frame time of a materials lab.</p>
        </div>
        <form
          className={ui.stack}
          onSubmit={(event) => {
            event.preventDefault();
            enter({ email, password });
          }}
        >
          <TextField
            label="E-mail"
            type="email"
            autoComplete="username"
            required
            value={email}
            onChange={setEmail}
            autoFocus
          />
          <TextField
            label="Password"
            type="password"
            autoComplete="current-password"
            required
            value={password}
            onChange={setPassword}
          />
          <ErrorMessage error={signIn.error} />
          <button type="submit" className={ui.buttonMain} disabled={signIn.isPending}>
            Sign in
          </button>
        </form>
        {demo.value && demo.value.length > 0 && (
          <section>
            <h2>Or look around as one of the demo lab</h2>
            <ul>
              {demo.value.map((person) => (
                <li key={person.email}>
                  <button
                    type="button"
                    className={styles.who}
                    onClick={() => enter({ email: person.email, password: person.password })}
                  >
                    <strong>{person.name}</strong>
                    <span className={clsx(ui.soft, ui.small)}>{person.role}</span>
                  </button>
                </li>
              ))}
            </ul>
          </section>
        )}
      </main>
      <div className={clsx(styles.drawing, ui.mm)} aria-hidden="true">
        <FrameDrawing />
      </div>
    </div>
  );
}
