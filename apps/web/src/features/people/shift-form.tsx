import { MS_PER_HOUR } from '#libs/calendar/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiMutation, useApiQuery } from '../../api-client/queries.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormSelect } from '../../ui/form/form-select.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { useMoments } from '../../ui/use-moments.js';

/** Puts a technician on the roster. @param monday first instant of the week shown, ms */
export function ShiftForm({ monday }: { monday: number }) {
  const { fromLocalInput, toLocalInput } = useMoments();
  const people = useApiQuery('people', api('GET /people'));
  const add = useApiMutation(['people', 'plan']);
  const form = useLabForm({
    initial: {
      personId: '',
      startsAt: toLocalInput(monday + 6 * MS_PER_HOUR),
      endsAt: toLocalInput(monday + 14 * MS_PER_HOUR),
    },
    send: ({ personId, startsAt, endsAt }) =>
      add.mutateAsync(
        api('POST /roster', {
          body: { personId, startsAt: fromLocalInput(startsAt) ?? '', endsAt: fromLocalInput(endsAt) ?? '' },
        }),
      ),
  });
  const technicians = (people.value?.rows ?? [])
    .filter(({ roles }) => roles.includes('technician'))
    .map(({ id, name }) => ({ value: id, label: name }));
  return (
    <FormFrame form={form} className={ui.filters} label="Add a shift">
      <FormSelect
        form={form}
        name="personId"
        label="Put on the roster"
        none="Choose …"
        needed="Choose who works."
        choices={technicians}
      />
      <FormText form={form} name="startsAt" label="From" type="datetime-local" needed="Give the beginning." />
      <FormText form={form} name="endsAt" label="Until" type="datetime-local" needed="Give the end." />
      <SubmitButton form={form} className={ui.button}>
        Add the shift
      </SubmitButton>
    </FormFrame>
  );
}
