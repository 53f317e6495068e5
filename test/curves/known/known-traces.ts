import type { Geometry, Method } from '#libs/matching/src/index.js';
import { METHODS } from '#seed/library/methods.js';
import type { KnownMethod } from './known-methods.js';
import type { Law } from './laws.js';
import { component, foam } from './laws.js';
import type { Recording } from './recording.js';

const method = (id: string): Method => METHODS.find((each) => each.id === id)!;
const usual = (of: Method): Geometry =>
  ({
    ...Object.fromEntries(of.geometry.flatMap(({ key, usual: value }) => (value === undefined ? [] : [[key, value]]))),
    shape: of.shapes[0]!,
  });

const STEP_MM = 0.05;

function traced(travelMm: number, loadAt: (travel: number) => number, isCompression = false): Recording {
  const rows = Math.round(travelMm / STEP_MM) + 1;
  const travel = Float64Array.from({ length: rows }, (_, row) => row * STEP_MM);
  return {
    timeS: travel.map((_, row) => row / 20),
    load: travel.map((mm) => loadAt(mm) * (isCompression ? 1 : 1)),
    travel,
    extension: null,
    isTorque: false,
  };
}

/**
 * A bond that holds 3 N/mm over its first 25 mm and 2 N/mm after it, with sticks and slips of ±0.2 N/mm every 2 mm of bond. Both arms
 * (or the free arm) pay out in T and 180° peel, so that the crosshead travels twice the bond line.
 */
function peel(id: string, travelPerBond: number, bondMm: number, leaveOutMm = 25): KnownMethod {
  const of = method(id);
  const geometry = usual(of);
  const forceAt = (travel: number) => {
    const bond = travel / travelPerBond;
    const level = bond < leaveOutMm ? 3 : 2;
    return geometry.widthMm! * Math.min(level, bond * 4) + geometry.widthMm! * 0.2 * Math.sin(Math.PI * bond);
  };
  const truths: Record<string, number> = { 'mean-peel': 2, 'highest-peel': 2.2, 'least-peel': 1.8 };
  const law: Law = {
    ...{ name: 'bond', stressAt: () => NaN, end: bondMm, breaks: false },
    truth: (key) => truths[key] ?? null,
  };
  return { method: of, geometry, laws: [law], record: () => traced(bondMm * travelPerBond, forceAt), rows: 0 };
}

/** Sawtooth of 46 teeth from 20 N up to 34 N over 150 mm; the first quarter, before the tear settles, has peaks of 45 N. */
function tear(): KnownMethod {
  const of = method('iso-13937-2');
  const toothMm = 150 / 46;
  const forceAt = (travel: number) => {
    const share = (travel % toothMm) / toothMm;
    const top = travel < 36 ? 45 : 34;
    return share < 0.8 ? 20 + ((top - 20) * share) / 0.8 : top - ((top - 20) * (share - 0.8)) / 0.2;
  };
  const truths: Record<string, number> = { 'mean-tear-peaks': 34, 'median-tear-peaks': 34 };
  const law: Law = {
    ...{ name: 'fabric', stressAt: () => NaN, end: 150, breaks: false },
    truth: (key) => truths[key] ?? null,
  };
  return { method: of, geometry: usual(of), laws: [law], record: () => traced(150, forceAt), rows: 0 };
}

/** One rise and one break: the tear strength is the highest force per thickness. */
function angleTear(): KnownMethod {
  const of = method('iso-34-1');
  const geometry = usual(of);
  const rise = component('rubber angle', { stiffness: 2, peakN: 80 });
  const truths: Record<string, number> = { 'peak-load': 80, 'peak-stress': 80 / geometry.thicknessMm! };
  return {
    ...{ method: of, geometry, rows: 0 },
    laws: [{ ...rise, truth: (key) => truths[key] ?? null }],
    record: () => traced(rise.end, rise.stressAt),
  };
}

/** Four loadings to 70 %; each is softer than the one before, and the value at 40 % is that of the fourth. */
function softFoam(): KnownMethod {
  const of = method('iso-3386-1');
  const geometry = usual(of);
  const area = geometry.widthMm! * geometry.thicknessMm!;
  const height = geometry.heightMm!;
  const first = foam('flexible foam', { p: 0.004, start: 0.03, d: 0.05, dense: 0.5, end: 0.7 });
  const softening = [1.3, 1.1, 1.03, 1];
  const legMm = 0.7 * height;
  const forceAt = (path: number) => {
    const leg = Math.min(Math.floor(path / legMm), 7);
    const along = path - leg * legMm;
    const depth = leg % 2 === 0 ? along : legMm - along;
    return area * first.stressAt(depth / height) * softening[leg >> 1]! * (leg % 2 === 0 ? 1 : 0.7);
  };
  const recorded = traced(8 * legMm, forceAt);
  const travel = recorded.travel.map((path) => {
    const leg = Math.min(Math.floor(path / legMm), 7);
    return leg % 2 === 0 ? path - leg * legMm : legMm - (path - leg * legMm);
  });
  return { method: of, geometry, laws: [first], record: () => ({ ...recorded, travel }), rows: 0 };
}

/** Methods whose tests are traces or go to and fro. */
export const TRACED: readonly KnownMethod[] = [
  peel('astm-d1876', 2, 200),
  peel('iso-11339', 2, 140),
  peel('iso-8510-1', 1, 140),
  peel('iso-8510-2', 2, 140),
  peel('astm-d3330', 2, 110),
  peel('astm-f88', 2, 10, 0.9),
  tear(),
  angleTear(),
  softFoam(),
];
