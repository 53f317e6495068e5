import { clsx } from 'clsx';
import { useState } from 'react';
import type { PersonView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { PersonDialog } from '../../features/people/person-dialog.js';
import { TeamList } from '../../features/people/team-list.js';
import { useHasRole } from '../../features/session/session.js';
import { FetchStates } from '../../ui/fetch-states.js';
import { ui } from '../../ui/styles.js';
import { TitleBlock } from '../../ui/title-block.js';

/** Who works with the lab, in which role, who may run which method, and the teams that ask for tests. */
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
      <div className={ui.stackWide}>
        <FetchStates of={people} what="the people">
          {({ rows }) => <PeopleTable people={rows} onChange={mayEdit ? setEditing : null} />}
        </FetchStates>
        <TeamList mayEdit={mayEdit} />
      </div>
      {editing === 'new' && <PersonDialog onClose={() => setEditing(null)} />}
      {chosen && <PersonDialog key={chosen.id} person={chosen} onClose={() => setEditing(null)} />}
    </>
  );
}

/** @param onChange opens somebody to be changed; null for who may only read */
function PeopleTable({ people, onChange }: { people: readonly PersonView[]; onChange: ((id: string) => void) | null }) {
  return (
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
        {people.map((person) => (
          <tr key={person.id}>
            <th>
              {person.name} {!person.active && <span className={ui.badgeQuiet}>left</span>}
              <br />
              <span className={clsx(ui.soft, ui.small)}>{person.email}</span>
            </th>
            <td>{person.roles.join(', ')}</td>
            <td>{person.teams.map(({ name }) => name).join(', ')}</td>
            <td className={ui.small}>
              {[...new Set(person.authorisations.map(({ designation }) => designation))].join(', ')}
            </td>
            <td>
              {onChange && (
                <button
                  type="button"
                  className={ui.buttonSmall}
                  onClick={() => onChange(person.id)}
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
  );
}
