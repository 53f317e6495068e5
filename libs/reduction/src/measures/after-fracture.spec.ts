import { reduceForSpec } from '#test/support/reduce-for-spec.js';

const forceN = [0, 10, 5];
const at = (breakToMarkMm: number) =>
  reduceForSpec(
    { forceN },
    ['elongation-after-fracture'],
    {},
    { originalGaugeLengthMm: 60, finalGaugeLengthMm: 75, breakToMarkMm },
  );

describe('after fracture', () => {
  it('elongation is the growth of the marked length over it', () => {
    expect(at(25).value('elongation-after-fracture')).toBe(0.25);
  });

  it('flags a break nearer than a third of the length to a mark', () => {
    expect(at(20).flagsOf('elongation-after-fracture')).toEqual([]);
    expect(at(19.9).flagsOf('elongation-after-fracture')).toEqual(['break-near-mark']);
  });

  it('reduction of area is the loss of section over it', () => {
    const { value } = reduceForSpec({ forceN }, ['reduction-of-area'], {}, { areaMm2: 80, finalAreaMm2: 32 });
    expect(value('reduction-of-area')).toBeCloseTo(0.6, 12);
  });

  it('both name what they lack', () => {
    const { missing } = reduceForSpec(
      { forceN },
      ['elongation-after-fracture', 'reduction-of-area'],
      {},
      { areaMm2: 80 },
    );
    expect(missing('elongation-after-fracture')).toMatchObject({ what: 'originalGaugeLengthMm' });
    expect(missing('reduction-of-area')).toMatchObject({ what: 'finalAreaMm2' });
  });
});
