import type { Ask, Band } from './ask.js';
import { assumed, figure } from './figure.js';
import { loadAt } from './load-at.js';
import type { Material } from '../register/material.js';
import type { Method } from '../register/method.js';
import type { Figure } from './needs.js';
import { LOW_YIELD_SHARE, readsOf } from './recipe-reads.js';
import { UNKNOWN_BREAK_STRAIN } from './strains-read.js';

/** Results whose reduction starts where the slope does. */
const FROM_THE_FOOT = ['modulus', 'offset-yield', 'stiffness'];

const PRACTICE = 'common practice, no source';
/** Where nothing is known of the stiffness, reading is taken to start at this part of the peak (common practice, no source). */
const FOOT_SHARE = 0.05;
/** The least of a peel trace that sticks and slips, as a part of its mean (common practice, no source). */
const LEAST_PEEL_SHARE = 0.25;
/** Rubber hangs below the straight line to its break by about this share at small strains (common practice, no source). */
const SAG_SHARE = 0.5;

/** Young's modulus, MPa: declared before library; null when neither says it. */
export function modulusUsed(ask: Ask, material: Material | null): Band | null {
  return ask.modulusMPa ?? material?.modulusMPa ?? null;
}

/** What the smallest load is derived from. */
export interface LoadFacts {
  ask: Ask;
  method: Method;
  material: Material | null;
  modulus: Band | null;
  /** Low end of the peak band. */
  peakLow: Figure;
}

/**
 * The smallest load that the wanted results read, N or N·m: where the slope of the recipe starts, the load at the smallest strain at
 * which a stress is read, the least of a peel trace; for the others the low end of the peak band.
 */
export function smallestLoad(facts: LoadFacts): Figure {
  const { results } = facts.ask;
  const found = [
    ...(results.some((each) => FROM_THE_FOOT.includes(each)) ? [atSlopeStart(facts)] : []),
    ...(results.includes('stress-at-strain') ? [atSmallestStrain(facts)] : []),
    ...(results.includes('least-peel') ? [shareOfPeak(facts, LEAST_PEEL_SHARE)] : []),
  ];
  const least = found.sort((one, other) => one.value - other.value)[0];
  const { peakLow } = facts;
  return least && least.value <= peakLow.value
    ? least
    : { ...peakLow, formula: `low end of the peak band: ${peakLow.formula}` };
}

function atSlopeStart(facts: LoadFacts): Figure {
  const { method, ask } = facts;
  const { slope } = readsOf(method);
  if (slope?.over === 'peak-share' || slope?.over === 'yield-share') return shareOfSlope(facts, slope);
  if (slope?.over === 'stress') {
    const { value, unit, formula } = loadAt(slope.from, ask.geometry, method);
    return figure(value, unit, formula, [['σ', slope.from, 'MPa']], `${method.designation}: slope from this stress`);
  }
  const strain = slope?.from ?? method.modulusStrain?.from;
  return strain === undefined || !facts.modulus
    ? shareOfPeak(facts, FOOT_SHARE)
    : byHooke(facts, facts.modulus, strain);
}

function shareOfSlope({ method, peakLow }: LoadFacts, slope: { over: string; from: number }): Figure {
  const { value, unit } = peakLow;
  if (slope.over === 'peak-share') {
    const inputs = [['F_lo', value, unit]] as const;
    return figure(
      slope.from * value,
      unit,
      `${slope.from}·F_lo`,
      inputs,
      `${method.designation}: slope from this share`,
    );
  }
  const source = `${method.designation}: slope from ${slope.from} of the yield, which is ${LOW_YIELD_SHARE} of the strength or more; ${PRACTICE}`;
  const inputs = [['F_lo', value, unit]] as const;
  return figure(slope.from * LOW_YIELD_SHARE * value, unit, `${slope.from}·${LOW_YIELD_SHARE}·F_lo`, inputs, source);
}

/** σ = E_low·ε₁ put into the load formula. */
function byHooke({ ask, method }: LoadFacts, modulus: Band, strain: number): Figure {
  const { value, unit, formula, inputs } = loadAt(modulus.low * strain, ask.geometry, method);
  const rest = inputs.slice(1).map((each) => [each.name, each.value, each.unit] as const);
  const own = [['E', modulus.low, 'MPa'], ['ε₁', strain, ''], ...rest] as const;
  const source = `${method.designation}: modulus from strain ${strain}`;
  return figure(value, unit, formula.replace(/[στ]/, 'E·ε₁'), own, source);
}

/** Below the straight line from zero to the end of the test, where rubber and soft plastics lie. */
function atSmallestStrain(facts: LoadFacts): Figure {
  const { method, material, peakLow } = facts;
  const strain = Math.min(...readsOf(method).atStrains);
  if (!Number.isFinite(strain)) return peakLow;
  const end = method.endStrain ?? material?.breakStrain?.high ?? Math.max(strain, UNKNOWN_BREAK_STRAIN);
  const share = SAG_SHARE * Math.min(1, strain / end);
  const inputs = [
    ['ε', strain, ''],
    ['ε_end', end, ''],
    ['F_lo', peakLow.value, peakLow.unit],
  ] as const;
  return assumed(share * peakLow.value, peakLow.unit, `${SAG_SHARE}·(ε/ε_end)·F_lo`, inputs, PRACTICE);
}

function shareOfPeak({ peakLow }: LoadFacts, share: number): Figure {
  const inputs = [['F_lo', peakLow.value, peakLow.unit]] as const;
  return assumed(share * peakLow.value, peakLow.unit, `${share}·F_lo`, inputs, PRACTICE);
}
