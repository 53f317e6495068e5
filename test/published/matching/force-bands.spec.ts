import type { Ask } from '#libs/matching/src/index.js';
import { MATERIALS } from '#seed/library/materials.js';
import { needsFor } from '#test/support/matching/sample-lab.js';

/*
 * From a material of the library to the highest load that a train must carry: a band that is too low overloads a cell, one that is too
 * high turns a small frame away. Formulas: strength of materials; reaches and the rise in the cold: common practice, no source.
 */

function needs(materialId: string, ask: Partial<Ask>) {
  const material = MATERIALS.find(({ id }) => id === materialId)!;
  return needsFor({ materialId, peak: null, strength: null, modulusMPa: null, ...ask }, undefined, material);
}

const PLATE = { shape: 'rectangle' as const, widthMm: 25, thicknessMm: 5, spanMm: 60 };

describe('a plate bent to an angle', () => {
  // S355 up to 630 MPa, 25 × 5 over 60 mm: M = 630·25·25/4 N·mm, F = 4·M/60 = 6562.5 N; the elastic limit would be 4375 N.
  it('needs the force of the plastic hinge', () => {
    const { peakHigh, toConfirm } = needs('steel-s355', {
      methodId: 'iso-7438',
      geometry: PLATE,
      results: ['peak-load'],
    });
    expect(peakHigh.value).toBeCloseTo(6562.5, 8);
    expect(toConfirm).not.toContain('peakHigh');
  });
});

describe('a strength that the library does not have', () => {
  const flexure = {
    ...{ methodId: 'iso-178', results: ['peak-stress'] },
    geometry: { shape: 'rectangle' as const, widthMm: 10, thicknessMm: 4, spanMm: 64 },
  };

  // PP up to 80 MPa in tension: 2·80 MPa in bending; F = 2·σ·b·d²/(3·L) = 2·160·10·16/(3·64) = 266.7 N.
  it('is assumed from the tensile one, reaches further up, and is to be confirmed', () => {
    const { peakHigh, peakLow, toConfirm } = needs('pp', flexure);
    expect(peakHigh.value).toBeCloseTo((2 * 160 * 160) / 192, 8);
    expect(peakLow.value).toBeCloseTo((2 * 20 * 160) / 192, 8);
    expect(peakHigh.source).toContain('tensile strength stands in for flexural, up to 2 times');
    expect(toConfirm).toContain('peakHigh');
    expect(needs('pp', { ...flexure, confirmed: ['peakHigh'] }).toConfirm).not.toContain('peakHigh');
    expect(needs('pp', { ...flexure, strength: { low: 30, high: 50 } }).toConfirm).not.toContain('peakHigh');
  });

  // 13 × 2.5 mm at 280 MPa are 9100 N; by the tensile strength of 70 MPa they were 2275 N.
  it('is not taken from the tensile one where the library knows it: CFRP across its fibres, ASTM D6641', () => {
    const geometry = { shape: 'rectangle' as const, widthMm: 13, thicknessMm: 2.5, heightMm: 13, lengthMm: 140 };
    const { peakHigh, toConfirm } = needs('cfrp-ud-90', { methodId: 'astm-d6641', geometry, results: ['peak-stress'] });
    expect(peakHigh.value).toBeCloseTo(9100, 8);
    expect(toConfirm).not.toContain('peakHigh');
  });

  // 100 × 100 mm up to 0.04 MPa are 400 N; by its tensile strength a foam asked for 2500 N, and small cells were turned away.
  it('is not taken from the tensile one for a foam', () => {
    const geometry = { shape: 'rectangle' as const, widthMm: 100, thicknessMm: 100, heightMm: 50 };
    const ask = { methodId: 'iso-3386-1', geometry, results: ['stress-at-strain'] };
    expect(needs('foam-pu-flexible', ask).peakHigh.value).toBeCloseTo(400, 8);
  });
});

describe('a band of room temperature', () => {
  const tension = {
    ...{ methodId: 'iso-527-2', results: ['peak-stress'] },
    geometry: { shape: 'rectangle' as const, widthMm: 10, thicknessMm: 4, parallelLengthMm: 80, gripSeparationMm: 115 },
  };
  const at = (materialId: string, temperatureC: number | null) => needs(materialId, { ...tension, temperatureC });

  // 40 mm² at 80 MPa are 3200 N; 63 K below room temperature 1.5 % for each: 1.945 times.
  it('reaches further up for a plastic in the cold, and is to be confirmed there', () => {
    expect(at('pp', null).peakHigh.value).toBeCloseTo(3200, 8);
    expect(at('pp', 18).toConfirm).not.toContain('peakHigh');
    const cold = at('pp', -40);
    expect(cold.peakHigh.value).toBeCloseTo(3200 * 1.945, 8);
    expect(cold.toConfirm).toContain('peakHigh');
  });

  it('stays as it is in the heat, and is to be confirmed there', () => {
    const hot = at('pp', 80);
    expect([hot.peakHigh.value, hot.toConfirm.includes('peakHigh')]).toEqual([expect.closeTo(3200, 8), true]);
  });
});
