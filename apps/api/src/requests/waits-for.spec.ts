import type { RequestInList } from '#libs/records/src/index.js';
import { waitsFor } from './waits-for.js';

const NOW = Date.parse('2026-11-25T12:00:00Z');

interface Situation {
  state: string;
  jobs?: { state: string; why?: string; holdWhy?: string; releasedAt?: Date; frameTag?: string; startsAt?: Date }[];
  missing?: number;
}

function around({ state, jobs = [], missing = 0 }: Situation): RequestInList {
  return {
    request: { state },
    missing,
    jobs: jobs.map(({ frameTag = null, startsAt, ...job }, index) => ({
      job: { reference: `J-2031-${index + 1}`, why: null, holdWhy: null, releasedAt: null, ...job },
      booking: startsAt ? { startsAt } : null,
      frameTag,
    })),
  } as unknown as RequestInList;
}

const said = (situation: Situation) => waitsFor(around(situation), NOW, 'Europe/London');

describe('what a request waits for', () => {
  it('counts the specimens that are still to come', () => {
    const jobs = [{ state: 'waiting' }];
    expect(said({ state: 'accepted', jobs, missing: 2 })).toBe('Waits for 2 specimens to arrive');
    expect(said({ state: 'accepted', jobs, missing: 1 })).toBe('Waits for 1 specimen to arrive');
  });

  it('tells the planned start on the wall clock of the lab', () => {
    const startsAt = new Date('2026-07-03T08:10:00Z');
    expect(said({ state: 'accepted', jobs: [{ state: 'ready', frameTag: 'UF-10', startsAt }] })).toBe(
      'Waits for its turn on UF-10, planned for Fri 3 Jul, 09:10',
    );
  });

  it('tells until when specimens are conditioned, as long as that is to come', () => {
    const job = { state: 'ready', releasedAt: new Date(NOW + 1) };
    expect(said({ state: 'accepted', jobs: [job] })).toBe('Specimens are conditioned until Wed 25 Nov, 12:00');
    expect(said({ state: 'accepted', jobs: [{ ...job, releasedAt: new Date(NOW) }] })).toBe(
      'Waits for a place in the plan',
    );
  });

  it('speaks of the job that is furthest behind', () => {
    const jobs = [
      { state: 'running', frameTag: 'UF-10' },
      { state: 'paused', why: 'grip slipped', frameTag: 'UF-30' },
      { state: 'done' },
    ];
    expect(said({ state: 'in-work', jobs })).toBe('J-2031-2 is paused on UF-30: grip slipped');
    expect(said({ state: 'in-work', jobs: [jobs[0]!, { state: 'ready', holdWhy: 'material is recalled' }] })).toBe(
      'The lab holds it back: material is recalled',
    );
  });

  it('has words for every state without a job', () => {
    const states = ['draft', 'submitted', 'returned', 'in-review', 'reported', 'closed', 'declined', 'withdrawn'];
    expect(new Set(states.map((state) => said({ state }))).size).toBe(states.length);
  });
});
