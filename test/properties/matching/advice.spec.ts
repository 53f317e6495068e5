import { applyAdvice, isNeeds, matchRequest, matchTrains, needsOf } from '#libs/matching/src/index.js';
import type { AdviceKind, Lab, MatchAnswer, Method } from '#libs/matching/src/index.js';
import { METHODS } from '#seed/library/methods.js';
import {
  DAY_MS,
  labWith,
  methodNamed,
  PERIOD as SAMPLE_PERIOD,
  sampleItem,
  SAMPLE_ASK,
  SAMPLE_LAB,
} from '#test/support/matching/sample-lab.js';
import { PERIOD, randomAsk, randomLab } from './random-lab.js';

const methods = new Map<string, Method>(METHODS.map((method) => [method.id, method]));

describe('what would make it fit', () => {
  it('makes the frames that it names candidates when it is followed, in 600 random labs', () => {
    const seen = new Map<AdviceKind, number>();
    for (let seed = 80_001; seed <= 80_600; seed += 1) {
      const lab = randomLab(seed);
      const ask = randomAsk(seed);
      const method = methods.get(ask.methodId)!;
      const answer = matchRequest(lab, { ask, method, material: null }, PERIOD);
      if (Array.isArray(answer)) throw new Error(`lab ${seed}`);
      for (const advice of answer.advice) {
        const after = applyAdvice(advice, lab, ask);
        const needs = needsOf(after.ask, method, null);
        const frames = isNeeds(needs)
          ? matchTrains(after.lab, needs, PERIOD).candidates.map(({ frameId }) => frameId)
          : [];
        const shut = advice.opensFrames.filter((id) => !frames.includes(id));
        expect({ seed, advice: advice.sentence, shut }).toEqual({ seed, advice: advice.sentence, shut: [] });
        expect(advice.opensFrames.length).toBeGreaterThan(0);
        seen.set(advice.kind, (seen.get(advice.kind) ?? 0) + 1);
      }
    }
    expect([...seen.keys()].sort()).toEqual(
      expect.arrayContaining(['authorise', 'buy', 'calibrate', 'change-request', 'free', 'repair']),
    );
  });

  const answerIn = (
    lab: Lab,
    ask = SAMPLE_ASK,
    material: Parameters<typeof matchRequest>[1]['material'] = null,
  ): MatchAnswer => {
    const answer = matchRequest(lab, { ask, method: methodNamed(ask.methodId), material }, SAMPLE_PERIOD);
    if (Array.isArray(answer)) throw new Error(answer.map(({ sentence }) => sentence).join(' '));
    return answer;
  };
  const kinds = (lab: Lab, ask = SAMPLE_ASK) =>
    answerIn(lab, ask).advice.map(({ kind, opensFrames }) => `${kind} ${opensFrames.join()}`);

  it('has nothing to say where the test fits', () => {
    expect(kinds(SAMPLE_LAB)).toEqual([]);
  });

  it('repairs what is faulty, frees what is promised, calibrates what has lapsed', () => {
    const [calibration] = sampleItem('load-cell', 'C').calibrations;
    const lapsed = [{ ...calibration!, dueMs: SAMPLE_PERIOD.startMs - DAY_MS }];
    expect(kinds(labWith('G', { state: 'faulty' }))).toContain('repair F');
    expect(kinds(labWith('G', { heldWindows: [SAMPLE_PERIOD] }))).toContain('free F');
    expect(kinds(labWith('C', { calibrations: lapsed }))).toContain('calibrate F');
    expect(kinds({ ...SAMPLE_LAB, technicians: [{ id: 'T', methodIds: [], windows: [SAMPLE_PERIOD] }] })).toContain(
      'authorise F',
    );
  });

  it('repairs a frame that is promised elsewhere for some of the time', () => {
    const held = { startMs: SAMPLE_PERIOD.startMs, endMs: SAMPLE_PERIOD.startMs + DAY_MS };
    expect(kinds(labWith('F', { state: 'faulty', heldWindows: [held] }))).toContain('repair F');
  });

  it('says which rating to buy where a link is too weak', () => {
    const weak = labWith('G', { ratings: { tension: [{ temperatureC: 23, rating: 1000 }] } });
    const buy = answerIn(weak).advice.find(({ kind }) => kind === 'buy');
    // 2000 N with 20 % margin, the next step of the series.
    expect(buy?.sentence).toBe('Buy a grip like G that carries 2.5 kN in tension.');
    expect(buy?.opensFrames).toEqual(['F']);
  });

  it('says how much narrower a specimen must be where the load is too high', () => {
    const ask = { ...SAMPLE_ASK, peak: null, strength: { low: 60, high: 100 }, results: ['peak-stress'] };
    // 100 MPa on 40 mm² are 4000 N, with margin 4800 N; grips for 3600 N allow three quarters of the width.
    const weak = labWith('G', { ratings: { tension: [{ temperatureC: 23, rating: 3600 }] } });
    const change = answerIn(weak, ask).advice.find(
      ({ apply }) => apply.change === 'ask' && apply.field === 'geometry.widthMm',
    );
    expect(change?.apply).toEqual({ change: 'ask', field: 'geometry.widthMm', value: 7.5 });
    expect(change?.sentence).toBe('Width of 7.5 mm instead of 10.');
  });

  it('finds an adapter where the ends do not meet', () => {
    const items = SAMPLE_LAB.items.filter(({ id }) => id !== 'A2');
    const buy = answerIn({ ...SAMPLE_LAB, items }).advice.find(({ kind }) => kind === 'buy');
    expect(buy?.sentence).toContain('adapter from clevis 20 mm, female to clevis 15 mm, male');
  });
});
