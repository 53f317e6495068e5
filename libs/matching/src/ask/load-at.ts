import type { Geometry } from './ask.js';
import { figure } from './figure.js';
import type { Method } from '../register/method.js';
import type { Figure } from './needs.js';
import { sectionArea } from './section.js';

type Input = readonly [name: string, value: number, unit: string];
type Law = (strength: number, geometry: Required<Geometry>, method: LoadLaw) => Figure;
type LoadLaw = Pick<Method, 'testType' | 'loadingSpanRatio'>;

const STRENGTH_OF_MATERIALS = 'strength of materials';

/**
 * The load at which a specimen reaches a stress (MPa), force per width or thickness (N/mm) or stress intensity (MPa·√m),
 * as its test type says: N, for torsion N·m (elastic limit, see {@link plasticTorque} for the other end).
 *
 * @param strength in the unit that the test type works in
 * @param geometry checked; every figure that the formula names is there, or the value is NaN
 */
export function loadAt(strength: number, geometry: Geometry, method: LoadLaw): Figure {
  return LAWS[method.testType](strength, geometry as Required<Geometry>, method);
}

/** Torque at which a bar or tube is plastic throughout, N·m: τ·π·d³/12, tube τ·π·(D³ − d³)/12. */
export function plasticTorque(shearMPa: number, geometry: Geometry): Figure {
  const { diameterMm = NaN, outerDiameterMm = NaN, innerDiameterMm = NaN } = geometry;
  if (geometry.shape === 'tube') {
    const value = (shearMPa * Math.PI * (outerDiameterMm ** 3 - innerDiameterMm ** 3)) / 12 / 1000;
    return torque(value, 'T = τ·π·(D³ − d³)/12', [
      stress('τ', shearMPa),
      mm('D', outerDiameterMm),
      mm('d', innerDiameterMm),
    ]);
  }
  return torque((shearMPa * Math.PI * diameterMm ** 3) / 12 / 1000, 'T = τ·π·d³/12', [
    stress('τ', shearMPa),
    mm('d', diameterMm),
  ]);
}

/** Force at which a plate on two supports is plastic throughout its section, N: F = 4·M/L with M = σ·b·d²/4 (textbook). */
export function plasticHinge(sigmaMPa: number, { widthMm = NaN, thicknessMm = NaN, spanMm = NaN }: Geometry): Figure {
  return force((sigmaMPa * widthMm * thicknessMm ** 2) / spanMm, 'F = σ·b·d²/L (plastic hinge)', [
    stress('σ', sigmaMPa),
    mm('b', widthMm),
    mm('d', thicknessMm),
    mm('L', spanMm),
  ]);
}

const LAWS: Record<Method['testType'], Law> = {
  tension: axial,
  compression: axial,
  strip: (f, { widthMm }) => force(f * widthMm, 'F = f·w', [perMm('f', f), mm('w', widthMm)]),
  peel: (g, { widthMm }) => force(g * widthMm, 'F = G·w', [perMm('G', g), mm('w', widthMm)]),
  tear: (t, { thicknessMm }) => force(t * thicknessMm, 'F = Tₛ·t', [perMm('Tₛ', t), mm('t', thicknessMm)]),
  'lap-shear': (tau, { widthMm, overlapMm }) =>
    force(tau * widthMm * overlapMm, 'F = τ·w·l', [stress('τ', tau), mm('w', widthMm), mm('l', overlapMm)]),
  'short-beam': (tau, { widthMm, thicknessMm }) =>
    force((tau * widthMm * thicknessMm) / 0.75, 'F = τ·b·h/0.75', [
      stress('τ', tau),
      mm('b', widthMm),
      mm('h', thicknessMm),
    ]),
  'in-plane-shear': (tau, { widthMm, thicknessMm }) =>
    force(2 * tau * widthMm * thicknessMm, 'F = 2·τ·b·h', [stress('τ', tau), mm('b', widthMm), mm('h', thicknessMm)]),
  'double-shear': (tau, { diameterMm }) =>
    force((2 * tau * Math.PI * diameterMm ** 2) / 4, 'F = 2·τ·π·d²/4', [stress('τ', tau), mm('d', diameterMm)]),
  'flexure-3': (sigma, geometry) => bending(sigma, geometry, 0),
  'flexure-4': (sigma, geometry, { loadingSpanRatio }) => bending(sigma, geometry, loadingSpanRatio ?? 1 / 3),
  torsion: elasticTorque,
  fracture: singleEdgeBend,
  component: () => force(NaN, 'F as declared', []),
};

function axial(sigma: number, geometry: Geometry): Figure {
  const area = sectionArea(geometry);
  const of = area.formula.startsWith('A = ') ? area.formula.slice(4) : 'A';
  const inputs: Input[] = area.inputs.map(({ name, value, unit }) => [name, value, unit]);
  return force(sigma * area.value, `F = σ·${of}`, [
    stress('σ', sigma),
    ...(inputs.length > 0 ? inputs : [['A', area.value, 'mm²'] as const]),
  ]);
}

/**
 * Bending of a beam under one load (ratio 0) or two loads `ratio`·L apart: F = 4·σ·W/(L·(1 − ratio)), W the section modulus:
 * b·d²/6 for a rectangle, π·d³/32 round, π·(D⁴ − d⁴)/(32·D) for a tube.
 */
function bending(sigma: number, geometry: Required<Geometry>, ratio: number): Figure {
  const [modulus, inputs] = sectionModulus(geometry);
  const value = (4 * sigma * modulus) / (geometry.spanMm * (1 - ratio));
  return force(value, bendingText(geometry.shape, ratio), [stress('σ', sigma), ...inputs, mm('L', geometry.spanMm)]);
}

function sectionModulus({
  shape,
  widthMm,
  thicknessMm,
  diameterMm,
  outerDiameterMm,
  innerDiameterMm,
}: Required<Geometry>): [number, Input[]] {
  if (shape === 'round') return [(Math.PI * diameterMm ** 3) / 32, [mm('d', diameterMm)]];
  if (shape === 'tube') {
    const value = (Math.PI * (outerDiameterMm ** 4 - innerDiameterMm ** 4)) / (32 * outerDiameterMm);
    return [value, [mm('D', outerDiameterMm), mm('d', innerDiameterMm)]];
  }
  return [(widthMm * thicknessMm ** 2) / 6, [mm('b', widthMm), mm('d', thicknessMm)]];
}

/** The textbook forms of the common cases; the general one elsewhere. */
function bendingText(shape: Geometry['shape'], ratio: number): string {
  const span = ratio === 0 ? 'L' : `(L·(1 − ${ratio.toFixed(3)}))`;
  if (shape === 'round') return `F = σ·π·d³/(8·${span})`;
  if (shape === 'tube') return `F = σ·π·(D⁴ − d⁴)/(8·D·${span})`;
  if (ratio === 0) return 'F = 2·σ·b·d²/(3·L)';
  if (ratio === 1 / 3) return 'F = σ·b·d²/L';
  if (ratio === 1 / 2) return 'F = 4·σ·b·d²/(3·L)';
  return `F = 2·σ·b·d²/(3·${span})`;
}

function elasticTorque(
  tau: number,
  { shape, diameterMm, outerDiameterMm, innerDiameterMm }: Required<Geometry>,
): Figure {
  if (shape === 'tube') {
    const value = (tau * Math.PI * (outerDiameterMm ** 4 - innerDiameterMm ** 4)) / (16 * outerDiameterMm) / 1000;
    return torque(value, 'T = τ·π·(D⁴ − d⁴)/(16·D)', [
      stress('τ', tau),
      mm('D', outerDiameterMm),
      mm('d', innerDiameterMm),
    ]);
  }
  return torque((tau * Math.PI * diameterMm ** 3) / 16 / 1000, 'T = τ·π·d³/16', [
    stress('τ', tau),
    mm('d', diameterMm),
  ]);
}

/**
 * Single-edge bend specimen (ASTM E399 Annex A3): F = K·B·W^1.5/(S·f(a/W)), where 1 MPa·√m = √1000 MPa·√mm,
 * W the width in the direction of the crack, B the thickness, S the span.
 */
function singleEdgeBend(k: number, { widthMm, thicknessMm, spanMm, crackLengthMm }: Required<Geometry>): Figure {
  const shape = crackShape(crackLengthMm / widthMm);
  const value = (k * Math.sqrt(1000) * thicknessMm * widthMm ** 1.5) / (spanMm * shape);
  const inputs: Input[] = [
    ['K', k, 'MPa·√m'],
    mm('B', thicknessMm),
    mm('W', widthMm),
    mm('S', spanMm),
    ['f(a/W)', shape, ''],
  ];
  return { ...force(value, 'F = K·B·W^1.5/(S·f(a/W))', inputs), source: 'ASTM E399 Annex A3' };
}

/** f(a/W) of ASTM E399 Annex A3 for a span of 4·W. */
export function crackShape(x: number): number {
  const upper = 3 * Math.sqrt(x) * (1.99 - x * (1 - x) * (2.15 - 3.93 * x + 2.7 * x ** 2));
  return upper / (2 * (1 + 2 * x) * (1 - x) ** 1.5);
}

const mm = (name: string, value: number): Input => [name, value, 'mm'];
const stress = (name: string, value: number): Input => [name, value, 'MPa'];
const perMm = (name: string, value: number): Input => [name, value, 'N/mm'];

function force(value: number, formula: string, inputs: readonly Input[]): Figure {
  return figure(value, 'N', formula, inputs, STRENGTH_OF_MATERIALS);
}

function torque(value: number, formula: string, inputs: readonly Input[]): Figure {
  return figure(value, 'N·m', formula, inputs, STRENGTH_OF_MATERIALS);
}
