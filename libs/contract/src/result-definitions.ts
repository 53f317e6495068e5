import type { Geometry, Method } from '#libs/matching/src/index.js';
import type { ReductionRecipe, ResultKey } from '#libs/reduction/src/index.js';

/** What settles how a result of a batch was found: the method in the version it was agreed with, and the sizes that were asked for. */
export interface ResultContext {
  method: Pick<Method, 'testType' | 'reduction' | 'strain' | 'loadingSpanRatio'>;
  geometry: Pick<Geometry, 'gaugeLengthMm' | 'gripSeparationMm' | 'spanMm'>;
}

interface Definition {
  testType: string;
  recipe: Partial<ReductionRecipe>;
  /** The strain (mm for a component) or offset that the key names, as a fraction; null where it names none. */
  at: number | null;
  /** What strain is over, in words; null where no length is known. */
  over: string | null;
  /** Original gauge length of the marks or the extensometer, in words. */
  gaugeLength: string;
  /** The span of a bending test, in words. */
  span: string;
}

/**
 * How a result is defined, as it stands beside it in a report: which stress, at which strain, over which length. Terms as in
 * ISO 6892-1, ISO 527-1, ISO 178, ISO 604, ISO 844, ISO 10275 and ISO 34-1 (from memory, high); the figures are those of the recipe.
 *
 * @param key may say at which strain it was read: `stress-at-strain@0.1`
 * @returns null for a key that nobody defined, as a figure of the lab's own
 */
export function resultDefinition(key: string, { method, geometry }: ResultContext): string | null {
  const [plain = key, at] = key.split('@');
  if (!Object.hasOwn(DEFINITIONS, plain)) return null;
  const { testType, loadingSpanRatio } = method;
  const recipe = method.reduction as Partial<ReductionRecipe>;
  return DEFINITIONS[plain as Defined]({
    ...{ testType, recipe },
    at: at === undefined ? null : Number(at),
    over: strainLength({ method, geometry }),
    gaugeLength: gaugeLength({ method, geometry }),
    span: spanOf(
      geometry.spanMm ?? recipe.bending?.spanMm,
      testType === 'flexure-4' ? (loadingSpanRatio ?? null) : null,
    ),
  });
}

type Defined = ResultKey | 'yield-point-extension';

const DEFINITIONS: Readonly<Record<Defined, (of: Definition) => string>> = {
  'peak-load': ({ testType, recipe }) => `highest ${testType === 'torsion' ? 'torque' : 'force'}${upTo(recipe)}`,
  'peak-stress': strength,
  'strain-at-peak': ({ over, recipe }) =>
    `total strain, elastic part included, at the highest force${upTo(recipe)}${of(over)}`,
  'plastic-strain-at-peak': ({ over }) =>
    `strain at the highest force less its elastic part, stress ÷ slope${of(over)}`,
  'strain-at-break': ({ over, recipe }) => `total strain, elastic part included, ${atBreak(recipe)}${of(over)}`,
  'plastic-strain-at-break': ({ over, recipe }) =>
    `strain ${atBreak(recipe)}, less its elastic part, stress ÷ slope${of(over)}`,
  'stress-at-break': ({ recipe }) => `stress ${atBreak(recipe)}`,
  modulus: ({ recipe, over }) => `slope of stress over strain, ${slopeWords(recipe)}${of(over)}`,
  'offset-yield': ({ recipe, at }) =>
    `${named('Rp', at ?? recipe.offsetStrains?.[0])}proof strength: stress where the curve meets the line of the slope moved along by ${pct(at ?? recipe.offsetStrains?.[0])} plastic extension; slope ${slopeWords(recipe)}`,
  'upper-yield': ({ recipe }) =>
    `highest stress before the first drop of at least ${pct(dropOf(recipe))} that lasts ${pct(recipe.yieldPoint?.lastingStrain ?? STANDARD_LASTING)} strain`,
  'lower-yield': () => 'lowest stress during plastic yielding, the first transient left out',
  'stress-at-strain': stressAtStrain,
  'energy-to-peak': ({ testType }) => `${work(testType)} up to the highest force`,
  'energy-to-break': ({ testType, recipe }) => `${work(testType)} ${upToBreak(recipe)}`,
  'work-density-to-break': ({ over, recipe }) => `area under stress over strain ${upToBreak(recipe)}${of(over)}`,
  'hardening-exponent': ({ recipe }) => `n of σ = K·εⁿ in true stress and true strain, ${hardeningWords(recipe)}`,
  'hardening-coefficient': ({ recipe }) => `K of σ = K·εⁿ in true stress and true strain, ${hardeningWords(recipe)}`,
  'mean-peel': ({ recipe }) => `mean force over the width, ${traceWords(recipe)}`,
  'least-peel': ({ recipe }) => `lowest force over the width, ${traceWords(recipe)}`,
  'highest-peel': ({ recipe }) => `highest force over the width, ${traceWords(recipe)}`,
  'mean-tear-peaks': ({ recipe }) => `mean of the peaks of the trace, ${traceWords(recipe)}`,
  'median-tear-peaks': ({ recipe }) => `median of the peaks of the trace, ${traceWords(recipe)}`,
  stiffness: ({ testType, recipe }) =>
    `slope of ${testType === 'torsion' ? 'torque over angle' : 'force over travel'}, ${slopeWords(recipe)}`,
  'travel-at-peak': ({ testType }) =>
    `${testType === 'torsion' ? 'angle' : 'travel'} from the start to the highest load`,
  'elongation-after-fracture': ({ gaugeLength }) =>
    `A = (Lu − L0)/L0, permanent elongation measured on the marks after fracture, ${gaugeLength}`,
  'reduction-of-area': () => 'Z = (S0 − Su)/S0, least section after fracture measured by hand',
  'yield-point-extension': ({ gaugeLength }) =>
    `extension from the upper yield to where uniform hardening starts, ${gaugeLength}`,
};

/** What divides the highest load, by type of test. */
const STRENGTH: Readonly<Record<string, (of: Definition) => string>> = {
  'flexure-3': ({ span }) => `highest stress at the outer surface by beam theory, ${span}`,
  'flexure-4': ({ span }) => `highest stress at the outer surface by beam theory, ${span}`,
  'lap-shear': () => 'highest force over the area of the overlap',
  'short-beam': () => '0.75 × highest force over width × thickness',
  'in-plane-shear': () => 'highest force over twice the section',
  'double-shear': () => 'highest force over twice the section',
  peel: () => 'highest force over the width',
  strip: () => 'highest force over the width',
  tear: () => 'highest force over the thickness',
  torsion: ({ recipe }) =>
    `shear stress at the surface at the highest torque, section taken as ${recipe.torsionStress === 'plastic' ? 'fully plastic' : 'elastic'}`,
  fracture: () => 'stress intensity at the highest force, from force, sizes and crack length',
  component: () => 'highest force; no section divides it',
};

function strength(definition: Definition): string {
  const { testType, recipe } = definition;
  const words = STRENGTH[testType]?.(definition) ?? 'highest force over the original section';
  const hardens = recipe.yieldPoint?.strengthAfter ? '; with a yield point, the highest after it' : '';
  return `${words}${upTo(recipe)}${hardens}`;
}

function stressAtStrain({ testType, recipe, at, over }: Definition): string {
  const where = at ?? recipe.atStrains?.[0];
  if (testType === 'component') return `force where the travel first reaches ${where ?? '–'} mm`;
  const loading = recipe.loading === undefined ? '' : `, in loading ${recipe.loading}`;
  return `${named('σ at ', where)}stress where the strain first reaches ${pct(where)}${of(over)}${loading}`;
}

/** Longer figures come from binary fractions. */
const DIGITS = 6;

const pct = (fraction: number | undefined): string =>
  fraction === undefined ? 'the strain of the method' : `${percent(fraction)} %`;
const percent = (fraction: number): number => Number((fraction * 100).toPrecision(DIGITS));
const named = (symbol: string, fraction: number | undefined): string =>
  fraction === undefined ? '' : `${symbol}${percent(fraction)}${symbol.endsWith(' ') ? ' %' : ''}, `;
const of = (over: string | null): string => (over === null ? '' : `, ${over}`);
const upTo = ({ peakUpToStrain }: Partial<ReductionRecipe>): string =>
  peakUpToStrain === undefined ? '' : `, up to ${pct(peakUpToStrain)} strain`;
const dropOf = ({ yieldPoint }: Partial<ReductionRecipe>): number => yieldPoint?.dropShare ?? STANDARD_DROP;
const work = (testType: string): string =>
  testType === 'torsion' ? 'area under torque over angle' : 'area under force over travel';

/** ISO 6892-1 (from memory), as the reduction takes it where a recipe names none. */
const STANDARD_DROP = 0.005;
const STANDARD_LASTING = 0.0005;

const atBreak = (recipe: Partial<ReductionRecipe>): string => `at ${breakWords(recipe)}`;
const upToBreak = (recipe: Partial<ReductionRecipe>): string => `up to ${breakWords(recipe)}`;

function breakWords({ break: end }: Partial<ReductionRecipe>): string {
  return end?.way === 'load-drop'
    ? `break (last point before the force falls below ${pct(end.share)} of its highest)`
    : 'the end of the record';
}

const BOUNDS: Readonly<Record<string, string>> = {
  'peak-share': 'of the peak',
  'yield-share': 'of the 0.2 % offset yield',
  strain: 'strain',
};

function slopeWords({ slope, kind }: Partial<ReductionRecipe>): string {
  if (!slope) return 'by the method';
  const { over, from, to } = slope.bounds;
  const way = slope.way === 'chord' ? 'chord' : 'regression';
  const words = BOUNDS[over];
  const isTravel = over === 'strain' && kind === 'component';
  if (words === undefined || isTravel)
    return `${way} between ${from} and ${to} ${isTravel ? 'mm' : kind === 'component' ? 'N' : 'MPa'}`;
  return `${way} between ${percent(from)} % and ${percent(to)} % ${words}`;
}

function hardeningWords({ hardening }: Partial<ReductionRecipe>): string {
  if (!hardening) return 'between the strains of the method';
  const { fromStrain, toStrain, strain } = hardening;
  return `between ${percent(fromStrain)} % and ${percent(toStrain)} % ${strain} strain`;
}

function traceWords({ trace }: Partial<ReductionRecipe>): string {
  if (!trace) return 'over the trace';
  const leftOut = trace.leaveOutShare ? `, without the first ${pct(trace.leaveOutShare)} of it` : '';
  return `from ${trace.fromMm} mm to ${trace.toMm} mm of the trace${leftOut}`;
}

function spanOf(spanMm: number | undefined, ratio: number | null): string {
  if (spanMm === undefined) return 'span by the method';
  return ratio === null
    ? `span ${spanMm} mm`
    : `span ${spanMm} mm, loads ${Number((spanMm * ratio).toPrecision(DIGITS))} mm apart`;
}

/** The length that strain is over: the extensometer's, and what stands in for it where there was none. */
function strainLength({ method, geometry }: ResultContext): string | null {
  const { kind } = method.reduction as Partial<ReductionRecipe>;
  if (kind !== 'tension' && kind !== 'compression') return null;
  const gauge = geometry.gaugeLengthMm ?? method.strain?.usualGaugeLengthMm ?? null;
  const grips = geometry.gripSeparationMm;
  const between = grips === undefined ? null : `grip separation ${grips} mm`;
  const crosshead = kind === 'compression' ? 'height of the specimen' : between;
  if (gauge === null) return crosshead && `over the ${crosshead}`;
  return `over the gauge length ${gauge} mm${crosshead ? ` (without an extensometer over the ${crosshead})` : ''}`;
}

function gaugeLength({ method, geometry }: ResultContext): string {
  const length = geometry.gaugeLengthMm ?? method.strain?.usualGaugeLengthMm;
  return length ? `gauge length ${length} mm` : 'gauge length not recorded';
}
