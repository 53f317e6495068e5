import { clsx } from 'clsx';
import { useState } from 'react';
import type { NewPersonBody, PersonView, Role } from '#libs/contract/src/index.js';
import { useHasRole } from '../../features/session/session.js';
import { Dialog } from '../../ui/dialog.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { Tick, Ticks } from '../../ui/fields/ticks.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ApiError } from '../../api-client/call.js';
import { ui } from '../../ui/styles.js';

const ROLES: { value: Role; label: string }[] = [
  { value: 'requester', label: 'requester' },
  { value: 'technician', label: 'technician' },
  { value: 'manager', label: 'manager' },
  { value: 'auditor', label: 'auditor' },
];

/** Who works with the lab, in which role, and who may run which method. */
export function PeopleScreen() {
  const mayEdit = useHasRole('manager');
  const people = useApiQuery('people', api('GET /people'));
  const [editing, setEditing] = useState<string | null>(null);
  const chosen = people.value?.rows.find(({ id }) => id === editing);
  return (
    <>
      <TitleBlock title="People">
        {mayEdit && (
          <button type="button" className={ui.buttonMain} onClick={() => setEditing('new')}>
            Add a person
          </button>
        )}
      </TitleBlock>
      <FetchStates of={people} what="the people">
        {({ rows }) => (
          <table>
            <thead>
              <tr>
                <th>Name</th>
                <th>Roles</th>
                <th>Teams</th>
                <th>May run</th>
                <th />
              </tr>
            </thead>
            <tbody>
              {rows.map((person) => (
                <tr key={person.id}>
                  <th>
                    {person.name} {!person.active && <span className={ui.badgeQuiet}>left</span>}
                    <br />
                    <span className={clsx(ui.soft, ui.small)}>{person.email}</span>
                  </th>
                  <td>{person.roles.join(', ')}</td>
                  <td>{person.teams.map(({ name }) => name).join(', ')}</td>
                  <td className={ui.small}>{person.authorisations.map(({ designation }) => designation).join(', ')}</td>
                  <td>
                    {mayEdit && (
                      <button
                        type="button"
                        className={clsx(ui.button, ui.buttonSmall)}
                        onClick={() => setEditing(person.id)}
                        aria-label={`Change ${person.name}`}
                      >
                        Change
                      </button>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </FetchStates>
      {editing === 'new' && <PersonDialog onClose={() => setEditing(null)} />}
      {chosen && <PersonDialog key={chosen.id} person={chosen} onClose={() => setEditing(null)} />}
    </>
  );
}

function PersonDialog({ person, onClose }: { person?: PersonView; onClose: () => void }) {
  const teams = useApiQuery('people', api('GET /teams'));
  const [name, setName] = useState(person?.name ?? '');
  const [email, setEmail] = useState(person?.email ?? '');
  const [roles, setRoles] = useState<string[]>(person?.roles ?? ['requester']);
  const [teamIds, setTeamIds] = useState<string[]>(person?.teams.map(({ id }) => id) ?? []);
  const [active, setActive] = useState(person?.active ?? true);
  const [password, setPassword] = useState('');
  const save = useApiMutation(['people', 'plan'], onClose);
  const wrong = save.error instanceof ApiError ? save.error.fields : {};
  const common = { name, roles: roles as Role[], teamIds, ...(password ? { password } : {}) };
  return (
    <Dialog title={person ? person.name : 'Add a person'} onClose={onClose} wide>
      <div className={ui.fields}>
        <TextField label="Name" value={name} onChange={setName} wrong={wrong['name']} />
        {!person && <TextField label="E-mail" type="email" value={email} onChange={setEmail} wrong={wrong['email']} />}
        <TextField
          label={person ? 'New password' : 'Password'}
          required={false}
          type="password"
          autoComplete="new-password"
          value={password}
          onChange={setPassword}
          wrong={wrong['password']}
          help={person ? 'Ends every session of the person.' : 'At least 12 characters; the person can change it.'}
        />
        <Ticks label="Roles" values={roles} onChange={setRoles} choices={ROLES} wrong={wrong['roles']} />
        <Ticks
          label="Teams"
          whole
          values={teamIds}
          onChange={setTeamIds}
          choices={(teams.value?.rows ?? []).map(({ id, name: label }) => ({ value: id, label }))}
          wrong={wrong['teamIds']}
        />
        {person && <Tick label="Works here" checked={active} onChange={setActive} />}
      </div>
      <ErrorMessage error={save.error} />
      <div>
        <button
          type="button"
          className={ui.buttonMain}
          disabled={save.isPending}
          onClick={() =>
            save.mutate(
              person
                ? api('PATCH /people/{id}', { id: person.id, body: { ...common, active }, version: person.version })
                : api('POST /people', { body: { ...common, email } satisfies NewPersonBody }),
            )
          }
        >
          Keep
        </button>
      </div>
      {person?.roles.includes('technician') && <Authorisations person={person} />}
    </Dialog>
  );
}

function Authorisations({ person }: { person: PersonView }) {
  const { day, fromLocalInput, toLocalInput } = useMoments();
  const methods = useApiQuery('methods', api('GET /methods'));
  const [methodCode, setMethodCode] = useState('');
  const [from, setFrom] = useState(toLocalInput(Date.now()).slice(0, 10));
  const change = useApiMutation(['people', 'plan']);
  return (
    <section className={ui.stack}>
      <h3>May run</h3>
      <ul>
        {person.authorisations.map((each) => (
          <li key={each.id} className={ui.rowBetween}>
            <span>
              {each.designation} <span className={clsx(ui.soft, ui.small)}>from {day(each.from)}</span>{' '}
              {each.to && <span className={clsx(ui.soft, ui.small)}>to {day(each.to)}</span>}
            </span>
            <button
              type="button"
              className={clsx(ui.buttonBare, ui.buttonSmall)}
              onClick={() =>
                change.mutate(
                  api('DELETE /people/{id}/authorisations/{authorisationId}', {
                    id: person.id,
                    authorisationId: each.id,
                  }),
                )
              }
            >
              Withdraw
            </button>
          </li>
        ))}
      </ul>
      <div className={ui.rowEnd}>
        <SelectField
          label="Method"
          none="Choose …"
          value={methodCode}
          onChange={setMethodCode}
          choices={(methods.value ?? []).map(({ code, designation, title }) => ({
            value: code,
            label: `${designation} ${title}`,
          }))}
        />
        <TextField label="From" type="date" value={from} onChange={setFrom} />
        <button
          type="button"
          className={ui.button}
          disabled={!methodCode}
          onClick={() =>
            change.mutate(
              api('POST /people/{id}/authorisations', {
                id: person.id,
                body: { methodCode, from: fromLocalInput(from) ?? '' },
              }),
            )
          }
        >
          Authorise
        </button>
      </div>
      <ErrorMessage error={change.error} />
    </section>
  );
}
