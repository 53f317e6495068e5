import type { Geometry, Method } from '#libs/matching/src/index.js';
import { METHODS } from '#seed/library/methods.js';
import type { Law } from './laws.js';
import { bendingOver, component, foam, hardeningMetal, rubber, stiffening, straight, yieldingMetal } from './laws.js';
import type { Recording } from './recording.js';

/** One method of the library with specimens whose answers are known. */
export interface KnownMethod {
  method: Method;
  geometry: Geometry;
  laws: readonly Law[];
  record(law: Law, rows: number): Recording;
  /** How finely this test is recorded, in rows; traces need many. */
  rows: number;
}

const STEEL = hardeningMetal('steel without yield point', { E: 205_000, Rp02: 400, Rm: 520, Ag: 0.08 });
/** It bends from its start: there is no straight part, so that no modulus is known, and its curve says so. */
const STAINLESS = withoutModulus(hardeningMetal('annealed stainless steel', { E: 195_000, Rp02: 230, Rm: 620, Ag: 0.35 }));
const ALUMINIUM = hardeningMetal('aluminium', { E: 70_000, Rp02: 275, Rm: 310, Ag: 0.07 });
const MILD = yieldingMetal('mild steel', { E: 210_000, ReH: 320, plateau: 290, Rm: 440 });
const HIGH_YIELD = yieldingMetal('steel whose upper yield is above its strength', { E: 210_000, ReH: 450, plateau: 400, Rm: 440 });

/** Half of the rows lie in the first two hundredths of strain, as where a test is run slowly up to its yield. */
const SLOW_STRAIN = 0.02;

function strained({ end }: Law, rows: number): Float64Array {
  const slow = Math.min(SLOW_STRAIN, end / 2);
  const half = rows >> 1;
  return Float64Array.from({ length: rows }, (_, row) =>
    row < half ? (slow * row) / half : slow + ((end - slow) * (row - half)) / (rows - 1 - half),
  );
}

interface Way {
  /** N (N·m) for each unit of the law's stress. */
  loadPerStress: number;
  /** mm (degrees) of travel for each unit of its strain. */
  travelPerStrain: number;
  /** mm of extension for each unit of its strain; null without an extensometer. */
  extensionPerStrain: number | null;
  isTorque?: boolean;
}

/** Evenly strained from zero to the end; one more row without load where it breaks. */
function recordedBy({ loadPerStress, travelPerStrain, extensionPerStrain, isTorque = false }: Way): KnownMethod['record'] {
  return (law, rows) => {
    const strains = strained(law, rows);
    const stress = strains.map((strain) => law.stressAt(strain));
    const withBreak = (values: Float64Array, last: number) =>
      law.breaks ? Float64Array.from([...values, last]) : values;
    const [strainEnd, step] = [law.end, strains[1]!];
    return {
      timeS: withBreak(strains.map((_, row) => row / 10), rows / 10),
      load: withBreak(stress.map((each) => each * loadPerStress), 0),
      travel: withBreak(strains.map((each) => each * travelPerStrain), (strainEnd + step) * travelPerStrain),
      extension:
        extensionPerStrain === null
          ? null
          : withBreak(strains.map((each) => each * extensionPerStrain), (strainEnd + step) * extensionPerStrain),
      isTorque,
    };
  };
}

const method = (id: string): Method => METHODS.find((each) => each.id === id)!;

/** The usual sizes of the method, and these. */
function sized(of: Method, sizes: Partial<Geometry> = {}): Geometry {
  const shape = sizes.shape ?? of.shapes[0]!;
  const usual = of.geometry.flatMap(({ key, usual: value, shapes }) =>
    value === undefined || (shapes && !shapes.includes(shape)) ? [] : [[key, value] as const],
  );
  return { ...Object.fromEntries(usual), ...sizes, shape };
}

/** Area by the textbook, worked out here a second time so that the product's own formulas are not asked. */
function areaOf({ shape, widthMm, thicknessMm, diameterMm, areaMm2 }: Geometry): number {
  if (shape === 'round') return (Math.PI / 4) * diameterMm! ** 2;
  return shape === 'thread' ? areaMm2! : widthMm! * thicknessMm!;
}

function axial(id: string, laws: readonly Law[], sizes: Partial<Geometry> = {}, withExtensometer = true): KnownMethod {
  const of = method(id);
  const geometry = sized(of, sizes);
  const lengthMm = of.direction === 'compression' ? geometry.heightMm! : geometry.gripSeparationMm!;
  const gauge = geometry.gaugeLengthMm ?? of.strain?.usualGaugeLengthMm ?? null;
  const record = recordedBy({
    loadPerStress: areaOf(geometry),
    travelPerStrain: lengthMm,
    extensionPerStrain: withExtensometer && of.strain ? gauge : null,
  });
  return { method: of, geometry, laws, record, rows: 3000 };
}

/** σ = 3FL/(2bh²), ε = 6sh/L² (three-point); σ = 3F(L − Li)/(2bh²), ε from the elastic line (four-point); textbook. */
function flexure(id: string, laws: readonly Law[], sizes: Partial<Geometry> = {}): KnownMethod {
  const of = method(id);
  const geometry = sized(of, sizes);
  const { spanMm: span = NaN, thicknessMm: depth = NaN, widthMm: width = NaN } = geometry;
  const inner = of.testType === 'flexure-4' ? span * (of.loadingSpanRatio ?? 1 / 3) : 0;
  const arm = (span - inner) / 2;
  const { bending } = of.reduction as { bending: { deflectionAt: string } };
  const strainPerMm =
    bending.deflectionAt === 'mid-span'
      ? (12 * depth) / (3 * span ** 2 - 4 * arm ** 2)
      : (3 * depth) / (arm * (3 * span - 4 * arm));
  const record = recordedBy({
    loadPerStress: (width * depth ** 2) / (3 * arm),
    travelPerStrain: 1 / strainPerMm,
    extensionPerStrain: of.strain ? 1 / strainPerMm : null,
  });
  return { method: of, geometry, laws, record, rows: 2000 };
}

function plainLoad(id: string, laws: readonly Law[], loadPerStress: (geometry: Geometry) => number, sizes: Partial<Geometry> = {}): KnownMethod {
  const of = method(id);
  const geometry = sized(of, sizes);
  const record = recordedBy({ loadPerStress: loadPerStress(geometry), travelPerStrain: 1, extensionPerStrain: null });
  return { method: of, geometry, laws, record, rows: 1000 };
}

const chordOf = ({ modulusStrain }: Method): readonly [number, number] =>
  modulusStrain ? [modulusStrain.from, modulusStrain.to] : [0, 0];

const rigid = (of: Method, end = 0.06, breaks = true): Law =>
  bendingOver('rigid plastic', { E: 3000, peakStrain: 0.04, end, breaks, modulusStrain: chordOf(of) });
const soft = (of: Method, end = 0.3, breaks = true): Law =>
  bendingOver('soft plastic', { E: 900, peakStrain: 0.08, end, breaks, modulusStrain: chordOf(of) });
const squeezed = (of: Method): Law =>
  bendingOver('plastic under compression', { E: 2400, peakStrain: 0.15, end: 0.12, breaks: false, modulusStrain: chordOf(of) });
const carbon = (of: Method): Law => stiffening('carbon fibres', { E: 130_000, k: 6, end: 0.015, modulusStrain: chordOf(of) });

/** T = τ·π·d³/12 where the bar is plastic throughout (textbook): the torque rises straight and levels out. */
const twisting = component('twisted bar', { stiffness: 2, peakN: 50 });

const brittle = straight('brittle', { E: 30_000, strength: 40 });
const pulled = component('part', { stiffness: 800, peakN: 4000 });

function withoutModulus(law: Law): Law {
  return { ...law, truth: (key, at) => (key === 'modulus' ? null : law.truth(key, at)) };
}

/** The same, stopped before it is highest. */
function endingAt(end: number, law: Law): Law {
  const truth: Law['truth'] = (key, at) => (key === 'peak-stress' ? law.stressAt(end) : law.truth(key, at));
  return { ...law, end, breaks: false, truth };
}

/** Methods whose tests are one ramp. */
export const RAMPED: readonly KnownMethod[] = [
  axial('iso-6892-1', [STEEL, STAINLESS, ALUMINIUM, MILD, HIGH_YIELD], { shape: 'round' }),
  axial('astm-e8', [STEEL, STAINLESS, ALUMINIUM], { shape: 'round' }),
  axial('astm-e111', [straight('steel in its elastic part', { E: 205_000, strength: 400 })], { shape: 'round' }),
  axial('astm-e9', [endingAt(0.06, STEEL)], { shape: 'round' }),
  axial('iso-15630-1', [MILD, STEEL], { shape: 'round' }),
  axial('iso-898-1', [STEEL], {}, false),
  flexure('iso-7438', [straight('plate', { E: 200_000, strength: 600 })], { thicknessMm: 5 }),
  plainLoad('pin-double-shear', [component('pin', { stiffness: 9000, peakN: 20_000 })], () => 1),
  plainLoad('astm-e399', [component('notched bar', { stiffness: 40_000, peakN: 30_000 })], () => 1),
  torsion('astm-e143'),
  axial('iso-527-2', [rigid(method('iso-527-2')), soft(method('iso-527-2'))]),
  axial('iso-527-3', [soft(method('iso-527-3'))], {}, false),
  axial('astm-d638', [rigid(method('astm-d638')), soft(method('astm-d638'))]),
  axial('astm-d882', [soft(method('astm-d882'))], {}, false),
  flexure('iso-178', [rigid(method('iso-178'), 0.045, false)]),
  flexure('astm-d790', [rigid(method('astm-d790'), 0.045, false)]),
  axial('iso-604', [squeezed(method('iso-604'))]),
  axial('astm-d695', [squeezed(method('astm-d695'))]),
  axial('iso-527-4', [carbon(method('iso-527-4')), straight('glass fibres', { E: 40_000, strength: 800 })]),
  axial('astm-d3039', [carbon(method('astm-d3039')), straight('glass fibres', { E: 40_000, strength: 800 })]),
  // τ = F/(2bh) (ASTM D3518): the law is the shear stress, so that a unit of it is 2bh newtons.
  inPlaneShear(),
  // F_sbs = 0.75 F/(bh) (ASTM D2344).
  plainLoad('astm-d2344', [straight('laminate', { E: 100, strength: 60 })], ({ widthMm, thicknessMm }) => (widthMm! * thicknessMm!) / 0.75),
  axial('astm-d6641', [straight('laminate', { E: 60_000, strength: 500 })], {}, false),
  flexure('astm-d7264', [straight('laminate', { E: 55_000, strength: 700 })]),
  flexure('iso-14125', [straight('laminate', { E: 55_000, strength: 700 })]),
  axial('astm-c297', [straight('core', { E: 150, strength: 4 })], {}, false),
  plainLoad('astm-d1002', [straight('bond', { E: 20, strength: 18 })], ({ widthMm, overlapMm }) => widthMm! * overlapMm!),
  plainLoad('astm-d5868', [straight('bond', { E: 15, strength: 12 })], ({ widthMm, overlapMm }) => widthMm! * overlapMm!),
  strip('iso-13934-1'),
  plainLoad('iso-2062', [component('yarn', { stiffness: 0.4, peakN: 20 })], () => 1),
  axial('astm-c39', [brittle], { shape: 'round' }, false),
  axial('en-12390-3', [brittle], { shape: 'rectangle', heightMm: 100 }, false),
  flexure('en-12390-5', [straight('beam', { E: 30_000, strength: 4.5 })]),
  flexure('astm-c1161', [straight('ceramic', { E: 300_000, strength: 380 })]),
  flexure('astm-d143-bending', [straight('wood', { E: 12_000, strength: 80 })]),
  axial('astm-d143-compression', [{ ...bendingOver('wood', { E: 900, peakStrain: 0.02, end: 0.02, breaks: false, modulusStrain: [0, 0] }) }], {}, false),
  plainLoad('component-pull', [pulled], () => 1),
  plainLoad('component-push', [pulled], () => 1),
  plainLoad('saddle-foam-indent', [component('saddle', { stiffness: 30, peakN: 600 })], () => 1),
  axial('iso-37', [rubber('rubber', { c: 1.2, start: 0.2, h: 0.5, end: 4.5 })]),
  axial('astm-d412', [rubber('rubber', { c: 1.2, start: 0.2, h: 0.5, end: 4.5 })]),
  axial('iso-1798', [rubber('foam', { c: 0.03, start: 0.2, h: 0.01, end: 1.2 })], {}, false),
  axial('iso-844', [foam('rigid foam', { p: 0.25, start: 0.01, d: 20, dense: 0.1, end: 0.13 })], { shape: 'rectangle' }, false),
  axial('astm-d1621', [foam('rigid foam', { p: 0.3, start: 0.012, d: 20, dense: 0.1, end: 0.13 })], { shape: 'rectangle' }, false),
];

function torsion(id: string): KnownMethod {
  const of = method(id);
  const geometry = sized(of, { shape: 'round' });
  const law: Law = {
    ...twisting,
    truth: (key) => (key === 'peak-stress' ? (12e3 * 50) / (Math.PI * geometry.diameterMm! ** 3) : twisting.truth(key, null)),
  };
  return { method: of, geometry, laws: [law], record: recordedBy({ loadPerStress: 1, travelPerStrain: 1, extensionPerStrain: null, isTorque: true }), rows: 1000 };
}

function inPlaneShear(): KnownMethod {
  return plainLoad('astm-d3518', [straight('±45° laminate', { E: 500, strength: 60 })], ({ widthMm, thicknessMm }) => 2 * widthMm! * thicknessMm!);
}

function strip(id: string): KnownMethod {
  const of = method(id);
  const geometry = sized(of);
  const law: Law = rubber('fabric', { c: 200, start: 0.05, h: 8000, end: 0.25 });
  const record = recordedBy({ loadPerStress: 1, travelPerStrain: geometry.gripSeparationMm!, extensionPerStrain: null });
  const truth = (key: string) => (key === 'peak-load' ? law.stressAt(law.end) : law.truth(key, null));
  return { method: of, geometry, laws: [{ ...law, truth }], record, rows: 1000 };
}
