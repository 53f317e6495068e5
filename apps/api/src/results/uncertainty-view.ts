import type { StatisticsView } from '#libs/contract/src/index.js';
import type { Method, TestType } from '#libs/matching/src/index.js';
import { exponentsOf, repeatabilityOf, RESULT_KEYS, uncertaintyOfResult } from '#libs/reduction/src/index.js';
import type { DoubtSources, RelativeDoubt, ResultKey, ResultModel, SampleFigures } from '#libs/reduction/src/index.js';

/** What is known about the equipment that a batch ran on, as half-widths in percent; null where it is not known. */
export interface Doubts {
  /** Limit of the load cell's class: class 1 is 1 %. */
  forcePct: number | null;
  /** Limit of the extensometer's class; null when none was used. */
  extensionPct: number | null;
}

/** Limit of error of a length measured with a caliper or micrometer, percent (ISO 6892-1 annex allows 1 % of the area; common practice, no source for each length). */
const LENGTH_PCT = 0.5;

const MODELS: Partial<Record<TestType, ResultModel>> = {
  'flexure-3': 'bending',
  'flexure-4': 'bending',
  torsion: 'torsion',
  peel: 'per-width',
  tear: 'per-width',
  strip: 'per-width',
  component: 'load',
};

const WORDS: Record<string, string> = {
  force: 'Force (class of the load cell)',
  extension: 'Extension (class of the extensometer)',
  width: 'Width',
  thickness: 'Thickness',
  diameter: 'Diameter',
  gaugeLength: 'Gauge length',
  span: 'Support span',
  repeatability: 'Scatter of the specimens',
};

/**
 * Expanded uncertainty (k = 2) of the mean of a result, with its budget: class limits and lengths as rectangular
 * half-widths, scatter as s/√n (GUM, JCGM 100:2008, 5.1.6).
 *
 * @returns null for a result that follows no product of measured quantities, or whose equipment is not known
 */
export function uncertaintyView(key: string, figures: SampleFigures, method: Method, doubts: Doubts): StatisticsView['uncertainty'] {
  const exponents = isResultKey(key) ? exponentsOf(key, MODELS[method.testType] ?? 'axial') : null;
  if (!exponents || doubts.forcePct === null) return null;
  if ('extension' in exponents && doubts.extensionPct === null) return null;
  const repeatability = repeatabilityOf(figures.mean, figures.sd, figures.n);
  const sources = { ...sourcesOf(method, doubts), ...(repeatability ? { repeatability } : {}) };
  const found = uncertaintyOfResult(figures.mean, exponents, sources);
  if (!found) return null;
  const { lines, k } = found.budget;
  return {
    expanded: found.expanded,
    k,
    budget: lines.map(({ name, contribution, share }) => ({
      source: WORDS[name] ?? name,
      value: (Math.abs(figures.mean) * Math.abs(contribution)) / 100,
      contributionPct: share * 100,
    })),
  };
}

function isResultKey(key: string): key is ResultKey {
  return (RESULT_KEYS as readonly string[]).includes(key);
}

function sourcesOf({ shapes }: Method, { forcePct, extensionPct }: Doubts): DoubtSources {
  const half = (amount: number): RelativeDoubt[] => [{ kind: 'rectangular', amount, degreesOfFreedom: null }];
  const round = shapes.every((shape) => shape === 'round' || shape === 'tube');
  return {
    ...(forcePct === null ? {} : { force: half(forcePct) }),
    ...(extensionPct === null ? {} : { extension: half(extensionPct), gaugeLength: half(extensionPct) }),
    ...(round ? { diameter: half(LENGTH_PCT) } : { width: half(LENGTH_PCT), thickness: half(LENGTH_PCT) }),
    span: half(LENGTH_PCT),
  };
}
