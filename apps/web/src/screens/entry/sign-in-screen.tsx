import { clsx } from 'clsx';
import type { DemoPerson, SessionView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiMutation, useApiQuery } from '../../api-client/queries.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { FrameDrawing } from './frame-drawing.js';
import styles from './sign-in.module.css';

/** The door. In the demo lab its people are offered by name. */
export function SignInScreen() {
  const demo = useApiQuery('people', api('GET /session/demo'));
  return (
    <div className={styles.gate}>
      <main className={clsx(ui.stackWide, styles.sign)}>
        <div className={ui.stackTight}>
          <h1>Loadtrain</h1>
          <p className={ui.soft}>Test requests, load trains and frame time of a materials lab.</p>
        </div>
        <SignInForm />
        {demo.value && demo.value.length > 0 && <DemoPeople people={demo.value} />}
      </main>
      <div className={clsx(styles.drawing, ui.mm)} aria-hidden="true">
        <FrameDrawing />
      </div>
    </div>
  );
}

function SignInForm() {
  const signIn = useApiMutation<SessionView>(['session']);
  const form = useLabForm({
    initial: { email: '', password: '' },
    send: (body) => signIn.mutateAsync(api('POST /session', { body })),
  });
  return (
    <FormFrame form={form} label="Sign in">
      <FormText
        form={form}
        name="email"
        label="E-mail"
        type="email"
        autoComplete="username"
        needed="Give your mail address."
        autoFocus
      />
      <FormText
        form={form}
        name="password"
        label="Password"
        type="password"
        autoComplete="current-password"
        needed="Give your password."
      />
      <SubmitButton form={form}>Sign in</SubmitButton>
    </FormFrame>
  );
}

function DemoPeople({ people }: { people: readonly DemoPerson[] }) {
  const signIn = useApiMutation<SessionView>(['session']);
  return (
    <section>
      <h2>Or look around as one of the demo lab</h2>
      <ErrorMessage error={signIn.error} />
      <ul>
        {people.map(({ email, password, name, role }) => (
          <li key={email}>
            <button
              type="button"
              className={styles.who}
              onClick={() => signIn.mutate(api('POST /session', { body: { email, password } }))}
            >
              <strong>{name}</strong>
              <span className={clsx(ui.soft, ui.small)}>{role}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
