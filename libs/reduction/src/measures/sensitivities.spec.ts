import { reduceForSpec } from '#test/support/reduce-for-spec.js';

/** Bilinear: E 200 000 MPa to 400 MPa, then 2000 MPa; in one row of the strain each 0.00002, worked over. */
const strains = Array.from({ length: 1000 }, (_, row) => row * 0.00002);
const stressAt = (strain: number) => (strain <= 0.002 ? 200_000 * strain : 400 + 2000 * (strain - 0.002));
const slope = { way: 'regression', bounds: { over: 'stress', from: 40, to: 160 } } as const;

function reduced(strainGain = 1, slopeGain = 1) {
  // An error of the slope alone: the foot stays, the elastic part is drawn out, and what lies above it keeps its place.
  const strain = strains.map((each) => (each <= 0.001 ? each / slopeGain : each) * strainGain);
  const recipe = { slope, offsetStrains: [0.002], atStrains: [0.01], toe: { way: 'none' } } as const;
  return reduceForSpec({ strain, stressMPa: strains.map(stressAt) }, ['offset-yield', 'stress-at-strain'], recipe);
}

const GAIN = 1.001;
const change = (key: 'offset-yield' | 'stress-at-strain', at: number, of: ReturnType<typeof reduced>) =>
  (of.value(key, at) / reduced().value(key, at) - 1) / (GAIN - 1);

describe('sensitivities', () => {
  it('of a stress at a strain is the tangent there: −2000·0.01/416', () => {
    const { sensitivity } = reduced().result('stress-at-strain', 0.01);
    expect(sensitivity!.strain).toBeCloseTo(-20 / 416, 6);
    expect(sensitivity!.slope).toBe(0);
    // Strains recorded too large by a part are read too early by it.
    expect(change('stress-at-strain', 0.01, reduced(GAIN))).toBeCloseTo(sensitivity!.strain, 3);
  });

  it('of an offset yield are those of its line: steep on the elastic side, and little where the metal hardens little', () => {
    const { sensitivity } = reduced().result('offset-yield', 0.002);
    expect(sensitivity!.slope).toBeCloseTo(-2000 / 198_000, 6);
    expect(change('offset-yield', 0.002, reduced(1, GAIN))).toBeCloseTo(sensitivity!.slope, 3);
    expect(Math.abs(sensitivity!.strain)).toBeCloseTo((2000 * 200_000 * 0.002) / (198_000 * 404.0404), 5);
    expect(change('offset-yield', 0.002, reduced(GAIN))).toBeCloseTo(sensitivity!.strain, 3);
  });
});
