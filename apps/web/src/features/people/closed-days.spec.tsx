import { screen, waitFor, within } from '@testing-library/react';
import { userEvent } from '@testing-library/user-event';
import { show } from '#test/support/page.js';
import { ClosedDays } from './closed-days.js';

const press = (name: string | RegExp) => userEvent.click(screen.getByRole('button', { name }));

describe('closed days', () => {
  const DAYS = [
    { day: '2026-12-25', name: 'Christmas Day' },
    { day: '2026-11-29', name: 'Works outing' },
    { day: '2026-12-03', name: 'Stocktaking' },
  ];

  it('to come are listed in their order', () => {
    show(<ClosedDays closedDays={DAYS} mayChange={false} />, {});
    expect(screen.getAllByRole('listitem').map(({ textContent }) => textContent)).toEqual([
      'Thu 3 Dec Stocktaking',
      'Fri 25 Dec Christmas Day',
    ]);
    expect(screen.queryByRole('button')).toBeNull();
  });

  it('can be opened again', async () => {
    const { sent } = show(<ClosedDays closedDays={DAYS} mayChange />, {
      'DELETE /roster/closed-days/2026-12-03': undefined,
    });
    await press('Open again: Thu 3 Dec');
    await screen.findByText('The lab is open on Thu 3 Dec.');
    expect(sent).toHaveLength(1);
  });

  it('are closed only after one has been asked', async () => {
    const { sent } = show(<ClosedDays closedDays={[]} mayChange />, { 'POST /roster/closed-days': undefined });
    await userEvent.type(screen.getByLabelText('Close the lab on'), '2026-12-24');
    await press(/^Close that day/);
    expect(screen.getByLabelText('Because').getAttribute('aria-invalid')).toBe('true');
    await userEvent.type(screen.getByLabelText('Because'), 'Works outing');
    await press(/^Close that day/);
    const dialog = await screen.findByRole('dialog', { name: 'Close the lab on Thu 24 Dec?' });
    expect(sent).toEqual([]);
    await userEvent.click(within(dialog).getByRole('button', { name: 'Close it' }));
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    expect(sent).toMatchObject([
      { call: 'POST /roster/closed-days', body: { day: '2026-12-24', name: 'Works outing' } },
    ]);
  });
});
