import { screen, waitFor } from '@testing-library/react';
import { userEvent } from '@testing-library/user-event';
import type { RigView } from '#libs/contract/src/index.js';
import { refusal, show } from '#test/support/page.js';
import { RigDialog } from './rig-dialog.js';

const RIG = {
  frame: { id: 'f', tag: 'FR-30K', name: 'Table-top' },
  version: 4,
  links: [
    { role: 'upper', itemId: 'g', tag: 'GR-1', name: 'Wedge grip' },
    { role: 'load-cell', itemId: 'c', tag: 'LC-30K', name: 'Load cell' },
  ],
} as unknown as RigView;

beforeAll(() => {
  HTMLDialogElement.prototype.showModal = function open() {
    this.open = true; // jsdom has no windows over the page
  };
});

const place = (tag: string) => screen.getByLabelText<HTMLSelectElement>(`Place of ${tag}`);
const save = () => userEvent.click(screen.getByRole('button', { name: /^Save this for FR-30K/ }));
const wrong = () => [...document.querySelectorAll('[id$="-wrong"]')].map(({ textContent }) => textContent);
const open = (answer: unknown) =>
  show(<RigDialog rig={RIG} onClose={() => undefined} />, { 'PUT /rigs/f': answer, 'GET /items': { rows: [] } });

describe('what is on a frame', () => {
  it('is sent from the crosshead down, without what was taken off', async () => {
    const { sent } = open({});
    await userEvent.click(screen.getByRole('button', { name: 'Take GR-1 off' }));
    await save();
    await screen.findByText(/^What is on FR-30K is saved/);
    expect(sent).toMatchObject([{ call: 'PUT /rigs/f', body: { links: [{ role: 'load-cell', itemId: 'c' }] } }]);
  });

  it('says at once that a place is taken, and is not sent like that', async () => {
    const { sent } = open({});
    await userEvent.selectOptions(place('GR-1'), 'load-cell');
    expect(wrong()).toEqual(['Something else is in this place already.']);
    await save();
    await waitFor(() => expect(document.activeElement).toBe(place('GR-1')));
    expect(sent).toEqual([]);
    await userEvent.selectOptions(place('GR-1'), 'lower');
    expect(wrong()).toEqual([]);
  });

  it('shows a refusal beside the item that it is about, until that one is taken off', async () => {
    open(refusal({ 'links[1].itemId': 'GR-1 is on FR-50K and a job is under way there.' }));
    await save();
    await waitFor(() => expect(wrong()).toEqual(['GR-1 is on FR-50K and a job is under way there.']));
    expect(document.activeElement).toBe(place('GR-1'));
    await userEvent.click(screen.getByRole('button', { name: 'Take GR-1 off' }));
    expect(wrong()).toEqual([]);
  });
});
