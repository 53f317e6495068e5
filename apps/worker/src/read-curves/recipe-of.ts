import type { Ask, Geometry, GeometryKey, Method, Shape } from '#libs/matching/src/index.js';
import { RESULT_KEYS } from '#libs/reduction/src/index.js';
import type {
  BendingRecipe,
  ReductionRecipe,
  ResultKey,
  Section,
  SpecimenDimensions,
} from '#libs/reduction/src/index.js';

/** What the method leaves to the ask: section, spans, and the results that are wanted. */
export function recipeOf(method: Method, ask: Ask): ReductionRecipe {
  const recipe = method.reduction as Omit<ReductionRecipe, 'section' | 'results'>;
  const bending = recipe.bending && { bending: bendingOf(recipe.bending, method, ask) };
  return { ...recipe, ...bending, section: SECTION_OF[ask.geometry.shape], results: wantedOf(method, ask) };
}

const SECTION_OF: Record<Shape, Section> = {
  rectangle: 'rectangle',
  strip: 'rectangle',
  round: 'round',
  tube: 'tube',
  thread: 'given-area',
  component: 'given-area',
};

/** The peak is always kept, whatever is asked: everything can be followed back to it. */
function wantedOf(method: Method, ask: Ask): ResultKey[] {
  const wanted = ask.results.length > 0 ? ask.results : method.usualResults;
  return RESULT_KEYS.filter((key) => key === 'peak-load' || wanted.includes(key));
}

/** The span of the request goes before the method's own; the inner one keeps its share of it. */
function bendingOf(bending: BendingRecipe, { loadingSpanRatio }: Method, { geometry }: Ask): BendingRecipe {
  const spanMm = geometry.spanMm ?? bending.spanMm;
  return { ...bending, spanMm, ...(loadingSpanRatio === null ? {} : { innerSpanMm: spanMm * loadingSpanRatio }) };
}

/** The specimen's lengths as means of their readings; what nobody measured is as it was asked for. */
export function measuredGeometry({ geometry }: Ask, readings: Readonly<Record<string, readonly number[]>>): Geometry {
  const means = Object.entries(readings).flatMap(([key, values]) =>
    values.length > 0 ? [[key, meanOf(values)] as const] : [],
  );
  return { ...geometry, ...(Object.fromEntries(means) as Partial<Geometry>) };
}

/** Sizes of the section that figures of stress rest on, and that a person measures on each specimen. */
const SECTION_SIZES = [
  'widthMm',
  'thicknessMm',
  'diameterMm',
  'outerDiameterMm',
  'innerDiameterMm',
  'overlapMm',
] as const satisfies readonly GeometryKey[];

/** Which of them nobody measured on this specimen, so that what was asked for stands in. */
export function nominalSizes({ geometry }: Ask, readings: Readonly<Record<string, readonly number[]>>): GeometryKey[] {
  return SECTION_SIZES.filter((key) => geometry[key] !== undefined && !(readings[key] && readings[key].length > 0));
}

/** The same as the reduction takes them. An area is taken as given only where the shape has no lengths to compute it from. */
export function dimensionsOf(method: Method, geometry: Geometry): SpecimenDimensions {
  const hasSection = geometry.shape !== 'thread' && geometry.shape !== 'component';
  return defined({
    widthMm: geometry.widthMm,
    thicknessMm: geometry.thicknessMm,
    diameterMm: geometry.outerDiameterMm ?? geometry.diameterMm,
    innerDiameterMm: geometry.innerDiameterMm,
    areaMm2: hasSection ? undefined : geometry.areaMm2,
    gaugeLengthMm: geometry.gaugeLengthMm ?? method.strain?.usualGaugeLengthMm ?? undefined,
    gripDistanceMm: geometry.gripSeparationMm,
    heightMm: geometry.heightMm,
    overlapMm: geometry.overlapMm,
  });
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function defined(sizes: Record<string, number | undefined>): SpecimenDimensions {
  return Object.fromEntries(Object.entries(sizes).filter(([, value]) => value !== undefined));
}
