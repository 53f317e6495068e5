import { act, fireEvent, screen } from '@testing-library/react';
import type { PlanView } from '#libs/contract/src/index.js';
import { show } from '#test/support/page.js';
import { Board } from './board.js';

const LANES = [
  {
    frame: { id: 'f', tag: 'FR-30K', name: 'Table-top', capacityN: 30_000, torqueNm: null, state: 'in-service' },
    open: [
      { startsAt: '2026-12-01T06:00:00.000Z', endsAt: '2026-12-01T22:00:00.000Z' },
      { startsAt: '2026-12-02T06:00:00.000Z', endsAt: '2026-12-02T22:00:00.000Z' },
    ],
    load: [],
    down: [
      {
        ...{ id: 'belt', kind: 'down', why: 'Drive belt replaced' },
        ...{ startsAt: '2026-12-01T14:00:00.000Z', endsAt: '2026-12-01T15:30:00.000Z' },
      },
    ],
    bookings: [
      booking('short', '2026-12-01T10:00:00.000Z', '2026-12-01T10:40:00.000Z'),
      booking('overnight', '2026-12-01T20:00:00.000Z', '2026-12-02T08:00:00.000Z'),
    ],
  },
];
const PLAN = {
  ...{ lanes: LANES, freezeUntil: '2026-12-01T14:00:00.000Z' },
  horizon: { from: '2026-12-01T10:00:00.000Z', to: '2026-12-29T10:00:00.000Z' },
} as unknown as PlanView;

function booking(id: string, startsAt: string, endsAt: string) {
  return {
    ...{ id, jobId: id, jobReference: `J-${id}`, title: `The ${id} job`, state: 'ready', setupAt: startsAt },
    ...{ startsAt, endsAt, changeoverMin: 0, dueAt: null, lateHours: 0, pinned: false },
  };
}

const box = (name: RegExp) => screen.getByRole('button', { name });
const below = () => document.querySelector('p[aria-hidden="true"]')?.textContent;

beforeAll(() => {
  Element.prototype.scrollTo = () => undefined; // jsdom lays nothing out and has none
});

describe('the board', () => {
  it('tells the whole of a job below the lanes while the pointer or the keyboard is on it', () => {
    show(<Board plan={PLAN} chosen={null} onChoose={() => undefined} />, {});
    const whole = 'FR-30K: J-short The short job, ready, Tue 1 Dec 10:00 to Tue 1 Dec 10:40';
    expect(below()).toBe('');
    fireEvent.focusIn(box(/^J-short/));
    expect(below()).toBe(whole);
    fireEvent.pointerOver(box(/^J-overnight/));
    expect(below()).toContain('The overnight job');
    fireEvent.pointerOver(screen.getByRole('application'));
    expect(below()).toBe(whole);
    fireEvent.focusOut(box(/^J-short/));
    expect(below()).toBe('');
  });

  it('goes by keys through jobs and times in which a frame is down, and tells the whole of these too', () => {
    const opened: string[] = [];
    show(<Board plan={PLAN} chosen={null} onChoose={({ id }) => opened.push(id)} />, {});
    const press = (key: string) => fireEvent.keyDown(document.activeElement!, { key });
    act(() => box(/^J-short/).focus());
    press('ArrowRight');
    expect(document.activeElement).toBe(screen.getByRole('img', { name: /^Drive belt replaced/ }));
    expect(below()).toBe('FR-30K: Drive belt replaced, Tue 1 Dec 14:00 to Tue 1 Dec 15:30');
    press('Enter');
    press('ArrowRight');
    expect(document.activeElement).toBe(box(/^J-overnight/));
    press('Enter');
    expect(opened).toEqual(['overnight']);
  });

  it('shades in a job what its frame is closed, behind the words', () => {
    show(<Board plan={PLAN} chosen={null} onChoose={() => undefined} />, {});
    const shaded = (name: RegExp) =>
      [...box(name).querySelectorAll<HTMLElement>('.closed')].map(({ style }) => [style.left, style.width]);
    expect(shaded(/^J-short/)).toEqual([]);
    // Three days at once: 22 px an hour. Closed from 22:00, two hours after its start, to 06:00.
    expect(shaded(/^J-overnight/)).toEqual([['44px', '176px']]);
    expect(box(/^J-overnight/).firstElementChild?.className).toContain('closed');
  });
});
