import type { StatisticsView } from '#libs/contract/src/index.js';
import type { Method, Shape, TestType } from '#libs/matching/src/index.js';
import { exponentsOf, repeatabilityOf, RESULT_KEYS, uncertaintyOfResult } from '#libs/reduction/src/index.js';
import type { DoubtSources, RelativeDoubt, ResultKey, ResultModel, SampleFigures } from '#libs/reduction/src/index.js';

/** What is known about the equipment that a batch ran on, as half-widths in percent; null where it is not known. */
export interface Doubts {
  /** Limit of the load cell's class: class 1 is 1 %. */
  forcePct: number | null;
  /** Limit of the extensometer's class; null when none was used. */
  extensionPct: number | null;
  /** Section of the specimens: which lengths entered. */
  shape: Shape;
}

/** Limit of error of a length measured with a caliper or micrometer, percent (ISO 6892-1 annex allows 1 % of the area; common practice, no source for each length). */
const LENGTH_PCT = 0.5;

const MODELS: Partial<Record<TestType, ResultModel>> = {
  'flexure-3': 'bending',
  'flexure-4': 'bending',
  torsion: 'torsion',
  peel: 'per-width',
  tear: 'per-thickness',
  'lap-shear': 'lap-shear',
  strip: 'per-width',
  component: 'load',
};

const WORDS: Record<string, string> = {
  force: 'Force (class of the load cell)',
  extension: 'Extension (class of the extensometer)',
  area: 'Area of the section',
  width: 'Width',
  thickness: 'Thickness',
  diameter: 'Diameter',
  gaugeLength: 'Gauge length',
  span: 'Support span',
  overlap: 'Overlap',
  repeatability: 'Scatter of the specimens',
};

/**
 * Expanded uncertainty (k = 2) of the mean of a result, with its budget: class limits and lengths as rectangular
 * half-widths, scatter as s/√n (GUM, JCGM 100:2008, 5.1.6).
 *
 * @returns null for a result that follows no product of measured quantities, or whose equipment is not known
 */
export function uncertaintyView(
  key: string,
  figures: SampleFigures,
  method: Method,
  doubts: Doubts,
): StatisticsView['uncertainty'] {
  const repeatability = repeatabilityOf(figures.mean, figures.sd, figures.n);
  const found = doubtOf(key, figures.mean, method, doubts, repeatability ? { repeatability } : {});
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

/**
 * Expanded uncertainty (k = 2) of one specimen's result, from the equipment and the lengths alone: how specimens scatter says nothing
 * about how well one of them was measured.
 *
 * @param value of about the size of the result, in its unit
 * @returns in the same unit; null as for {@link uncertaintyView}
 */
export function expandedOfOne(key: string, value: number, method: Method, doubts: Doubts): number | null {
  return doubtOf(key, value, method, doubts)?.expanded ?? null;
}

function doubtOf(key: string, value: number, method: Method, doubts: Doubts, more: DoubtSources = {}) {
  const plain = key.split('@')[0]!; // the strain at which it was read does not enter
  const model = MODELS[method.testType] ?? 'axial';
  const exponents = isResultKey(plain) ? exponentsOf(plain, model) : null;
  if (!exponents || doubts.forcePct === null) return null;
  if ('extension' in exponents && doubts.extensionPct === null) return null;
  return uncertaintyOfResult(value, exponents, { ...sourcesOf(doubts, model), ...more });
}

function isResultKey(key: string): key is ResultKey {
  return (RESULT_KEYS as readonly string[]).includes(key);
}

function sourcesOf({ forcePct, extensionPct, shape }: Doubts, model: ResultModel): DoubtSources {
  const half = (amount: number): RelativeDoubt[] => [{ kind: 'rectangular', amount, degreesOfFreedom: null }];
  return {
    ...(forcePct === null ? {} : { force: half(forcePct) }),
    ...(extensionPct === null ? {} : { extension: half(extensionPct), gaugeLength: half(extensionPct) }),
    ...sectionDoubts(shape, model, half),
    span: half(LENGTH_PCT),
    overlap: half(LENGTH_PCT),
  };
}

/** A tube's area (D² − d²) is no product of its diameters: it is taken as twice as uncertain as one of them; common practice, no source. */
function sectionDoubts(shape: Shape, model: ResultModel, half: (amount: number) => RelativeDoubt[]): DoubtSources {
  if (shape === 'tube' && model === 'axial') return { area: half(2 * LENGTH_PCT) };
  if (shape === 'round' || shape === 'tube') return { diameter: half(LENGTH_PCT) };
  return { width: half(LENGTH_PCT), thickness: half(LENGTH_PCT) };
}
