import { clsx } from 'clsx';
import type { PersonView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiMutation, useApiQuery } from '../../api-client/queries.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormSelect } from '../../ui/form/form-select.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { useMoments } from '../../ui/use-moments.js';

/** Which methods somebody may run, since when. */
export function Authorisations({ person }: { person: PersonView }) {
  const { day } = useMoments();
  const withdraw = useApiMutation(['people', 'plan']);
  const end = (authorisationId: string) =>
    withdraw.mutate(api('DELETE /people/{id}/authorisations/{authorisationId}', { id: person.id, authorisationId }));
  return (
    <section className={ui.stack}>
      <h3>May run</h3>
      <ul>
        {person.authorisations.map(({ id, designation, from, to }) => (
          <li key={id} className={ui.rowBetween}>
            <span>
              {designation} <span className={clsx(ui.soft, ui.small)}>from {day(from)}</span>{' '}
              {to && <span className={clsx(ui.soft, ui.small)}>to {day(to)}</span>}
            </span>
            <button type="button" className={clsx(ui.buttonBare, ui.buttonSmall)} onClick={() => end(id)}>
              Withdraw
            </button>
          </li>
        ))}
      </ul>
      <AuthoriseForm personId={person.id} />
      <ErrorMessage error={withdraw.error} />
    </section>
  );
}

function AuthoriseForm({ personId }: { personId: string }) {
  const { fromLocalInput, nowMs, toLocalInput } = useMoments();
  const methods = useApiQuery('methods', api('GET /methods'));
  const authorise = useApiMutation(['people', 'plan']);
  const form = useLabForm({
    initial: { methodCode: '', from: toLocalInput(nowMs()).slice(0, 10) },
    send: ({ methodCode, from }) =>
      authorise.mutateAsync(
        api('POST /people/{id}/authorisations', {
          id: personId,
          body: { methodCode, from: fromLocalInput(from) ?? '' },
        }),
      ),
    after: 'clear',
  });
  const choices = (methods.value ?? []).map(({ code, designation, title }) => ({
    value: code,
    label: `${designation} ${title}`,
  }));
  return (
    <FormFrame form={form} className={ui.rowEnd} label="Authorise">
      <FormSelect
        form={form}
        name="methodCode"
        label="Method"
        none="Choose …"
        needed="Choose the method."
        choices={choices}
      />
      <FormText form={form} name="from" label="From" type="date" needed="Give the first day." />
      <SubmitButton form={form} className={ui.button}>
        Authorise
      </SubmitButton>
    </FormFrame>
  );
}
