import { JOB_MOVES, JOB_STATES, REQUEST_MOVES, REQUEST_STATES, waysOut } from './states.js';

function reachable(start: string, moves: Record<string, { from: readonly string[]; to: string }>): Set<string> {
  const seen = new Set([start]);
  for (let grew = true; grew;) {
    grew = false;
    for (const { from, to } of Object.values(moves)) {
      if (!seen.has(to) && from.some((state) => seen.has(state))) {
        seen.add(to);
        grew = true;
      }
    }
  }
  return seen;
}

describe('the tables of moves', () => {
  it('lead a draft to every state of a request', () => {
    expect([...reachable('draft', REQUEST_MOVES)].sort()).toEqual([...REQUEST_STATES].sort());
  });

  it('lead a waiting job to every state of a job', () => {
    expect([...reachable('waiting', JOB_MOVES)].sort()).toEqual([...JOB_STATES].sort());
  });

  it('end only where the lab is done with a request or a job', () => {
    expect(REQUEST_STATES.filter((state) => waysOut(REQUEST_MOVES, state).length === 0)).toEqual([
      'closed',
      'declined',
      'withdrawn',
    ]);
    expect(JOB_STATES.filter((state) => waysOut(JOB_MOVES, state).length === 0)).toEqual(['done', 'aborted']);
  });
});
