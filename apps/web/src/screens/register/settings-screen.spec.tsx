import { fireEvent, screen, waitFor } from '@testing-library/react';
import { userEvent } from '@testing-library/user-event';
import { refusal, show } from '#test/support/page.js';
import { SettingsScreen } from './settings-screen.js';

const SETTINGS = {
  ...{ version: 4, demo: true, name: 'Northmoor Cycles lab', timeZone: 'Europe/London', contact: '', address: '' },
  shifts: [1, 2].map((weekday) => ({ weekday, from: '06:00', to: '14:00', name: 'early' })),
  freezeMin: 240,
  matching: { forceMargin: 0.2 },
};
const press = (name: string) => userEvent.click(screen.getByRole('button', { name }));
const fill = (label: string, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });

describe('the settings', () => {
  it('are sent whole, with figures as a person writes them, and shifts on each of their days', async () => {
    const { sent } = show(<SettingsScreen />, { 'GET /settings': SETTINGS, 'PUT /settings': undefined });
    await screen.findByLabelText('Name', { selector: '[value="early"]' });
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Save' }).disabled).toBe(true);
    fill('Reserve above the highest force', '0,25');
    fill('Until', '14:30');
    await press('Save');
    await screen.findByText('The settings are saved. A new plan is on its way.');
    expect(sent[0]!.body).toMatchObject({
      freezeMin: 240,
      matching: { forceMargin: 0.25 },
      shifts: [
        { weekday: 1, to: '14:30' },
        { weekday: 2, to: '14:30' },
      ],
    });
    expect(sent[0]!.body).not.toHaveProperty('demo');
  });

  it('show what is refused beside the figure, and of a shift beside its row', async () => {
    show(<SettingsScreen />, {
      'GET /settings': SETTINGS,
      'PUT /settings': refusal({
        'matching.forceMargin': 'matching.forceMargin is 20; allowed is 0 to 2.',
        'shifts[1].to': 'shifts[1].to is "06:00"; allowed is another time.',
      }),
    });
    await screen.findByLabelText('Reserve above the highest force');
    fill('Reserve above the highest force', '20');
    await press('Save');
    await waitFor(() => screen.getByText('Reserve above the highest force is 20; allowed is 0 to 2.'));
    screen.getByText('Until is "06:00"; allowed is another time.');
    expect(screen.getByLabelText('Until').getAttribute('aria-invalid')).toBe('true');
  });

  it('are only read by others', async () => {
    show(<SettingsScreen />, { 'GET /settings': SETTINGS }, { roles: ['auditor'] });
    await screen.findByText('Mon, Tue');
    expect(screen.queryByRole('button')).toBeNull();
  });
});
