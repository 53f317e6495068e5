import { reviewProblems } from './review.js';

const SETTLED = { methodAgreed: true, capabilityShown: true, specimensAgreed: true, disposalAgreed: true };

describe('the review of a request', () => {
  it('is settled when every point is', () => {
    expect(reviewProblems(SETTLED, false)).toEqual([]);
    expect(reviewProblems({ ...SETTLED, decisionRuleAgreed: true }, true)).toEqual([]);
  });

  it('names every point that is not', () => {
    const problems = reviewProblems({ ...SETTLED, specimensAgreed: false, disposalAgreed: false }, false);
    expect(problems.map(({ field }) => field)).toEqual(['specimensAgreed', 'disposalAgreed']);
  });

  it('asks for the decision rule where conformity is to be stated, and only there', () => {
    expect(reviewProblems(SETTLED, true).map(({ field }) => field)).toEqual(['decisionRuleAgreed']);
    expect(reviewProblems({ ...SETTLED, decisionRuleAgreed: false }, false)).toEqual([]);
  });
});
