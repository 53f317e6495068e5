import { jest } from '@jest/globals';
import { fireEvent, screen, waitFor } from '@testing-library/react';
import { userEvent } from '@testing-library/user-event';
import type { TrialEdit, TrialView } from '#libs/contract/src/index.js';
import { show } from '#test/support/page.js';
import type { Sent } from '#test/support/page.js';
import { TrialEditForm } from './trial-edit-form.js';

/** As many items as a lab has, in the order of their tags; a page holds five of them. */
const ITEMS = ['AD', 'CE', 'EX', 'FX', 'GR', 'JF', 'WG'].map((tag) => ({
  ...{ id: tag.toLowerCase(), tag: `${tag}-1`, name: tag === 'WG' ? 'Wedge grip' : 'Something else', kind: 'grip' },
}));
const PAGE = 5;

function itemsFor({ query }: Sent) {
  const text = (query.get('q') ?? '').toLowerCase();
  const found = ITEMS.filter(({ tag, name }) => `${tag} ${name}`.toLowerCase().includes(text));
  return { rows: found.slice(0, PAGE), next: found.length > PAGE ? 'more' : null };
}

const TRIAL = { plan: { lanes: [{ frame: { id: 'fr', tag: 'FR-30K', name: 'Frame' } }] } } as unknown as TrialView;
const press = () => userEvent.click(screen.getByRole('button', { name: 'Try it' }));
const choose = (label: string, option: string) => userEvent.selectOptions(screen.getByLabelText(label), option);
const wrong = () => [...document.querySelectorAll('[id$="-wrong"]')].map(({ textContent }) => textContent);

function open(onAdd = jest.fn<(edit: TrialEdit) => Promise<unknown>>(() => Promise.resolve())) {
  show(<TrialEditForm trial={TRIAL} chosen={null} onAdd={onAdd} />, { 'GET /items': itemsFor });
  return onAdd;
}

describe('a change of a trial plan', () => {
  it('finds one of all items, not only of the first page', async () => {
    const onAdd = open();
    await choose('Try', 'One more item like …');
    await screen.findByText(/More items fit than the list shows/);
    expect(screen.queryByRole('option', { name: 'WG-1 Wedge grip' })).toBeNull();
    await userEvent.type(screen.getByLabelText('Find an item'), 'wedge');
    await screen.findByText('One item fits.');
    await choose('Like', 'WG-1 Wedge grip');
    await press();
    await waitFor(() => expect(onAdd).toHaveBeenCalledWith({ kind: 'extra-item', likeItemId: 'wg' }));
  });

  it('says what it lacks instead of leaving its button grey', async () => {
    const onAdd = open();
    await press();
    expect(wrong()).toEqual(['Choose the frame.', 'Say why.']);
    await choose('Try', 'Weigh the chosen job');
    await press();
    expect((await screen.findByRole('alert')).textContent).toBe('Choose a job on the lanes first.');
    expect(onAdd).not.toHaveBeenCalled();
  });

  it('takes times by the clock of the lab, and shows a refusal beside its field', async () => {
    const onAdd = open();
    await choose('Frame', 'FR-30K Frame');
    fireEvent.change(screen.getByLabelText('From'), { target: { value: '2026-07-15T09:00' } });
    fireEvent.change(screen.getByLabelText('Until'), { target: { value: '2026-07-15T08:00' } });
    fireEvent.change(screen.getByLabelText('Why'), { target: { value: 'The drive is repaired' } });
    onAdd.mockRejectedValueOnce({ refusals: [{ field: 'endsAt', sentence: 'Ends is before it begins.' }] });
    await press();
    await waitFor(() => expect(wrong()).toEqual(['Ends is before it begins.']));
    fireEvent.change(screen.getByLabelText('Until'), { target: { value: '2026-07-15T10:00' } });
    await press();
    await waitFor(() => expect(onAdd).toHaveBeenCalledTimes(2));
    expect(onAdd.mock.lastCall).toEqual([
      {
        ...{ kind: 'frame-down', frameId: 'fr', why: 'The drive is repaired' },
        ...{ startsAt: '2026-07-15T08:00:00.000Z', endsAt: '2026-07-15T09:00:00.000Z' },
      },
    ]);
  });
});
