import type { Ask } from '#libs/matching/src/index.js';
import { methodNamed, needsFor } from '#test/support/matching/sample-lab.js';

const peak = { low: 100, high: 200 };

function speeds(methodId: string, geometry: Ask['geometry'], change: Partial<Ask> = {}): number[] {
  const method = methodNamed(methodId);
  const results = [method.results[0]!];
  return needsFor(
    { methodId, peak, geometry, results, speedMmPerMin: null, travelMm: null, ...change },
    method,
  ).speeds.map(({ speed }) => speed.value);
}

describe('speeds against the rate formulas of the standards', () => {
  // ASTM D790 equation 1: R = Z·L²/(6·d), formula and span ratio seen in secondary copies; numbers recomputed.
  it.each([
    [51.2, 3.2, 1.3653],
    [50.8, 3.2, 1.3441],
  ])('ASTM D790, span %p, depth %p: %p mm/min', (spanMm, thicknessMm, expected) => {
    expect(speeds('astm-d790', { shape: 'rectangle', widthMm: 12.7, thicknessMm, spanMm })[0]).toBeCloseTo(expected, 4);
  });

  it('ASTM D790 procedure B is ten times as fast', () => {
    const method = methodNamed('astm-d790');
    const fast = {
      ...method,
      speeds: method.speeds.map((stage) => ({
        ...stage,
        rule: { kind: 'flexure-rate' as const, outerFibrePerMin: 0.1 },
      })),
    };
    const geometry = { shape: 'rectangle' as const, widthMm: 12.7, thicknessMm: 3.2, spanMm: 51.2 };
    const needs = needsFor({ methodId: method.id, peak, geometry, results: ['peak-stress'], travelMm: null }, fast);
    expect(needs.speeds[0]!.speed.value).toBeCloseTo(13.653, 3);
  });

  // ASTM D790: D = r·L²/(6·d) at 5 % strain.
  it('ASTM D790 ends at 6.8267 mm deflection', () => {
    const geometry = { shape: 'rectangle' as const, widthMm: 12.7, thicknessMm: 3.2, spanMm: 51.2 };
    expect(
      needsFor({ methodId: 'astm-d790', peak, geometry, results: ['peak-stress'], travelMm: null }).travel.value,
    ).toBeCloseTo(6.8267, 4);
  });

  // ISO 178: ε′·L²/(6·h) = 1.7067 mm/min at 64/4 and 0.01 per minute; the nearest speed of the series is 2 mm/min.
  it('ISO 178 runs at the nearest speed of the series', () => {
    expect((0.01 * 64 ** 2) / (6 * 4)).toBeCloseTo(1.7067, 4);
    expect(speeds('iso-178', { shape: 'rectangle', widthMm: 10, thicknessMm: 4, spanMm: 64 })).toEqual([2]);
  });

  // ISO 6892-1:2019 method A: ė·Lc; 0.00025 1/s × 60 mm = 0.9 mm/min, 0.0067 × 60 = 0.402 mm/s.
  it('ISO 6892-1 A2 has two speeds', () => {
    const geometry = { shape: 'round' as const, diameterMm: 10, parallelLengthMm: 60, gripSeparationMm: 80 };
    const [first, second] = speeds('iso-6892-1', geometry);
    expect(first).toBeCloseTo(0.9, 12);
    expect(second! / 60).toBeCloseTo(0.402, 12);
  });

  // ASTM E8 control method C: 0.015 per minute × reduced length 75 mm = 1.125 mm/min.
  it('ASTM E8 C', () => {
    const geometry = { shape: 'round' as const, diameterMm: 12.5, parallelLengthMm: 75, gripSeparationMm: 100 };
    expect(speeds('astm-e8', geometry)[0]).toBeCloseTo(1.125, 12);
  });

  // ASTM D882 Table 1: 10 per minute × 50 mm grip separation = 500 mm/min.
  it('ASTM D882', () => {
    expect(
      speeds('astm-d882', { shape: 'strip', widthMm: 15, thicknessMm: 0.05, gripSeparationMm: 50 })[0],
    ).toBeCloseTo(500, 9);
  });

  // ISO 13934-1: 50 % per minute × 200 mm = 100 mm/min.
  it('ISO 13934-1', () => {
    expect(speeds('iso-13934-1', { shape: 'strip', widthMm: 50, gripSeparationMm: 200 })[0]).toBeCloseTo(100, 9);
  });

  // ISO 844: 10 % of the thickness per minute, 5 mm/min for 50 mm. ASTM D1621: 2.5 mm/min for 25.4 mm.
  it('ISO 844 and ASTM D1621', () => {
    expect(speeds('iso-844', { shape: 'rectangle', widthMm: 100, thicknessMm: 100, heightMm: 50 })[0]).toBeCloseTo(
      5,
      12,
    );
    expect(
      speeds('astm-d1621', { shape: 'rectangle', widthMm: 50.8, thicknessMm: 50.8, heightMm: 25.4 })[0],
    ).toBeCloseTo(2.5, 12);
  });

  // ASTM C39: 0.25 MPa/s on a 150 mm cylinder is 4.418 kN/s; EN 12390-3: 0.6 MPa/s on a 150 mm cube is 13.5 kN/s.
  it('stress rates as force rates', () => {
    const rate = (methodId: string, geometry: Ask['geometry']) =>
      needsFor({ methodId, peak, geometry, results: ['peak-load'], travelMm: null }).forceRate!;
    expect(rate('astm-c39', { shape: 'round', diameterMm: 150, heightMm: 300 }).value / 1000).toBeCloseTo(4.418, 3);
    expect(
      rate('en-12390-3', { shape: 'rectangle', widthMm: 150, thicknessMm: 150, heightMm: 150 }).value / 1000,
    ).toBeCloseTo(13.5, 12);
  });

  // ASTM D1876: the bond parts at 127 mm/min, so that the crosshead moves at 254 mm/min (T-peel opens both arms).
  it('ASTM D1876 moves the crosshead at twice the rate of the bond, over twice its length', () => {
    const geometry = { shape: 'strip' as const, widthMm: 25, lengthMm: 241, thicknessMm: 0.8, gripSeparationMm: 76 };
    const needs = needsFor({ methodId: 'astm-d1876', peak, geometry, results: ['mean-peel'], travelMm: null });
    expect(needs.speeds[0]!.speed.value).toBe(2 * 127);
    expect(needs.travel.value).toBe(2 * 241);
  });
});
