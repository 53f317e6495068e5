import type { FieldProblem } from '#libs/errors/src/index.js';
import { DIRECTIONS, END_SHAPES } from '#libs/matching/src/index.js';
import {
  anything,
  byField,
  dictionary,
  figure,
  flag,
  inOrder,
  listOf,
  oneOf,
  orAbsent,
  orNull,
  record,
  text,
} from './shape.js';
import type { Shape } from './shape.js';

const TEST_TYPES =
  'tension compression flexure-3 flexure-4 lap-shear short-beam in-plane-shear double-shear peel tear strip torsion fracture component'.split(
    ' ',
  );
const SHAPES = 'rectangle round tube thread strip component'.split(' ');
const STRENGTHS = 'tensile compressive flexural shear peel tear toughness'.split(' ');
const GROUPS = 'metal plastic composite elastomer foam concrete wood film ceramic adhesive packaging textile'.split(
  ' ',
);
/** What can hurt: of a method, or of a specimen that the method cannot know. */
export const HAZARDS = 'fragments stored-energy biological pressure heat cold sharp-edges dust'.split(' ');
const SURFACES = 'smooth fine-serrated serrated diamond rubber lined'.split(' ');
const FIXTURES =
  'flexure-3 flexure-4-third flexure-4-half short-beam peel-90 peel-180 climbing-drum combined-compression double-shear sandwich-flatwise fracture-bend component-pull component-push'.split(
    ' ',
  );
const LENGTHS =
  'widthMm thicknessMm diameterMm outerDiameterMm innerDiameterMm areaMm2 parallelLengthMm gaugeLengthMm gripSeparationMm heightMm lengthMm spanMm overlapMm crackLengthMm endWidthMm endThicknessMm'.split(
    ' ',
  );

const key = text(60);
const words = text(400, 0);
const above = (unit: string, max: number): Shape => figure({ unit, above: 0, max });
const classNeed = { standard: text(60), className: text(20), source: words };
const strainFraction = figure({ unit: '', min: 0, max: 50 });

const SPEED = byField('kind', {
  fixed: { mmPerMin: above('mm/min', 1e6) },
  'strain-rate': {
    perS: above('1/s', 1e3),
    over: oneOf(['parallelLengthMm', 'gripSeparationMm', 'gaugeLengthMm', 'heightMm']),
  },
  'flexure-rate': { outerFibrePerMin: above('1/min', 1e3) },
  'stress-rate': { mPaPerS: above('MPa/s', 1e5) },
  rotation: { degPerMin: above('°/min', 1e6) },
  asked: {
    minMmPerMin: above('mm/min', 1e6),
    maxMmPerMin: above('mm/min', 1e6),
    usualMmPerMin: above('mm/min', 1e6),
  },
});

const ENDS = byField('by', {
  grips: { ends: listOf(oneOf(END_SHAPES), { min: 1 }), surfaces: listOf(oneOf(SURFACES)) },
  platens: { sphericalSeat: oneOf(['required', 'preferred', 'not-needed']) },
  fixture: { purpose: oneOf(FIXTURES), withGrip: flag },
});

/** What a method is made of; id, version and who entered it are the register's to give. */
const METHOD = record({
  id: slug,
  designation: text(80),
  version: orAbsent(anything),
  changed: orAbsent(text(400)),
  title: text(200),
  testType: oneOf(TEST_TYPES),
  direction: oneOf(DIRECTIONS),
  materialGroups: listOf(oneOf(GROUPS)),
  shapes: listOf(oneOf(SHAPES), { min: 1 }),
  geometry: listOf(
    inOrder(
      ['min', 'max'],
      record({
        key: oneOf(LENGTHS),
        shapes: orAbsent(listOf(oneOf(SHAPES))),
        required: flag,
        min: figure({ unit: 'mm', min: 0 }),
        max: figure({ unit: 'mm', above: 0, max: 1e6 }),
        usual: orAbsent(figure({ unit: 'mm', min: 0 })),
        help: words,
      }),
    ),
    { max: 20 },
  ),
  loadingSpanRatio: orNull(figure({ unit: '', above: 0, below: 1 })),
  strength: oneOf(STRENGTHS),
  speeds: listOf(
    record({
      stage: oneOf(['whole', 'modulus', 'yield', 'to-break']),
      rule: SPEED,
      tolerancePct: orNull(above('%', 100)),
      source: words,
    }),
    { min: 1, max: 4 },
  ),
  results: listOf(key, { min: 1 }),
  usualResults: listOf(key),
  endStrain: orNull(strainFraction),
  modulusStrain: orNull(inOrder(['from', 'to'], record({ from: strainFraction, to: strainFraction }))),
  forceClass: record(classNeed),
  strain: orNull(
    record({
      ...classNeed,
      measures: oneOf(['axial', 'deflection']),
      demandedFor: listOf(key),
      preferredFor: listOf(key),
      usualGaugeLengthMm: orNull(above('mm', 1e4)),
    }),
  ),
  ends: ENDS,
  conditioning: orNull(
    record({
      hours: figure({ unit: 'h', min: 0, max: 10_000 }),
      temperatureC: figure({ unit: '°C', min: -269, max: 2000 }),
      humidityPct: orNull(figure({ unit: '%', min: 0, max: 100 })),
      standard: text(120),
    }),
  ),
  minSpecimens: figure({ unit: '', min: 1, max: 500, whole: true }),
  defaultMinPerSpecimen: above('min', 100_000),
  defaultSetupMin: figure({ unit: 'min', min: 0, max: 10_000 }),
  alignmentMaxBendingPct: orNull(above('%', 100)),
  hazards: listOf(oneOf(HAZARDS)),
  guardAlways: flag,
  reduction: dictionary(anything),
  reportSteps: dictionary(reportStep),
  source: text(400),
  confidence: text(120),
});

const BAND = inOrder(
  ['low', 'high'],
  record({ low: figure({ unit: '', min: 0, max: 1e9 }), high: figure({ unit: '', above: 0, max: 1e9 }) }),
);

const MATERIAL = record({
  id: slug,
  name: text(120),
  group: oneOf(GROUPS),
  strengths: listOf(
    inOrder(
      ['low', 'typical', 'high'],
      record({
        property: oneOf(STRENGTHS),
        low: above('MPa or N/mm', 1e6),
        typical: above('MPa or N/mm', 1e6),
        high: above('MPa or N/mm', 1e6),
        unit: oneOf(['MPa', 'N/mm', 'MPa·√m']),
        source: text(400),
        confidence: text(120),
      }),
    ),
    { max: 10 },
  ),
  modulusMPa: orNull(BAND),
  breakStrain: orNull(BAND),
  brittle: flag,
  source: text(400),
  confidence: text(120),
});

/** Everything that is wrong with a method that somebody entered, by field; empty when the cores can rely on it. */
export function checkMethod(data: object): FieldProblem[] {
  return METHOD(data, 'data');
}

/** The same for a material. */
export function checkMaterial(data: object): FieldProblem[] {
  return MATERIAL(data, 'data');
}

function slug(value: unknown, path: string): FieldProblem[] {
  const fits = typeof value === 'string' && /^[a-z0-9][a-z0-9-]{0,59}$/.test(value);
  return fits ? [] : oneOf(['small letters, digits and dashes, at most 60'])(value, path);
}

function reportStep(value: unknown, path: string): FieldProblem[] {
  const isStep = typeof value === 'object' && value !== null && Object.hasOwn(value, 'step');
  const bySignificance = record({ significant: figure({ unit: 'figures', min: 1, max: 15, whole: true }) });
  return (isStep ? record({ step: above('', 1e9) }) : bySignificance)(value, path);
}
