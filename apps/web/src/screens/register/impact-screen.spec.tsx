import { fireEvent, screen, waitFor } from '@testing-library/react';
import { userEvent } from '@testing-library/user-event';
import type { ImpactView } from '#libs/contract/src/index.js';
import { show } from '#test/support/page.js';
import { ImpactScreen } from './impact-screen.js';

const IMPACT = {
  item: { id: 'lc', tag: 'LC-5K-1', name: 'Load cell 5 kN' },
  ...{ since: '2026-11-20T15:04:00.000Z', sinceWhy: 'Last found good by shift check' },
  ...{ until: '2026-12-01T10:00:00.000Z', jobs: [], reports: [], people: [], upcomingJobs: [] },
} as unknown as ImpactView;

describe('what an item touched', () => {
  it('keeps what is typed while it is looked up from another day, and opens nothing on the list before', async () => {
    show(<ImpactScreen id="lc" />, { 'GET /items/lc/impact': IMPACT });
    const what = await screen.findByLabelText<HTMLTextAreaElement>('What does not conform');
    const open = () => screen.getByRole<HTMLButtonElement>('button', { name: /^Open it/ });
    await userEvent.type(what, 'Reads 1 % high');
    expect(open().disabled).toBe(false);

    globalThis.fetch = (() => new Promise(() => undefined)) as never;
    fireEvent.change(screen.getByLabelText('Look from another day'), { target: { value: '2026-11-01' } });
    await waitFor(() => expect(open().disabled).toBe(true));
    expect(what.isConnected && what.value).toBe('Reads 1 % high');
  });
});
