import { screen, waitFor } from '@testing-library/react';
import { userEvent } from '@testing-library/user-event';
import { refusal, show } from '#test/support/page.js';
import type { Sent } from '#test/support/page.js';
import { ExchangeScreen } from './exchange-screen.js';

const READ = { lines: 3, created: 2, updated: 1, unchanged: 0, encoding: 'UTF-8', problems: [] };
const CSV = new File(['tag\nLC-1'], 'items.csv', { type: 'text/csv' });
const file = () => screen.getByLabelText<HTMLInputElement>('CSV file with items');
const wrong = () => [...document.querySelectorAll('[id$="-wrong"]')].map(({ textContent }) => textContent);
const open = (answer: (sent: Sent) => unknown) =>
  show(<ExchangeScreen />, { 'POST /items/import': answer, 'GET /webhooks': [], 'GET /exports': [] });

describe('an import', () => {
  it('is tried as soon as a file is chosen, and saved by a press', async () => {
    const { sent } = open(({ query }) => ({ ...READ, dryRun: query.get('dryRun') === 'true' }));
    await userEvent.upload(file(), CSV);
    await screen.findByText(/^Tried: 3 lines/);
    await userEvent.click(screen.getByRole('button', { name: 'Save all 3 lines' }));
    await screen.findByText(/^Saved: 3 lines/);
    expect(sent.map(({ query }) => query.get('dryRun'))).toEqual(['true', 'false']);
    expect(screen.queryByRole('button', { name: /^Save all/ })).toBeNull();
  });

  it('shows at the file what the server has against it as a whole, and lists bad lines', async () => {
    const answers: unknown[] = [
      refusal({ body: 'The file has no column tag.' }),
      { ...READ, dryRun: true, problems: [{ line: 2, field: 'kind', sentence: 'There is no kind “cell”.' }] },
    ];
    open(() => answers.shift());
    await userEvent.upload(file(), CSV);
    await waitFor(() => expect(wrong()).toEqual(['The file has no column tag.']));
    expect(document.activeElement).toBe(file());
    await userEvent.upload(file(), new File(['tag,kind\nLC-1,cell'], 'again.csv', { type: 'text/csv' }));
    await screen.findByText('Line 2: There is no kind “cell”.');
    expect(wrong()).toEqual([]);
    expect(screen.queryByRole('button', { name: /^Save all/ })).toBeNull();
  });
});
