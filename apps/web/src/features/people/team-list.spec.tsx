import { screen, within } from '@testing-library/react';
import { userEvent } from '@testing-library/user-event';
import { Refusal, show } from '#test/support/page.js';
import { TeamList } from './team-list.js';

const TEAMS = [
  { id: 'a', name: 'Fasteners' },
  { id: 'b', name: 'Wheels' },
];
const press = (name: string) => userEvent.click(screen.getByRole('button', { name }));

describe('the list of teams', () => {
  it('says what a team is for while there is none', async () => {
    show(<TeamList mayEdit />, { 'GET /teams': { rows: [], next: null } });
    await screen.findByText(/There is no team yet/);
  });

  it('lets a manager add a team by its name', async () => {
    const { sent } = show(<TeamList mayEdit />, {
      'GET /teams': { rows: TEAMS, next: null },
      'POST /teams': { id: 'c', name: 'Tents' },
    });
    await screen.findByText('Wheels');
    await press('Add a team');
    await press('Add it');
    expect(screen.getByLabelText('Name of the team').getAttribute('aria-invalid')).toBe('true');
    await userEvent.type(screen.getByLabelText('Name of the team'), 'Tents');
    await press('Add it');
    await screen.findByText('Tents is a team.');
    expect(sent).toMatchObject([{ call: 'POST /teams', body: { name: 'Tents' } }]);
    expect(screen.queryByRole('dialog')).toBeNull();
  });

  it('renames a team, and says which other one has the name already', async () => {
    const taken = new Refusal({
      ...{ type: '/problems/team/name-taken', title: 'Not as things stand', status: 409 },
      detail: 'There is a team named Fasteners already. Choose another name.',
    });
    show(<TeamList mayEdit />, {
      'GET /teams': { rows: TEAMS, next: null },
      'PATCH /teams/b': ({ body }: { body: { name: string } }) =>
        body.name === 'fasteners' ? taken : { id: 'b', name: body.name },
    });
    await userEvent.click(await screen.findByRole('button', { name: 'Rename Wheels' }));
    const name = screen.getByLabelText('Name of the team');
    await userEvent.clear(name);
    await userEvent.type(name, 'fasteners');
    await press('Rename it');
    expect(await within(screen.getByRole('dialog')).findByRole('alert')).toHaveProperty(
      'textContent',
      'There is a team named Fasteners already. Choose another name.',
    );
    await userEvent.clear(name);
    await userEvent.type(name, 'Hubs');
    await press('Rename it');
    await screen.findByText('Wheels is now Hubs.');
  });

  it('offers no change to who may only read', async () => {
    show(<TeamList mayEdit={false} />, { 'GET /teams': { rows: TEAMS, next: null } });
    await screen.findByText('Wheels');
    expect(screen.queryByRole('button')).toBeNull();
  });
});
