import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { METHODS } from '#seed/library/methods.js';
import { MATERIALS } from '#seed/library/materials.js';
import { methodNamed, needsFor } from '#test/support/matching/sample-lab.js';

type Row = Record<string, string>;
const table = (name: string): Row[] =>
  parse(readFileSync(new URL(name, import.meta.url)), { columns: true, relax_column_count: true });
const conditioning = table('./conditioning.csv');
const classes = table('./extensometer-class-by-method.csv');

function hours(standard: string, scope: string): number {
  const row = conditioning.find((each) => each.standard === standard && each.scope!.startsWith(scope));
  if (!row) throw new Error(`No ${standard}, ${scope}.`);
  return Number.parseFloat(row.minimum_time_h!);
}

describe('the method library against published conditioning times', () => {
  // Sources in the rows of conditioning.csv.
  it.each([
    ['iso-527-2', 'ISO 527-1 / ISO 178', 'plastics'],
    ['iso-178', 'ISO 527-1 / ISO 178', 'plastics'],
    ['astm-d638', 'ASTM D618 procedure A', 'plastics'],
    ['astm-d790', 'ASTM D618 procedure A', 'plastics'],
    ['iso-37', 'ISO 23529', 'rubber'],
    ['iso-11339', 'ISO 291 / EN 1939', 'adhesives'],
  ])('%s conditions as %s', (id, standard, scope) => {
    expect(methodNamed(id).conditioning?.hours).toBe(hours(standard, scope));
  });

  it('conditions textiles at 20 °C and 65 % within the 4 to 24 h of ISO 139', () => {
    const { hours: found, temperatureC, humidityPct } = methodNamed('iso-13934-1').conditioning!;
    expect([temperatureC, humidityPct]).toEqual([20, 65]);
    expect(found).toBeGreaterThanOrEqual(4);
    expect(found).toBeLessThanOrEqual(24);
  });

  it('leaves metals as they come', () => {
    expect(['iso-6892-1', 'astm-e8'].map((id) => methodNamed(id).conditioning)).toEqual([null, null]);
  });

  it('conditions ASTM D1876 for the seven days that its row names', () => {
    expect(methodNamed('astm-d1876').conditioning?.hours).toBe(168);
  });
});

describe('the method library against published extensometer classes', () => {
  const classOf = (method: string, property: string) =>
    classes.find((row) => row.method === method && row.property!.startsWith(property))!.required_class;

  it.each([
    ['iso-6892-1', 'ISO 6892-1', 'ReH'],
    ['astm-e8', 'ASTM E8/E8M', 'yield'],
    ['astm-e111', 'ASTM E111', 'modulus'],
    ['iso-527-2', 'ISO 527-1', 'stress-strain'],
    ['astm-d638', 'ASTM D638', 'modulus'],
    ['astm-d3039', 'ASTM D3039', 'modulus'],
  ])('%s asks for the class of %s', (id, method, property) => {
    expect(methodNamed(id).strain?.className).toBe(classOf(method, property));
  });

  // ASTM D638 note 13 (seen in a secondary copy): the separation of the jaws is never used for the modulus.
  it('demands an extensometer for the modulus of ASTM D638', () => {
    expect(methodNamed('astm-d638').strain?.demandedFor).toContain('modulus');
  });
});

describe('the smallest force that is read', () => {
  // ISO 527-1: modulus between 0.05 and 0.25 % strain. E 3000 MPa, 10 × 4 mm: 3000 × 0.0005 × 40 = 60 N.
  it('is the force at the lower strain bound of the modulus', () => {
    expect(needsFor().smallest.value).toBeCloseTo(60, 12);
    expect(needsFor({ results: ['peak-stress'] }).smallest.value).toBe(1000);
  });

  // ISO 178: s₁ = ε·L²/(6·h) and σ = E·ε; at ε 0.0005, E 3000 MPa, 10 × 4, L 64: F = 2·1.5·10·16/(3·64) = 2.5 N.
  it('is the flexure force at that strain', () => {
    const geometry = { shape: 'rectangle' as const, widthMm: 10, thicknessMm: 4, spanMm: 64 };
    const needs = needsFor({ methodId: 'iso-178', geometry, peak: { low: 150, high: 200 }, results: ['modulus'] });
    expect(needs.smallest.value).toBeCloseTo(2.5, 12);
  });
});

describe('the smallest force that a recipe reads', () => {
  // S235, d 10 mm: the low end of the band is 360 MPa · 78.54 mm² = 28 274 N. The straight part of ISO 6892-1 starts at a tenth of the yield, and a
  // soft metal yields at 0.3 of its strength: 848 N. At 0.05 % strain, where it was looked for before, there are 8247 N already.
  it('is where the straight part of a metal starts', () => {
    const steel = MATERIALS.find(({ id }) => id === 'steel-s235')!;
    const geometry = { shape: 'round' as const, diameterMm: 10, parallelLengthMm: 60, gripSeparationMm: 80 };
    const of = (results: string[]) =>
      needsFor(
        { methodId: 'iso-6892-1', materialId: 'steel-s235', peak: null, modulusMPa: null, geometry, results },
        undefined,
        steel,
      );
    const expected = 0.1 * 0.3 * 360 * 25 * Math.PI;
    expect(of(['offset-yield']).smallest.value).toBeCloseTo(expected, 8);
    expect(of(['modulus']).smallest.value).toBeCloseTo(expected, 8);
    expect(of(['modulus']).strain.smallestExtension!.value).toBeCloseTo((50 * 0.1 * 0.3 * 360) / 210_000, 10);
    expect(of(['peak-stress']).smallest.value).toBeCloseTo(360 * 25 * Math.PI, 8);
  });

  // ISO 37, stress at 100 %: rubber that breaks at 500 % lies at a tenth of its highest force or above, half of the straight line.
  it('is that at the smallest strain at which a stress is read', () => {
    const geometry = {
      ...{ shape: 'rectangle' as const, widthMm: 6, thicknessMm: 2, gaugeLengthMm: 25 },
      ...{ parallelLengthMm: 33, gripSeparationMm: 65, endWidthMm: 20 },
    };
    const rubber = { ...MATERIALS[0]!, breakStrain: { low: 3, high: 5 } };
    const ask = { methodId: 'iso-37', peak: { low: 200, high: 300 }, modulusMPa: null, geometry };
    const { smallest, toConfirm } = needsFor({ ...ask, results: ['stress-at-strain'] }, undefined, rubber);
    expect(smallest.value).toBeCloseTo(20, 10);
    expect(toConfirm).toContain('smallest');
    expect(needsFor({ ...ask, results: ['peak-stress'] }, undefined, rubber).smallest.value).toBe(200);
  });

  it('is the least of a peel trace, a quarter of its mean', () => {
    const geometry = { shape: 'strip' as const, widthMm: 25, thicknessMm: 1, lengthMm: 200, gripSeparationMm: 50 };
    const needs = (results: string[]) =>
      needsFor({ methodId: 'astm-d1876', peak: { low: 80, high: 120 }, geometry, results });
    expect(needs(['least-peel']).smallest.value).toBe(20);
    expect(needs(['mean-peel']).smallest.value).toBe(80);
  });
});

describe('the library', () => {
  it('has at least 25 methods and all useful rows of materials, each with source and confidence', () => {
    expect(METHODS.length).toBeGreaterThanOrEqual(25);
    expect(MATERIALS.length).toBeGreaterThanOrEqual(55);
    const bare = [...METHODS, ...MATERIALS].filter(({ source, confidence }) => !source || !confidence);
    expect(bare).toEqual([]);
  });

  it('names nothing twice', () => {
    const ids = METHODS.map(({ id, version }) => `${id} ${version}`);
    expect(new Set(ids).size).toBe(ids.length);
    expect(new Set(MATERIALS.map(({ id }) => id)).size).toBe(MATERIALS.length);
  });

  it('has bands in order', () => {
    const wrong = MATERIALS.flatMap(({ strengths }) => strengths).filter(
      ({ low, typical, high }) => !(low <= typical && typical <= high && low > 0),
    );
    expect(wrong).toEqual([]);
  });

  it('proposes only results that a method has, and bounds that contain what is usual', () => {
    const strays = METHODS.flatMap(({ results, usualResults }) =>
      usualResults.filter((each) => !results.includes(each)),
    );
    const outside = METHODS.flatMap(({ geometry }) => geometry).filter(
      ({ usual, min, max }) => usual !== undefined && (usual < min || usual > max),
    );
    expect([strays, outside]).toEqual([[], []]);
  });
});
