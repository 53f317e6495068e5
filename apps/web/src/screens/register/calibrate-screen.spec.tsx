import { fireEvent, screen, waitFor } from '@testing-library/react';
import { userEvent } from '@testing-library/user-event';
import { refusal, show } from '#test/support/page.js';
import type { Answers } from '#test/support/page.js';
import { CalibrateScreen } from './calibrate-screen.js';

const CELL = {
  ...{ id: 'cell', kind: 'load-cell', tag: 'LC-5K-1', name: 'Load cell, 5 kN', details: { capacityN: 5000 } },
  calibrationIntervalMonths: 12,
};
const press = (name: string) => userEvent.click(screen.getByRole('button', { name }));
const fill = (label: string, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });
const wrongAt = (label: string) => {
  const ids = screen.getByLabelText(label).getAttribute('aria-describedby')?.split(' ') ?? [];
  const wrong = ids.find((id) => id.endsWith('-wrong'));
  return wrong && document.getElementById(wrong)?.textContent;
};

async function open(answers: Answers) {
  const now = '2026-11-30T06:30:00.000Z';
  const shown = show(<CalibrateScreen id="cell" />, { 'GET /items/cell': CELL, ...answers }, { now });
  await screen.findByLabelText('Certificate number');
  return shown;
}

function fillCertificate() {
  fill('Certificate number', 'BC-261130-7');
  fill('Calibration laboratory', 'Bureau of calibration');
  fill('As found', 'within');
}

async function stateRange(from: string, to: string) {
  await userEvent.click(screen.getByRole('tab', { name: 'As the certificate states' }));
  fill('From, N', from);
  fill('To, N', to);
}

describe('entering a calibration', () => {
  it('sends the day of the certificate as a day, also in the morning of today', async () => {
    const { sent, at } = await open({ 'POST /items/cell/calibrations': { impact: null } });
    fillCertificate();
    await stateRange('50', '5000');
    await press('Save');
    await screen.findByText('The calibration of LC-5K-1 is saved.');
    expect(sent.map(({ body }) => body as unknown)).toEqual([
      {
        ...{ standard: 'ISO 7500-1', certificateNumber: 'BC-261130-7', laboratory: 'Bureau of calibration' },
        ...{ performedAt: '2026-11-30', asFound: 'within' },
        ranges: [{ direction: 'tension', className: '1', from: 50, to: 5000, unit: 'N' }],
      },
    ]);
    expect(at()).toBe('/register/items/cell');
  });

  it('leads to what an item touched that was found out of tolerance', async () => {
    const { at } = await open({ 'POST /items/cell/calibrations': { impact: {} } });
    fillCertificate();
    await stateRange('50', '5000');
    await press('Save');
    await waitFor(() => expect(at()).toBe('/register/items/cell/impact'));
  });

  it('says beside each field what is missing, and sends nothing', async () => {
    const { sent } = await open({});
    await press('Save');
    expect(wrongAt('Certificate number')).toBe('Give the number of the certificate.');
    expect(wrongAt('Calibration laboratory')).toBe('Say which laboratory did it.');
    expect(wrongAt('As found')).toBe('Say how it was found, before any adjustment.');
    await waitFor(() => expect(document.activeElement).toBe(screen.getByLabelText('Certificate number')));
    expect(sent).toEqual([]);
  });

  it('says once, and beside its field, what the server refuses', async () => {
    const sentence = 'performedAt is "2026-12-01"; allowed is a day or an instant that is over, or today.';
    await open({ 'POST /items/cell/calibrations': refusal({ performedAt: sentence }) });
    fillCertificate();
    fill('Performed on', '2026-12-01');
    await stateRange('50', '5000');
    await press('Save');
    const words = 'Performed on is "2026-12-01"; allowed is a day or an instant that is over, or today.';
    await waitFor(() => expect(wrongAt('Performed on')).toBe(words));
    expect(screen.getAllByText(/2026-12-01/)).toHaveLength(1);
    expect(screen.queryByRole('alert')).toBeNull();
  });

  it('names readings that are missing or cannot be read, and sends none before', async () => {
    const { sent } = await open({
      'POST /calibrations/evaluate': { ranges: [], notes: ['No class is reached.'], steps: [] },
    });
    fill('Resolution, N', '0.5');
    for (const run of [1, 2, 3]) fill(`Step 3, run ${run}`, '3000');
    fill('Step 3, run 2', 'three');
    await press('Work out class and range');
    expect((await screen.findByRole('alert')).textContent).toBe('In tension: Step 3, run 2: "three" is not a number.');
    fill('Step 3, run 2', '3000.6');
    await press('Work out class and range');
    await screen.findByText('No class is reached.');
    expect(screen.queryByRole('alert')).toBeNull();
    expect(sent).toMatchObject([
      { body: { forceReadings: [{ capacity: 5000, steps: [{ nominal: 3000, runs: [3000, 3000.6, 3000] }] }] } },
    ]);
  });
});
