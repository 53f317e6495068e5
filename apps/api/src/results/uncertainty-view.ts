import type { StatisticsView } from '#libs/contract/src/index.js';
import type { Geometry, Method, TestType } from '#libs/matching/src/index.js';
import { exponentsOf, repeatabilityOf, RESULT_KEYS, uncertaintyOfResult } from '#libs/reduction/src/index.js';
import type {
  DoubtSources,
  RelativeDoubt,
  ResultKey,
  ResultModel,
  SampleFigures,
  UncertaintyComponent,
} from '#libs/reduction/src/index.js';
import { allowedPct } from './strain-doubt.js';
import type { ExtensometerDoubt, StrainReads } from './strain-doubt.js';

/** What is known about the equipment that a batch ran on; null where it is not known. */
export interface Doubts {
  /** Limit of the load cell's class, percent: class 1 is 1 %. */
  forcePct: number | null;
  /** Null when no extensometer was used. */
  extensometer: ExtensometerDoubt | null;
  /** Sizes of the specimens: which lengths entered, and how large they are. */
  geometry: Geometry;
}

/** What one result is, for its budget. */
export interface Figure {
  key: string;
  /** About the size of the result, in its unit. */
  value: number;
  /** What it reads of the strain; null where nobody kept it. */
  reads: StrainReads | null;
}

/** Limit of error of a length that is measured with a fitting instrument, percent (ISO 6892-1 annex allows 1 % of the area; common practice, no source for each length), … */
const LENGTH_PCT = 0.5;
/** … and of the instrument itself, mm: a film is measured to 1 µm (ISO 4593, from memory), other lengths to 0.01 mm, long ones to 0.03 mm (common practice, no source). */
const INSTRUMENT_MM = [
  { upToMm: 0.5, limitMm: 0.001 },
  { upToMm: 25, limitMm: 0.01 },
  { upToMm: Infinity, limitMm: 0.03 },
];

/** Limit of error of a crosshead's travel where it stands for the strain, percent (common practice, no source). */
const CROSSHEAD_PCT = 1;

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
  force: 'Force (widest class of the load cell)',
  extension: 'Extension (class of the extensometer, or crosshead)',
  area: 'Area of the section',
  width: 'Width',
  thickness: 'Thickness',
  diameter: 'Diameter',
  gaugeLength: 'Gauge length',
  span: 'Support span',
  overlap: 'Overlap',
  slope: 'Slope that it is drawn along (extensometer or crosshead)',
  repeatability: 'Scatter of the specimens',
};

/** Coverage of k = 2 for a normal distribution: with few degrees of freedom Student's t is taken at the same (JCGM 100:2008, G.4). */
const COVERAGE = { way: 'confidence', confidence: 0.954_499_736 } as const;

/**
 * Expanded uncertainty of the mean of a result, with its budget: class limits and lengths as rectangular half-widths, scatter as s/√n
 * (GUM, JCGM 100:2008, 5.1.6), k by the effective degrees of freedom (Welch–Satterthwaite, G.4.1).
 *
 * @returns null for a result that follows no product of measured quantities, or whose equipment is not known
 */
export function uncertaintyView(
  figure: Omit<Figure, 'value'>,
  figures: SampleFigures,
  method: Method,
  doubts: Doubts,
): StatisticsView['uncertainty'] {
  const repeatability = repeatabilityOf(figures.mean, figures.sd, figures.n);
  const found = doubtOf({ ...figure, value: figures.mean }, method, doubts, repeatability ? { repeatability } : {});
  if (!found) return null;
  const { lines, k, effectiveDegreesOfFreedom } = found.budget;
  return {
    expanded: found.expanded,
    k,
    degreesOfFreedom: effectiveDegreesOfFreedom === null ? null : Math.floor(effectiveDegreesOfFreedom),
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
 * @returns in the unit of the figure; null as for {@link uncertaintyView}
 */
export function expandedOfOne(figure: Figure, method: Method, doubts: Doubts): number | null {
  return doubtOf(figure, method, doubts)?.expanded ?? null;
}

function doubtOf({ key, value, reads }: Figure, method: Method, doubts: Doubts, more: DoubtSources = {}) {
  const plain = key.split('@')[0]!;
  const model = MODELS[method.testType] ?? 'axial';
  const exponents = isResultKey(plain) ? exponentsOf(plain, model, reads?.sensitivity.strain) : null;
  const { extensometer, forcePct } = doubts;
  if (!exponents || forcePct === null) return null;
  const readsByCrosshead = extensometer === null && (reads?.sensitivity.strain ?? 0) !== 0;
  if ('extension' in exponents && extensometer === null && !readsByCrosshead) return null;
  const extensionPct = extensometer ? allowedPct(extensometer, strainOf(plain, reads)) : CROSSHEAD_PCT;
  const sources = { ...sourcesOf(doubts, model, extensionPct), ...more };
  return uncertaintyOfResult(value, exponents, sources, COVERAGE, slopeTerm(reads, extensometer));
}

function isResultKey(key: string): key is ResultKey {
  return (RESULT_KEYS as readonly string[]).includes(key);
}

/** The strain that the class limit counts on: a slope rests on a difference of two. */
function strainOf(key: string, reads: StrainReads | null): number | null {
  if (key === 'modulus' || key === 'stiffness') return reads?.slope ? reads.slope.to - reads.slope.from : null;
  return reads?.at ?? null;
}

/** What is drawn along a slope moves with its error. */
function slopeTerm(reads: StrainReads | null, extensometer: ExtensometerDoubt | null): UncertaintyComponent[] {
  const sensitivity = reads?.sensitivity.slope ?? 0;
  if (!reads?.slope || sensitivity === 0) return [];
  const limitPct = extensometer ? allowedPct(extensometer, reads.slope.to - reads.slope.from) : CROSSHEAD_PCT;
  return [{ ...half(limitPct), name: 'slope', sensitivity }];
}

const half = (amount: number): RelativeDoubt => ({ kind: 'rectangular', amount, degreesOfFreedom: null });

function sourcesOf(doubts: Doubts, model: ResultModel, extensionPct: number): DoubtSources {
  const { forcePct, extensometer, geometry } = doubts;
  return {
    ...(forcePct === null ? {} : { force: [half(forcePct)] }),
    extension: [half(extensionPct)],
    ...(extensometer === null ? {} : { gaugeLength: [half(extensometer.limits.gaugeLengthPct)] }),
    ...sectionDoubts(geometry, model),
    span: [half(lengthPct(geometry.spanMm))],
    overlap: [half(lengthPct(geometry.overlapMm))],
  };
}

/** The stress area of a thread is a nominal one (ISO 898-1, from memory, high). A tube's area (D² − d²) is no product of its diameters: it is taken as twice as uncertain as one of them; common practice, no source. */
function sectionDoubts({ shape, ...sizes }: Geometry, model: ResultModel): DoubtSources {
  if (shape === 'thread') return {};
  if (shape === 'tube' && model === 'axial') return { area: [half(2 * lengthPct(sizes.outerDiameterMm))] };
  if (shape === 'round' || shape === 'tube')
    return { diameter: [half(lengthPct(sizes.diameterMm ?? sizes.outerDiameterMm))] };
  return { width: [half(lengthPct(sizes.widthMm))], thickness: [half(lengthPct(sizes.thicknessMm))] };
}

/** Percent of a length; where it is not known, that of a length that suits its instrument. */
export function lengthPct(lengthMm: number | undefined): number {
  if (lengthMm === undefined) return LENGTH_PCT;
  const { limitMm } = INSTRUMENT_MM.find(({ upToMm }) => lengthMm <= upToMm)!;
  return Math.max(LENGTH_PCT, (100 * limitMm) / lengthMm);
}
