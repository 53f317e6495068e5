import type { Method } from '../register/method.js';

/** What a method's recipe says about the strains and forces that it reads; the reduction core knows the whole recipe. */
export interface RecipeReads {
  /** Where the slope is fitted: strains as fractions, stresses in MPa (N for a component), or shares of the peak. */
  slope: { over: 'strain' | 'stress' | 'peak-share'; from: number } | null;
  /** Offsets of the proof strengths, as strain fractions. */
  offsetStrains: readonly number[];
  /** Strains at which a stress is read, as fractions. */
  atStrains: readonly number[];
  /** True strains between which strain hardening is fitted. */
  hardening: { fromStrain: number; toStrain: number } | null;
}

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

function isOver(value: unknown): value is 'strain' | 'stress' | 'peak-share' {
  return value === 'strain' || value === 'stress' || value === 'peak-share';
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}

function numbers(value: unknown): number[] {
  return Array.isArray(value) ? value.filter(isNumber) : [];
}
