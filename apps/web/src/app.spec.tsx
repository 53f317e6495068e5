import { screen } from '@testing-library/react';
import { show } from '#test/support/page.js';
import { App } from './app.js';

/** The code of a desk is fetched first. */
const LOADED_WITHIN_MS = 30_000;

beforeAll(() => {
  // jsdom has neither; nothing happens in this lab.
  Object.assign(globalThis, {
    matchMedia: () => ({ matches: false }),
    EventSource: class {
      addEventListener() {}
      close() {}
    },
  });
});

describe('the page', () => {
  it('goes by the clock of the lab, whatever this device takes the time to be', async () => {
    show(
      <App />,
      {
        'GET /session': {
          person: { id: 'ruth', name: 'Ruth Calloway', email: 'ruth@northmoor.example', roles: ['manager'], teams: [] },
          permissions: [],
          lab: { name: 'Northmoor Cycles', timeZone: 'Europe/London', now: '2040-02-29T23:59:00.000Z' },
          demo: false,
        },
        'GET /notices': { rows: [], next: null, unread: 0 },
        'GET /people': [],
        'GET /roster': { shifts: [], closedDays: [] },
      },
      { path: '/planning/roster' },
    );
    // 29 February 2040 is a Wednesday; it is this year, so that the year is not said.
    const week = await screen.findByText('week of', {}, { timeout: LOADED_WITHIN_MS });
    expect(week.nextSibling?.textContent).toBe('Mon 27 Feb');
  });
});
