import type { Ask, Band } from './ask.js';
import { loadAt } from './load-at.js';
import type { Material } from '../register/material.js';
import type { Method } from '../register/method.js';
import type { Figure } from './needs.js';
import { LOW_YIELD_SHARE, readsOf } from './recipe-reads.js';

/** The strains that the wanted results read off an extensometer, as fractions. */
export interface StrainsRead {
  /** The smallest one; null where it is unknown. */
  from: number | null;
  to: number;
  /** The strain at the end of the test is unknown, so that `to` is an assumption. */
  assumed: boolean;
  source: string;
}

/** Results that follow the strain to the end of the test; for the others the extensometer may come off earlier. */
const TO_THE_END = [
  'strain-at-peak',
  'plastic-strain-at-peak',
  'strain-at-break',
  'plastic-strain-at-break',
  'work-density-to-break',
];

/** Strain to follow for yield and modulus alone (common practice, no source). */
const EARLY_STRAIN = 0.02;

/** Strain to follow to the end of a yield point plateau (common practice, no source). */
const PLATEAU_STRAIN = 0.05;

/** Strain at break where neither method nor material says it (common practice, no source). */
export const UNKNOWN_BREAK_STRAIN = 0.5;

/** What a method's recipe and the material say about the strains of a test. */
export interface StrainFacts {
  ask: Ask;
  method: Method;
  material: Material | null;
  modulus: Band | null;
  /** Low end of the peak band. */
  peakLow: Figure;
}

/** What the wanted results read: the smallest of their smallest strains, and the largest of their largest. */
export function strainsRead(facts: StrainFacts): StrainsRead {
  const { ask, method, material } = facts;
  const from = ask.results.map((result) => smallestStrain(result, facts)).filter((each) => each !== null);
  const last = Math.max(EARLY_STRAIN, ...ask.results.map((result) => largestStrain(result, facts)));
  const toTheEnd = ask.results.some((each) => TO_THE_END.includes(each));
  const end = method.endStrain ?? material?.breakStrain?.high ?? null;
  const to = toTheEnd ? Math.max(last, end ?? UNKNOWN_BREAK_STRAIN) : last;
  return {
    from: from.length > 0 ? Math.min(...from, to) : null,
    to,
    assumed: toTheEnd && end === null,
    source: toTheEnd ? 'strain at the end of the test' : 'largest strain that the results read',
  };
}

function largestStrain(result: string, { method }: StrainFacts): number {
  const { atStrains, offsetStrains, hardening } = readsOf(method);
  switch (result) {
    case 'modulus':
      return method.modulusStrain?.to ?? 0;
    case 'stress-at-strain':
      return Math.max(0, ...atStrains);
    case 'offset-yield':
      return EARLY_STRAIN + Math.max(0, ...offsetStrains.map((offset) => offset - OFFSET_WITHIN_EARLY));
    case 'yield-point-extension':
      return PLATEAU_STRAIN;
    case 'hardening-exponent':
    case 'hardening-coefficient':
      return hardening ? Math.expm1(hardening.toStrain) : 0;
    default:
      return 0;
  }
}

/** Offsets up to this one lie, with the elastic strain before them, within the early strain. */
const OFFSET_WITHIN_EARLY = 0.01;

/**
 * The smallest strain at which a result is read as a value. The slope that an offset is drawn along is a direction only, so that
 * there the offset itself counts.
 */
function smallestStrain(result: string, facts: StrainFacts): number | null {
  const { atStrains, offsetStrains, hardening } = readsOf(facts.method);
  switch (result) {
    case 'modulus':
      return slopeStart(facts);
    case 'stress-at-strain':
      return atStrains.length > 0 ? Math.min(...atStrains) : null;
    case 'offset-yield':
      return offsetStrains.length > 0 ? Math.min(...offsetStrains) : null;
    case 'hardening-exponent':
    case 'hardening-coefficient':
      return hardening ? Math.expm1(hardening.fromStrain) : null;
    case 'strain-at-break':
      return facts.material?.breakStrain?.low || null;
    default:
      return null;
  }
}

/** Strain at which the slope of the recipe starts: as it says, or by Hooke's law from the stress or share of the peak that it says. */
function slopeStart({ ask, method, modulus, peakLow }: StrainFacts): number | null {
  const { slope } = readsOf(method);
  if (!slope) return method.modulusStrain?.from ?? null;
  if (slope.over === 'strain') return slope.from;
  if (!modulus) return method.modulusStrain?.from ?? null;
  if (slope.over === 'stress') return slope.from / modulus.high;
  const ofPeak = slope.over === 'yield-share' ? LOW_YIELD_SHARE * slope.from : slope.from;
  return (ofPeak * peakLow.value) / loadAt(modulus.high, ask.geometry, method).value;
}
