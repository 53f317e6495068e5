import { READY } from '#test/support/bench/ready.js';
import type { AtFrame } from './at-frame.js';
import { findingsAt } from './interlocks.js';

const codes = (move: Parameters<typeof findingsAt>[0], over: Partial<AtFrame> = {}) =>
  findingsAt(move, { ...READY, ...over }).map(({ code }) => code);
const problem = { rule: 'cell-capacity', items: ['cell'], sentence: 'LC-5K is too small.' };

describe('a move at the bench', () => {
  it.each(['start', 'resume', 'finish'] as const)('%s happens when nothing is in the way', (move) => {
    expect(codes(move)).toEqual([]);
  });

  it('is told everything that is in the way at once, in order', () => {
    const all = {
      authorised: false,
      rig: [],
      problems: [problem],
      shiftCheckReason: 'failed',
      checksAsked: [],
    } as const;
    expect(codes('start', { ...all, checksAsked: READY.checksAsked, job: { ...READY.job, checks: {} } })).toEqual([
      'bench/not-authorised',
      'bench/link-unconfirmed',
      'bench/train-not-fit',
      'bench/shift-check-needed',
      'bench/checks-missing',
    ]);
  });
});

describe('to start and to go on', () => {
  it.each(['start', 'resume'] as const)('the technician is authorised: %s', (move) => {
    expect(codes(move, { authorised: false })).toEqual(['bench/not-authorised']);
  });

  it('every link is confirmed by its tag', () => {
    const [cell, grips] = READY.train;
    const [found] = findingsAt('start', { ...READY, train: [cell!, { itemId: grips!.itemId }] });
    expect([found?.code, found?.facts]).toEqual(['bench/link-unconfirmed', { tags: ['GP-5K'] }]);
    expect(found?.sentence).toContain('on UF-10: GP-5K');
  });

  it('every link still hangs on the frame', () => {
    expect(findingsAt('resume', { ...READY, rig: [{ itemId: 'grips' }] })[0]?.facts).toEqual({ tags: ['LC-5K'] });
  });

  it('no rule speaks against the train, and no other job has the frame', () => {
    expect(findingsAt('start', { ...READY, problems: [problem] })[0]?.facts['problems']).toEqual([problem]);
    const [held] = findingsAt('start', { ...READY, frameHolder: 'J-8-1' });
    expect([held?.code, held?.sentence]).toEqual(['bench/train-not-fit', expect.stringContaining('in use by J-8-1')]);
  });

  it('the shift check holds', () => {
    const [found] = findingsAt('resume', { ...READY, shiftCheckReason: 'new-shift', shiftCheckValidMin: 90 });
    expect(found).toMatchObject({
      code: 'bench/shift-check-needed',
      facts: { reason: 'new-shift', longestHours: 1.5 },
    });
    expect(found?.sentence).toMatch(/LC-5K needs a shift check: a shift began.* 1\.5 h at most/);
  });
});

describe('to start', () => {
  it('every required check is ticked; going on asks for none again', () => {
    const job = { ...READY.job, checks: {} };
    expect(findingsAt('start', { ...READY, job })[0]?.facts).toEqual({
      missing: [{ key: 'guard', label: 'Guard in place' }],
    });
    expect(codes('resume', { job })).toEqual([]);
  });

  it('a check that is not required may stay open, and the shift check is not ticked', () => {
    const [guard] = READY.checksAsked;
    const checksAsked = [
      { ...guard!, required: false },
      { ...guard!, key: 'shift-check', kind: 'shift-check' as const },
    ];
    expect(codes('start', { checksAsked, job: { ...READY.job, checks: {} } })).toEqual([]);
  });
});

describe('to finish', () => {
  it.each(['tested', 'invalid', 'not-tested'])('a specimen may be %s', (fate) => {
    expect(codes('finish', { specimens: [{ label: 'S-01', fate }] })).toEqual([]);
  });

  it.each(['expected', 'arrived'])('a specimen that is %s needs a reason', (fate) => {
    const specimens = [
      { label: 'S-01', fate: 'tested' },
      { label: 'S-02', fate },
    ];
    expect(findingsAt('finish', { ...READY, specimens })[0]).toMatchObject({
      code: 'bench/specimens-open',
      facts: { open: ['S-02'] },
    });
    expect(codes('finish', { specimens, notTestedWhy: 'Lost' })).toEqual([]);
  });
});
