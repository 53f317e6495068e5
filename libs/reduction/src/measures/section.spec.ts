import { bendingModulus, loadArm, sectionArea, strainPerDeflection, torsionStressPerTorque } from './section.js';

describe('sectionArea', () => {
  it('is width times thickness, πd²/4, or the ring between two diameters', () => {
    expect(sectionArea('rectangle', { widthMm: 10, thicknessMm: 4 })).toBe(40);
    expect(sectionArea('round', { diameterMm: 10 })).toBeCloseTo(78.5398, 4);
    expect(sectionArea('tube', { diameterMm: 28.6, innerDiameterMm: 26.2 })).toBeCloseTo(
      (Math.PI / 4) * (28.6 ** 2 - 26.2 ** 2),
      10,
    );
  });

  it('takes an area found in another way first', () => {
    expect(sectionArea('round', { diameterMm: 10, areaMm2: 77 })).toBe(77);
  });

  it('names what it lacks', () => {
    expect(sectionArea('rectangle', { widthMm: 10 })).toEqual({ lacks: 'thicknessMm' });
    expect(sectionArea('given-area', {})).toEqual({ lacks: 'areaMm2' });
    expect(bendingModulus('tube', { diameterMm: 10 })).toEqual({ lacks: 'innerDiameterMm' });
  });
});

// ASTM D6272 prints 4.70 and 4.36 (mid-span, thirds and half span); ISO 178 prints 6. L 64 mm, h 4 mm.
describe('strainPerDeflection', () => {
  const [span, depth] = [64, 4];
  const factor = (arm: number, deflectionAt: 'mid-span' | 'load-points') =>
    (strainPerDeflection(depth, arm, { spanMm: span, deflectionAt }) * span ** 2) / depth;

  it('is 6 h/L² in three-point bending, wherever the deflection is measured', () => {
    expect(factor(span / 2, 'mid-span')).toBeCloseTo(6, 12);
    expect(factor(span / 2, 'load-points')).toBeCloseTo(6, 12);
  });

  it('is 4.70 and 4.36 h/L² at mid-span, 5.4 and 6 under the loads', () => {
    expect(factor(span / 3, 'mid-span')).toBeCloseTo(4.7, 2);
    expect(factor(span / 4, 'mid-span')).toBeCloseTo(4.36, 2);
    expect(factor(span / 3, 'load-points')).toBeCloseTo(5.4, 12);
    expect(factor(span / 4, 'load-points')).toBeCloseTo(6, 12);
  });
});

it('finds the arm of the load from the spans', () => {
  expect(loadArm('flexure-3-point', { spanMm: 90, deflectionAt: 'mid-span' })).toBe(45);
  expect(loadArm('flexure-4-point', { spanMm: 90, innerSpanMm: 30, deflectionAt: 'mid-span' })).toBe(30);
  expect(loadArm('flexure-4-point', { spanMm: 90, deflectionAt: 'mid-span' })).toEqual({
    lacks: 'bending.innerSpanMm',
  });
});

// Textbook: 300 MPa on d 10 mm is 58.90 N·m elastic and 78.54 N·m plastic (ratio 4/3); tube 20/16 mm is 278.2 N·m.
it('finds torsional stress of a bar, elastic and plastic, and of a tube', () => {
  expect(300 / (torsionStressPerTorque('round', { diameterMm: 10 }, 'elastic') as number)).toBeCloseTo(58.9, 2);
  expect(300 / (torsionStressPerTorque('round', { diameterMm: 10 }, 'plastic') as number)).toBeCloseTo(78.54, 2);
  expect(
    300 / (torsionStressPerTorque('tube', { diameterMm: 20, innerDiameterMm: 16 }, 'elastic') as number),
  ).toBeCloseTo(278.2, 1);
});
