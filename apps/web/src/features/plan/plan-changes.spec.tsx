import { screen, within } from '@testing-library/react';
import type { PlanChangeView, PlanView } from '#libs/contract/src/index.js';
import { show } from '#test/support/page.js';
import { PlanChanges } from './plan-changes.js';

const MOVED: PlanChangeView = {
  ...{ jobId: 'a', jobReference: 'J-2026-1', requestId: 'r', title: 'Fork steerer' },
  was: { frameTag: 'FR-100K', startsAt: '2026-12-02T06:43:00.000Z' },
  is: { frameTag: 'FR-30K', startsAt: '2026-12-03T09:15:00.000Z' },
  why: 'FR-100K is down at the time that was planned.',
};
const OUT: PlanChangeView = { ...MOVED, jobId: 'b', jobReference: 'J-2027-1', is: null, why: 'It is on hold.' };
const NEW: PlanChangeView = {
  ...MOVED,
  jobId: 'c',
  jobReference: 'J-2028-1',
  was: null,
  why: 'It is new in the plan.',
};

const open = (changes: PlanChangeView[], version = 4) => {
  const changedBy = changes.length > 0 ? { version: 4, publishedAt: '2026-12-01T10:09:00.000Z' } : null;
  return show(<PlanChanges plan={{ version, changes, changedBy } as PlanView} />, {});
};
const rows = () => screen.getAllByRole('row').map((row) => within(row).queryAllByRole('cell'));
const told = () =>
  rows()
    .filter((cells) => cells.length > 0)
    .map((cells) => cells.map(({ textContent }) => textContent));

describe('what a new plan moved', () => {
  it('is told job by job: from where and when, to where and when, and why', () => {
    open([MOVED, OUT, NEW]);
    expect(screen.getAllByRole('link').map(({ textContent }) => textContent)).toEqual([
      'J-2026-1',
      'J-2027-1',
      'J-2028-1',
    ]);
    expect(told()).toEqual([
      ['FR-100KWed 2 Dec 06:43', 'FR-30KThu 3 Dec 09:15', 'FR-100K is down at the time that was planned.'],
      ['FR-100KWed 2 Dec 06:43', '▲ no longer in the plan', 'It is on hold.'],
      ['not in the plan', 'FR-30KThu 3 Dec 09:15', 'It is new in the plan.'],
    ]);
  });

  it('says which plan moved them, and whether newer ones left everything in its place', () => {
    open([MOVED]);
    expect(screen.getByText('Plan v4 of Tue 1 Dec 10:09, against the plan before it.')).toBeTruthy();
    open([MOVED], 6);
    expect(screen.getByText(/Newer plans moved no job\.$/)).toBeTruthy();
  });

  it('says so when nothing moved yet, and when there is no plan before', () => {
    open([]);
    expect(screen.getByText(/No plan has moved a job yet/)).toBeTruthy();
    open([], 1);
    expect(screen.getByText(/the first plan/)).toBeTruthy();
  });

  it('folds away what is more than a screenful', () => {
    open(Array.from({ length: 10 }, (_, at) => ({ ...MOVED, jobId: `j${at}` })));
    expect(screen.getByText('2 more jobs').closest('details')?.querySelectorAll('tbody tr').length).toBe(2);
    expect(document.querySelectorAll('tbody tr').length).toBe(10);
  });
});
