import type { ExtensionReadingsBody, ForceReadingsBody } from '#libs/contract/src/index.js';
import { decimalMarkIn, parseHinted } from '#libs/units/src/index.js';
import type { DecimalMark } from '#libs/units/src/index.js';

/** Readings of one direction as they are typed. */
export interface ForceTyped {
  direction: ForceReadingsBody['direction'];
  unit: string;
  capacity: string;
  resolution: string;
  zeroResidual: string;
  /** What stood still at each step: the indication (ISO 7500-1, the usual way), or the true force. */
  held: 'indicated' | 'true';
  steps: { nominal: string; runs: [string, string, string]; falling: string }[];
}

const SHARES = [0.2, 0.4, 0.6, 0.8, 1];

/** Steps at the usual shares of the capacity, to be overwritten. */
export function emptyForce(direction: ForceTyped['direction'], capacity: number, unit: string): ForceTyped {
  const steps = SHARES.map((share) => ({
    nominal: String(Number((share * capacity).toPrecision(6))),
    runs: ['', '', ''] as [string, string, string],
    falling: '',
  }));
  return { direction, unit, capacity: String(capacity), resolution: '', zeroResidual: '0', held: 'indicated', steps };
}

/** A reading such as `2.001` can be read in two ways: the form's other figures say how its writer writes. */
type Mark = DecimalMark | null;

const figure = (text: string, mark: Mark): number => {
  const number = parseHinted(text, { mark });
  return 'reason' in number ? NaN : number.value;
};

function markOfForce({ capacity, resolution, zeroResidual, steps }: ForceTyped): Mark {
  const typed = steps.flatMap(({ nominal, runs, falling }) => [nominal, ...runs, falling]);
  return decimalMarkIn([capacity, resolution, zeroResidual, ...typed]);
}

function markOfExtension({ gaugeNominal, gaugeMeasured, resolution, steps }: ExtensionTyped): Mark {
  const typed = steps.flatMap(({ reference, runs }) => [reference, ...runs]);
  return decimalMarkIn([gaugeNominal, gaugeMeasured, resolution, ...typed]);
}

/** Why a text is no reading; null where it is one. */
function reasonAgainst(where: string, text: string, mark: Mark): string[] {
  if (!text.trim()) return [`${where} is empty.`];
  const number = parseHinted(text, { mark });
  return 'reason' in number ? [`${where}: ${number.reason}`] : [];
}

const isBegun = (runs: readonly string[]) => runs.some((text) => text.trim());

/** Every reading of the steps that were begun that is missing or cannot be read: none is left out in silence. */
export function forceProblems(typed: ForceTyped): string[] {
  const { direction, capacity, resolution, zeroResidual, steps } = typed;
  const mark = markOfForce(typed);
  return [
    ...reasonAgainst('Capacity', capacity, mark),
    ...reasonAgainst('Resolution', resolution, mark),
    ...reasonAgainst('Left at zero', zeroResidual, mark),
    ...steps.flatMap(({ nominal, runs, falling }, at) =>
      isBegun(runs)
        ? [
            ...reasonAgainst(`Step ${at + 1}, force held`, nominal, mark),
            ...runs.flatMap((text, run) => reasonAgainst(`Step ${at + 1}, run ${run + 1}`, text, mark)),
            ...(falling.trim() ? reasonAgainst(`Step ${at + 1}, falling`, falling, mark) : []),
          ]
        : [],
    ),
  ].map((sentence) => `In ${direction}: ${sentence}`);
}

/** The same for an extensometer. */
export function extensionProblems(typed: ExtensionTyped): string[] {
  const { gaugeNominal, gaugeMeasured, resolution, steps } = typed;
  const mark = markOfExtension(typed);
  return [
    ...reasonAgainst('Gauge length, nominal', gaugeNominal, mark),
    ...(gaugeMeasured.trim() ? reasonAgainst('Gauge length, measured', gaugeMeasured, mark) : []),
    ...reasonAgainst('Resolution', resolution, mark),
    ...steps.flatMap(({ reference, runs }, at) =>
      isBegun(runs)
        ? [
            ...reasonAgainst(`Step ${at + 1}, reference`, reference, mark),
            ...runs.flatMap((text, run) => reasonAgainst(`Step ${at + 1}, run ${run + 1}`, text, mark)),
          ]
        : [],
    ),
  ];
}

/** What the server is asked; steps that were not begun are left out. */
export function forceBody(typed: ForceTyped): ForceReadingsBody {
  const mark = markOfForce(typed);
  return {
    direction: typed.direction,
    unit: typed.unit,
    capacity: figure(typed.capacity, mark),
    resolution: figure(typed.resolution, mark),
    zeroResidual: figure(typed.zeroResidual, mark),
    held: typed.held,
    steps: typed.steps
      .filter(({ runs }) => isBegun(runs))
      .map(({ nominal, runs, falling }) => ({
        nominal: figure(nominal, mark),
        runs: [figure(runs[0], mark), figure(runs[1], mark), figure(runs[2], mark)],
        falling: falling.trim() ? figure(falling, mark) : null,
      })),
  };
}

export interface ExtensionTyped {
  gaugeNominal: string;
  gaugeMeasured: string;
  resolution: string;
  steps: { reference: string; runs: [string, string] }[];
}

/** ISO 9513 asks for ten steps at least (from memory). */
export const EXTENSION_STEPS = 10;

export function emptyExtension(gaugeLengthMm: number): ExtensionTyped {
  return {
    gaugeNominal: String(gaugeLengthMm),
    gaugeMeasured: '',
    resolution: '',
    steps: Array.from({ length: EXTENSION_STEPS }, () => ({ reference: '', runs: ['', ''] as [string, string] })),
  };
}

export function extensionBody(typed: ExtensionTyped): ExtensionReadingsBody {
  const mark = markOfExtension(typed);
  return {
    unit: 'mm',
    gaugeLengthNominalMm: figure(typed.gaugeNominal, mark),
    gaugeLengthMeasuredMm: figure(typed.gaugeMeasured, mark),
    resolutionMm: figure(typed.resolution, mark),
    steps: typed.steps
      .filter(({ runs }) => isBegun(runs))
      .map(({ reference, runs }) => ({
        referenceMm: figure(reference, mark),
        runs: [figure(runs[0], mark), figure(runs[1], mark)],
      })),
  };
}
