import { makePlan } from '../engine/make-plan.js';
import { openFrame, smallCandidate, smallJob, smallProblem } from './small-plan.js';
import { tryMove } from './try-move.js';
import { whereWouldItLand } from './where-would-it-land.js';

// A on F1 from 0 to 100, B behind it to 150; F2 is open from 60 to 400 and empty; both jobs need the one pair of grips G.
const problem = smallProblem({
  frames: [openFrame('F1'), openFrame('F2', [{ startMin: 60, endMin: 400 }])],
  items: [{ id: 'G', usable: null }],
  jobs: [
    smallJob('A', { candidates: [smallCandidate('F1', 100, ['G'])], dueMin: 50, weight: 9 }),
    smallJob('B', {
      candidates: [smallCandidate('F1', 50, ['G']), smallCandidate('F2', 50, ['G'])],
      dueMin: 120,
      releaseMin: 20,
    }),
  ],
});
const plan = makePlan(problem, { iterations: 300 });

describe('tryMove', () => {
  it('lets a job go where frame and units are free', () => {
    expect(tryMove(problem, plan, 'B', 'F2', 100)).toMatchObject({
      fits: true,
      obstacles: [],
      booking: { startMin: 100, endMin: 150 },
    });
  });

  it('names the unit that another job holds, and for how long yet', () => {
    const answer = tryMove(problem, plan, 'B', 'F2', 99);
    expect(answer.fits).toBe(false);
    expect(answer.obstacles).toContainEqual({ kind: 'item-busy', jobId: 'A', itemId: 'G', byMin: 1 });
  });

  it('names the job that is on the frame', () => {
    expect(tryMove(problem, plan, 'B', 'F1', 40).obstacles).toContainEqual({
      kind: 'frame-busy',
      jobId: 'A',
      itemId: null,
      byMin: 60,
    });
  });

  it('says when the frame is closed, the specimens are not there, and no train is on it', () => {
    expect(tryMove(problem, plan, 'B', 'F2', 400).obstacles.map(({ kind }) => kind)).toContain('frame-closed');
    expect(tryMove(problem, plan, 'B', 'F1', 10).obstacles).toContainEqual({
      kind: 'before-release',
      jobId: null,
      itemId: null,
      byMin: 10,
    });
    expect(tryMove(problem, plan, 'A', 'F2', 100).obstacles.map(({ kind }) => kind)).toEqual(['no-train']);
  });

  it('names the job that would have the unit before it is done', () => {
    expect(tryMove(problem, plan, 'A', 'F1', 60).obstacles).toContainEqual({
      kind: 'item-busy',
      jobId: 'B',
      itemId: 'G',
      byMin: 90,
    });
  });
});

describe('whereWouldItLand', () => {
  it('lays a new job where the plan then costs least', () => {
    const urgent = smallJob('N', { candidates: [smallCandidate('F2', 30)], dueMin: 90 });
    expect(whereWouldItLand(problem, plan, urgent).booking).toMatchObject({ frameId: 'F2', startMin: 60, endMin: 90 });
  });

  it('finds no place for a job that no frame can take', () => {
    expect(whereWouldItLand(problem, plan, smallJob('N', {})).booking).toBeNull();
  });
});
