import { screen, within } from '@testing-library/react';
import { show } from '#test/support/page.js';
import type { Sent } from '#test/support/page.js';
import { ArrivalsScreen } from './arrivals-screen.js';

const line = (reference: string, specimensMissing: number) => ({
  ...{ id: reference, reference, title: 'Seams', team: { id: 't', name: 'Tents' }, specimens: 5 },
  ...{ specimensMissing, waitsFor: specimensMissing ? 'Waits for 5 specimens to arrive' : 'Waits for its turn' },
});
const open = (...rows: ReturnType<typeof line>[]) =>
  show(<ArrivalsScreen />, { 'GET /requests': { rows, next: null, total: rows.length } });

describe('specimens that come in', () => {
  it('lists what is still to come, and folds away the requests whose specimens are here', async () => {
    open(line('R-1', 0), line('R-2', 5), line('R-3', 0));
    const fold = (await screen.findByText('2 requests with all specimens at the lab')).closest('details')!;
    expect(within(fold).getByText('R-1')).toBeTruthy();
    expect(fold.open).toBe(false);
    expect(screen.getAllByRole('button', { name: 'Receive' }).length).toBe(1);
    expect(within(fold).queryByText('R-2')).toBeNull();
  });

  it('asks for all requests whose specimens may still come, also those in work', async () => {
    const asked: string[][] = [];
    const answer = ({ query }: Sent) => {
      asked.push(query.getAll('state'));
      return { rows: [], next: null, total: 0 };
    };
    show(<ArrivalsScreen />, { 'GET /requests': answer });
    await screen.findByText('No accepted request waits for specimens.');
    expect(asked).toEqual([['accepted', 'in-work']]);
  });

  it('says so when nothing is still to come', async () => {
    open(line('R-1', 0));
    expect(await screen.findByText('No specimen of these requests is still to come.')).toBeTruthy();
    expect(screen.getByText('One request with all specimens at the lab')).toBeTruthy();
  });
});
