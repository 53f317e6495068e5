import type { ChangePersonBody, NewPersonBody, PersonView, Role } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiMutation, useApiQuery } from '../../api-client/queries.js';
import { Dialog } from '../../ui/dialog.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { FormTick, FormTicks } from '../../ui/form/form-ticks.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { Authorisations } from './authorisations.js';

const ROLES: { value: Role; label: string }[] = [
  { value: 'requester', label: 'requester' },
  { value: 'technician', label: 'technician' },
  { value: 'manager', label: 'manager' },
  { value: 'auditor', label: 'auditor' },
];

interface PersonTyped {
  name: string;
  email: string;
  password: string;
  roles: string[];
  teamIds: string[];
  active: boolean;
}

/** Adds somebody, or changes who they are for the lab. */
export function PersonDialog({ person, onClose }: { person?: PersonView; onClose: () => void }) {
  const save = useApiMutation(['people', 'plan']);
  const form = useLabForm<PersonTyped>({
    initial: typedOf(person),
    check: ({ roles }) => (roles.length > 0 ? {} : { roles: 'Choose one role at least.' }),
    send: async (typed) => {
      await save.mutateAsync(
        person
          ? api('PATCH /people/{id}', { id: person.id, body: changeOf(typed), version: person.version })
          : api('POST /people', { body: newOf(typed) }),
      );
      onClose();
    },
  });
  return (
    <Dialog title={person ? person.name : 'Add a person'} onClose={onClose} wide>
      <FormFrame form={form}>
        <PersonFields form={form} isNew={!person} />
        <div>
          <SubmitButton form={form}>Save</SubmitButton>
        </div>
      </FormFrame>
      {person?.roles.includes('technician') && <Authorisations person={person} />}
    </Dialog>
  );
}

function PersonFields({ form, isNew }: { form: LabForm<PersonTyped>; isNew: boolean }) {
  const teams = useApiQuery('people', api('GET /teams'));
  const choices = (teams.value?.rows ?? []).map(({ id, name }) => ({ value: id, label: name }));
  return (
    <div className={ui.fields}>
      <FormText form={form} name="name" label="Name" needed="Give the name of the person." />
      {isNew && <FormText form={form} name="email" label="E-mail" type="email" needed="Give a mail address." />}
      <FormText
        form={form}
        name="password"
        label={isNew ? 'Password' : 'New password'}
        required={false}
        type="password"
        autoComplete="new-password"
        help={isNew ? 'At least 12 characters; the person can change it.' : 'Ends every session of the person.'}
      />
      <FormTicks form={form} name="roles" label="Roles" choices={ROLES} />
      <FormTicks form={form} name="teamIds" label="Teams" whole choices={choices} />
      {!isNew && <FormTick form={form} name="active" label="Works here" />}
    </div>
  );
}

function typedOf(person: PersonView | undefined): PersonTyped {
  const { name = '', email = '', roles = ['requester'], teams = [], active = true } = person ?? {};
  return { name, email, password: '', roles, teamIds: teams.map(({ id }) => id), active };
}

function changeOf({ name, roles, teamIds, active, password }: PersonTyped): ChangePersonBody {
  return { name, roles: roles as Role[], teamIds, active, ...(password ? { password } : {}) };
}

function newOf({ email, name, roles, teamIds, password }: PersonTyped): NewPersonBody {
  return { email, name, roles: roles as Role[], teamIds, ...(password ? { password } : {}) };
}
