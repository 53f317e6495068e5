import type { TrialEdit } from '#libs/contract/src/index.js';
import type { OpenJob, PlanFacts } from '#libs/records/src/index.js';
import { withEdits } from './with-edits.js';

const job = (id: string) => ({ id, pin: null, hold: false, weight: 1 }) as unknown as OpenJob;
const facts = { jobs: [job('A'), job('B')] } as unknown as PlanFacts;
const startsAt = '2026-11-25T08:00:00Z';
const endsAt = '2026-11-27T08:00:00Z';

function edited(...edits: TrialEdit[]) {
  return withEdits(facts, edits);
}

describe('the changes of a trial plan', () => {
  it('touch only the job that they name', () => {
    const { facts: changed } = edited(
      { kind: 'move', jobId: 'A', frameId: 'F2', startsAt },
      { kind: 'weight', jobId: 'A', weight: 3 },
    );
    expect(changed.jobs[0]).toMatchObject({ pin: { frameId: 'F2', startMs: Date.parse(startsAt) }, weight: 3 });
    expect(changed.jobs[1]).toBe(facts.jobs[1]);
  });

  it('count in their order: a hold that is taken back holds nothing', () => {
    expect(edited({ kind: 'hold', jobId: 'B', why: 'later' }, { kind: 'unhold', jobId: 'B' }).facts.jobs[1]!.hold).toBe(
      false,
    );
  });

  it('lay spans over frames and people', () => {
    const { overlay } = edited(
      { kind: 'frame-down', frameId: 'F1', startsAt, endsAt, why: 'repair' },
      { kind: 'technician-off', personId: 'P', startsAt, endsAt },
    );
    const window = { startMs: Date.parse(startsAt), endMs: Date.parse(endsAt) };
    expect(overlay).toEqual({
      down: [{ frameId: 'F1', ...window }],
      extraShifts: [],
      away: [{ technicianId: 'P', ...window }],
    });
  });
});
