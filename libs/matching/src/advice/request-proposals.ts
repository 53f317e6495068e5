import { formatNumber } from '#libs/units/src/index.js';
import type { Verdict } from '../answer/answer.js';
import { GEOMETRY_LABELS } from '../ask/ask-fields.js';
import type { GeometryKey, Method, Shape } from '../register/method.js';
import { roundTo } from './proposal.js';
import type { Proposal, Question } from './proposal.js';

/** How the load grows with a figure of the specimen: load ∝ figure^power. */
type Power = readonly [key: GeometryKey, power: number];

const AXIAL: Readonly<Partial<Record<Shape, readonly Power[]>>> = {
  rectangle: [
    ['widthMm', 1],
    ['thicknessMm', 1],
  ],
  strip: [
    ['widthMm', 1],
    ['thicknessMm', 1],
  ],
  round: [['diameterMm', 2]],
};
const BENDING: Readonly<Partial<Record<Shape, readonly Power[]>>> = {
  rectangle: [
    ['widthMm', 1],
    ['thicknessMm', 2],
    ['spanMm', -1],
  ],
  round: [
    ['diameterMm', 3],
    ['spanMm', -1],
  ],
  tube: [['spanMm', -1]],
};
const any = (...powers: Power[]): Readonly<Partial<Record<Shape, readonly Power[]>>> => ({
  rectangle: powers,
  strip: powers,
  round: powers,
  tube: powers,
});

const POWERS: Record<Method['testType'], Readonly<Partial<Record<Shape, readonly Power[]>>>> = {
  tension: AXIAL,
  compression: AXIAL,
  'flexure-3': BENDING,
  'flexure-4': BENDING,
  'lap-shear': any(['overlapMm', 1], ['widthMm', 1]),
  'short-beam': any(['widthMm', 1], ['thicknessMm', 1]),
  'in-plane-shear': any(['widthMm', 1], ['thicknessMm', 1]),
  'double-shear': any(['diameterMm', 2]),
  peel: any(['widthMm', 1]),
  strip: any(['widthMm', 1]),
  tear: any(['thicknessMm', 1]),
  torsion: { round: [['diameterMm', 3]] },
  fracture: any(['thicknessMm', 1]),
  component: {},
};

const TOO_MUCH_LOAD = [
  'frame-too-small',
  'cell-exceeds-frame',
  'cell-too-small',
  'cell-too-small-hung',
  'link-too-weak',
  'above-verified',
];

/** Changes of the request that lower what the train must offer. */
export function requestProposals(verdict: Verdict, question: Question): Proposal[] {
  const { required, available } = verdict;
  if (TOO_MUCH_LOAD.includes(verdict.reason) && typeof required === 'number' && typeof available === 'number') {
    return lessLoad(available / required, question);
  }
  const limit = LIMITS[verdict.reason];
  if (limit && typeof available === 'number')
    return limit.keys.flatMap((key) => toLimit(key, available, limit.way, question));
  return wording(verdict, question);
}

function lessLoad(share: number, { ask, method }: Question): Proposal[] {
  // A declared load says nothing about the geometry.
  if (ask.peak || share <= 0 || share >= 1) return [];
  return (POWERS[method.testType][ask.geometry.shape] ?? []).flatMap(([key, power]) => {
    const now = ask.geometry[key];
    if (now === undefined) return [];
    const value = roundTo(now * share ** (1 / power), power > 0 ? 'down' : 'up');
    return isSameTest(value, now) ? [geometry(key, value, now)] : [];
  });
}

/** Reasons that a figure of the specimen could respect by taking the limit itself. */
const LIMITS: Record<string, { keys: readonly GeometryKey[]; way: 'down' | 'up' }> = {
  'too-wide-for-face': { keys: ['endWidthMm', 'widthMm'], way: 'down' },
  'too-thick': { keys: ['endThicknessMm', 'thicknessMm', 'diameterMm'], way: 'down' },
  'too-thin': { keys: ['endThicknessMm', 'thicknessMm', 'diameterMm'], way: 'up' },
  'span-too-long': { keys: ['spanMm'], way: 'down' },
  'span-too-short': { keys: ['spanMm'], way: 'up' },
  'too-wide-for-fixture': { keys: ['widthMm'], way: 'down' },
  'too-thick-for-fixture': { keys: ['thicknessMm', 'diameterMm'], way: 'down' },
};

function toLimit(key: GeometryKey, limit: number, way: 'down' | 'up', { ask, method }: Question): Proposal[] {
  const asked = method.geometry.some(
    (need) => need.key === key && (!need.shapes || need.shapes.includes(ask.geometry.shape)),
  );
  const now = ask.geometry[key] ?? limit;
  const value = limit > 0 ? roundTo(limit, way) : 0;
  return asked && isSameTest(value, now) ? [geometry(key, value, now)] : [];
}

/** A specimen of less than 40 % of the size, or more than 2.5 times, is another test (common practice, no source). */
function isSameTest(value: number, now: number): boolean {
  return value >= 0.4 * now && value <= 2.5 * now;
}

function geometry(key: GeometryKey, value: number, now: number): Proposal {
  const unit = key === 'areaMm2' ? 'mm²' : 'mm';
  const sentence = `${GEOMETRY_LABELS[key]} of ${formatNumber(value, 4)} ${unit} instead of ${formatNumber(now, 4)}.`;
  return { kind: 'change-request', sentence, apply: { change: 'ask', field: `geometry.${key}`, value } };
}

function wording({ reason, required, available }: Verdict, { ask, needs, lab }: Question): Proposal[] {
  const field = (name: string, value: unknown, sentence: string): Proposal => ({
    kind: 'change-request',
    sentence,
    apply: { change: 'ask', field: name, value },
  });
  switch (reason) {
    case 'class-too-low':
      return ask.options.lowerForceClass
        ? []
        : [
            field(
              'options.lowerForceClass',
              true,
              'Agree a lower force class; the report will state it as a deviation.',
            ),
          ];
    case 'below-verified':
      return withoutFoot(ask.results).map((results) =>
        field('results', results, 'Leave out the results that read from the foot of the curve.'),
      );
    case 'no-such-gauge':
      return gauges(lab.items.flatMap((item) => (item.kind === 'extensometer' ? item.details.gaugeLengthsMm : []))).map(
        (each) => field('geometry.gaugeLengthMm', each, `Gauge length of ${each} mm instead.`),
      );
    case 'may-not-touch':
      return [field('options.contactExtensometer', true, 'Let an extensometer touch the specimen.')];
    case 'too-fast':
    case 'too-slow':
    case 'too-fast-at-force':
      return ask.speedMmPerMin !== null || needs.speeds.some(({ speed }) => speed.assumed)
        ? [field('speedMmPerMin', available, `Speed of ${formatNumber(Number(available), 4)} mm/min instead.`)]
        : [];
    case 'too-tall':
    case 'travel-too-short':
      return shorter(Number(required) - Number(available), ask.geometry.gripSeparationMm, field);
    default:
      return [];
  }
}

function withoutFoot(results: readonly string[]): string[][] {
  const rest = results.filter((each) => !['modulus', 'offset-yield', 'stiffness'].includes(each));
  return rest.length > 0 && rest.length < results.length ? [rest] : [];
}

function gauges(lengthsMm: readonly number[]): number[] {
  return [...new Set(lengthsMm)].sort((a, b) => a - b);
}

function shorter(
  byMm: number,
  nowMm: number | undefined,
  field: (name: string, value: unknown, sentence: string) => Proposal,
): Proposal[] {
  const value = nowMm === undefined ? 0 : nowMm - byMm;
  if (value <= 0) return [];
  const rounded = roundTo(value, 'down');
  return [
    field(
      'geometry.gripSeparationMm',
      rounded,
      `${GEOMETRY_LABELS.gripSeparationMm} of ${formatNumber(rounded, 4)} mm instead.`,
    ),
  ];
}
