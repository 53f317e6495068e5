import { screen, waitFor } from '@testing-library/react';
import { userEvent } from '@testing-library/user-event';
import { refusal, show } from '#test/support/page.js';
import { MaterialDialog } from './material-dialog.js';

beforeAll(() => {
  HTMLDialogElement.prototype.showModal = function open() {
    this.open = true; // jsdom has no windows over the page
  };
});

const field = (label: string) => screen.getByLabelText<HTMLInputElement>(label);
const type = (label: string, text: string) => userEvent.type(field(label), text);
const send = () => userEvent.click(screen.getByRole('button', { name: 'Add to the library' }));
const wrong = () =>
  [...document.querySelectorAll('[id$="-wrong"]')].map(({ id, textContent }) => [
    document.querySelector(`[for="${id.slice(0, -'-wrong'.length)}"]`)?.textContent,
    textContent,
  ]);

async function fillIn() {
  await type('Name', 'Oak, along the grain');
  await userEvent.selectOptions(field('Group'), 'wood');
  await type('Lowest', '60');
  await type('Typical', '90');
  await type('Highest', '130');
  await type('Source', 'A made-up example');
  await type('How sure', 'from memory');
}

describe('a new material', () => {
  it('says at each field what it lacks, and asks nothing of the server', async () => {
    const { sent } = show(<MaterialDialog onClose={() => undefined} />, {});
    await send();
    await waitFor(() => expect(document.activeElement).toBe(field('Name')));
    expect(wrong()).toEqual([
      ['Name', 'Give it a name.'],
      ['Code', 'Code is needed.'],
      ['Group', 'Choose a group.'],
      ['Lowest', 'Lowest is needed.'],
      ['Typical', 'Typical is needed.'],
      ['Highest', 'Highest is needed.'],
      ['Source', 'Say where the figures come from.'],
      ['How sure', 'Say how sure the figures are.'],
    ]);
    expect(sent).toEqual([]);
  });

  it('puts what the register refuses beside the field, by the name of the field', async () => {
    const answer = refusal({
      'data.id': 'data.id is used by another material.',
      'data.strengths[0].typical': 'data.strengths[0].typical is above the highest.',
    });
    show(<MaterialDialog onClose={() => undefined} />, { 'POST /materials': answer });
    await fillIn();
    expect(field('Code').value).toBe('oak-along-the-grain');
    await send();
    await waitFor(() =>
      expect(wrong()).toEqual([
        ['Code', 'Code is used by another material.'],
        ['Typical', 'Typical is above the highest.'],
      ]),
    );
    expect(document.activeElement).toBe(field('Code'));
  });

  it('keeps a code that somebody wrote, and the unit that a kind of strength has', async () => {
    const { sent } = show(<MaterialDialog onClose={() => undefined} />, { 'POST /materials': { name: 'Oak' } });
    await type('Code', 'oak-2');
    await fillIn();
    await userEvent.selectOptions(field('Strength'), 'peel');
    await send();
    await screen.findByText('Oak is in the library.');
    const strengths = [{ property: 'peel', unit: 'N/mm', low: 60 }];
    expect(sent[0]?.body).toMatchObject({ data: { id: 'oak-2', strengths } });
  });
});
