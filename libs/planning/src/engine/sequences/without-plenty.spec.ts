import { openFrame, smallCandidate, smallJob, smallProblem } from '#test/support/small-plan.js';
import type { Problem, Technician } from '../../problem.js';
import { withoutPlenty } from './without-plenty.js';

const always = [{ startMin: 0, endMin: 10_000 }];
const tester = (id: string, change: Partial<Technician> = {}): Technician => ({
  ...{ id, shifts: always, authorisations: ['tensile'] },
  ...change,
});

const plenty = smallProblem({
  frames: ['F1', 'F2'].map((id) => ({ ...openFrame(id), open: always })),
  technicians: [tester('T1'), tester('T2')],
  items: ['A1', 'A2', 'B1'].map((id) => ({ id, usable: always })),
  jobs: [
    smallJob('A', { candidates: [smallCandidate('F1', 20, ['A1', 'A2'])], authorisation: 'tensile' }),
    smallJob('B', { candidates: [smallCandidate('F2', 20, ['B1'])], authorisation: 'tensile' }),
  ],
});

/** What is left of it in the problem. */
function left(problem: Problem): string[] {
  const { technicians, frames, jobs } = withoutPlenty(problem);
  const links = jobs.flatMap(({ id, candidates }) =>
    candidates.flatMap((one) => one.links.map(() => `links of ${id}`)),
  );
  return [
    ...(technicians ? ['roster'] : []),
    ...frames.flatMap(({ id, open }) => (open ? [`hours of ${id}`] : [])),
    ...links,
  ];
}

describe('what never runs short', () => {
  it('is left out: somebody for each frame at any time, open calendars, units of a job alone', () => {
    expect(left(plenty)).toEqual([]);
  });

  it.each<[string, Partial<Problem>, string[]]>([
    ['one technician is missing', { technicians: [tester('T1')] }, ['roster']],
    ['one may not run it', { technicians: [tester('T1'), tester('T2', { authorisations: [] })] }, ['roster']],
    [
      'one goes home',
      { technicians: [tester('T1'), tester('T2', { shifts: [{ startMin: 0, endMin: 9_999 }] })] },
      ['roster'],
    ],
    [
      'a frame closes',
      { frames: plenty.frames.map((frame, at) => (at ? frame : { ...frame, open: [{ startMin: 0, endMin: 480 }] })) },
      ['hours of F1'],
    ],
    [
      'a frame is down',
      { frames: plenty.frames.map((frame, at) => (at ? frame : { ...frame, down: [{ startMin: 60, endMin: 90 }] })) },
      ['hours of F1'],
    ],
    [
      'a unit expires',
      {
        items: plenty.items.map((item) =>
          item.id === 'A2' ? { ...item, usable: [{ startMin: 0, endMin: 60 }] } : item,
        ),
      },
      ['links of A'],
    ],
    [
      'two jobs share a unit',
      {
        jobs: [
          plenty.jobs[0]!,
          smallJob('B', { candidates: [smallCandidate('F2', 20, ['A1'])], authorisation: 'tensile' }),
        ],
      },
      ['links of A', 'links of B'],
    ],
    [
      'fitting takes time',
      { changeover: { ...plenty.changeover, byLinkMin: { ends: 5 } } },
      ['links of A', 'links of B'],
    ],
    [
      'fitting needs a check',
      { changeover: { ...plenty.changeover, checkedLinks: ['ends'], checkMin: 5 } },
      ['links of A', 'links of B'],
    ],
  ])('stays where %s', (_, change, expected) => {
    expect(left({ ...plenty, ...change })).toEqual(expected);
  });
});
