import type { Method } from '../register/method.js';

/** What a method's recipe says about the strains and forces that it reads; the reduction core knows the whole recipe. */
export interface RecipeReads {
  /** Where the slope is fitted: strains as fractions, stresses in MPa (N for a component), or shares of the peak or of the yield. */
  slope: { over: SlopeOver; from: number } | null;
  /** Offsets of the proof strengths, as strain fractions. */
  offsetStrains: readonly number[];
  /** Strains at which a stress is read, as fractions. */
  atStrains: readonly number[];
  /** True strains between which strain hardening is fitted. */
  hardening: { fromStrain: number; toStrain: number } | null;
}

type SlopeOver = 'strain' | 'stress' | 'peak-share' | 'yield-share';

/** A soft metal yields at this share of its strength: annealed copper 69 of 220 MPa (Callister, App. B, from memory, high). */
export const LOW_YIELD_SHARE = 0.3;

/** Reads a recipe as it lies in the register: a part that is absent or of another form counts as not there. */
export function readsOf({ reduction }: Pick<Method, 'reduction'>): RecipeReads {
  const bounds = at(at(reduction, 'slope'), 'bounds');
  const over = at(bounds, 'over');
  const hardening = at(reduction, 'hardening');
  return {
    slope: isOver(over) && isNumber(at(bounds, 'from')) ? { over, from: Number(at(bounds, 'from')) } : null,
    offsetStrains: numbers(at(reduction, 'offsetStrains')),
    atStrains: numbers(at(reduction, 'atStrains')),
    hardening: isNumber(at(hardening, 'toStrain'))
      ? { fromStrain: Number(at(hardening, 'fromStrain')), toStrain: Number(at(hardening, 'toStrain')) }
      : null,
  };
}

function at(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[key] : undefined;
}

function isOver(value: unknown): value is SlopeOver {
  return value === 'strain' || value === 'stress' || value === 'peak-share' || value === 'yield-share';
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}

function numbers(value: unknown): number[] {
  return Array.isArray(value) ? value.filter(isNumber) : [];
}
