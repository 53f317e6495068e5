import type {
  Chamber,
  Extensometer,
  Fixture,
  Grip,
  Guard,
  Item,
  ItemKind,
  JawFace,
  LoadCell,
  Platen,
  Side,
  Transducer,
} from '../item.js';
import type { Ends, EndItem, Parts } from '../parts.js';
import { checksOf, tally } from './checks.js';
import type { BitCheck, Tally } from './checks.js';
import type { LabIndex } from './lab-index.js';
import type { RequestContext } from './request-context.js';

/** One choice for a part of the train: a pool, or a set of pools for the ends. */
export interface Option<T> {
  part: T;
  /** Units by the item that stands for them. */
  units: readonly (readonly Item[])[];
  tally: Tally;
}

export interface Options {
  cells: readonly Option<LoadCell>[];
  ends: readonly Option<Ends>[];
  extensometers: readonly Option<Extensometer | null>[];
  chambers: readonly Option<Chamber | null>[];
  guards: readonly Option<Guard | null>[];
  thermocouples: readonly Option<Transducer | null>[];
}

const CELL = checksOf(['cell']);
const ENDS = checksOf(['ends']);
const EXTENSOMETER = checksOf(['extensometer']);
const CHAMBER = checksOf(['chamber']);
const GUARD = checksOf(['guard']);
const THERMOCOUPLE = checksOf(['thermocouple']);
export const PART_CHECKS: readonly BitCheck[] = [
  ...CELL,
  ...ENDS,
  ...EXTENSOMETER,
  ...CHAMBER,
  ...GUARD,
  ...THERMOCOUPLE,
];

/** Every choice for each part, judged by the checks that look at that part alone: the frame comes later. */
export function optionsFor(index: LabIndex, context: RequestContext): Options {
  const { needs } = context;
  const of = <K extends ItemKind>(kind: K) => split<Extract<Item, { kind: K }>>(index, kind, context);
  const none: Chosen<null>[] = [{ part: null, units: [] }];
  return {
    cells: judged(
      of('load-cell').filter(({ part }) => senses(part, needs.direction)),
      (part) => ({ cell: part }),
      CELL,
      context,
    ),
    ends: judged(
      endChoices(of('grip'), of('jaw-face'), of('fixture'), of('platen'), context),
      (part) => ({ ends: part }),
      ENDS,
      context,
    ),
    extensometers: judged(
      [
        ...(needs.strain.how === 'extensometer'
          ? of('extensometer').filter(({ part }) => part.details.measures === needs.strain.rule!.measures)
          : []),
        ...none,
      ],
      (part) => ({ extensometer: part }),
      EXTENSOMETER,
      context,
    ),
    chambers: judged(
      [...(needs.chamber ? of('chamber') : []), ...none],
      (part) => ({ chamber: part }),
      CHAMBER,
      context,
    ),
    guards: judged([...of('guard'), ...none], (part) => ({ guard: part }), GUARD, context),
    thermocouples: judged(
      [...(needs.chamber ? of('transducer').filter(({ part }) => reads(part, needs.temperature.value)) : []), ...none],
      (part) => ({ thermocouple: part }),
      THERMOCOUPLE,
      context,
    ),
  };
}

export interface Chosen<T> {
  part: T;
  units: readonly (readonly Item[])[];
}

/** Pools of a kind; units that are never usable in the period stand apart, so that they cannot speak for the others. */
function split<T extends Item>(index: LabIndex, kind: ItemKind, context: RequestContext): Chosen<T>[] {
  return (index.pools.get(kind) ?? []).flatMap(({ units }) => {
    const usable = units.filter((unit) => context.windowsOf(unit).length > 0);
    const idle = usable.length === 0 ? units.slice(0, 1) : [];
    context.shareWindows(usable);
    return [usable, idle].flatMap((list) => (list.length > 0 ? [{ part: list[0] as T, units: [list] }] : []));
  });
}

function senses(cell: LoadCell, direction: string): boolean {
  return direction === 'torque' ? cell.details.torqueCapacityNm > 0 : cell.details.capacityN > 0;
}

function reads({ details }: Transducer, temperatureC: number): boolean {
  return details.measures === 'temperature' && details.rangeFrom <= temperatureC && details.rangeTo >= temperatureC;
}

function judged<T>(
  chosen: readonly Chosen<T>[],
  place: (part: T) => Partial<Parts>,
  checks: readonly BitCheck[],
  context: RequestContext,
): Option<T>[] {
  return chosen.map(({ part, units }) => ({ part, units, tally: tally(checks, place(part) as Parts, context) }));
}

/** Every way to hold the specimen that is of the right kind: right purpose of a fixture, right end shape of a grip. */
function endChoices(
  grips: readonly Chosen<Grip>[],
  faces: readonly Chosen<JawFace>[],
  fixtures: readonly Chosen<Fixture>[],
  platens: readonly Chosen<Platen>[],
  { needs }: RequestContext,
): Chosen<Ends>[] {
  const { ends } = needs;
  if (ends.by === 'platens') return bothSides(platens, platens);
  const holding = grips.filter(({ part }) => part.details.acceptedEnds.includes(needs.specimen.endShape));
  if (ends.by === 'grips') return bothSides(holding, holding).flatMap((each) => withFaces(each, faces));
  const fitting = fixtures.filter(({ part }) => part.details.purposes.includes(ends.purpose));
  if (!ends.withGrip) return bothSides(fitting, fitting);
  const below = fitting.filter(({ part }) => part.details.side !== 'upper');
  return holding
    .filter(({ part }) => part.details.side !== 'lower')
    .flatMap((grip) => below.map((fixture) => over(grip, fixture)))
    .flatMap((each) => withFaces(each, faces));
}

/** Pairs, and every upper with every lower. */
function bothSides<T extends EndItem>(uppers: readonly Chosen<T>[], lowers: readonly Chosen<T>[]): Chosen<Ends>[] {
  const of = (list: readonly Chosen<T>[], side: Side) => list.filter(({ part }) => part.details.side === side);
  const pairs = of(uppers, 'pair').map(({ part, units }) => ({
    part: { upper: part, lower: part, faces: null },
    units,
  }));
  return [...pairs, ...of(uppers, 'upper').flatMap((upper) => of(lowers, 'lower').map((lower) => over(upper, lower)))];
}

function over(upper: Chosen<EndItem>, lower: Chosen<EndItem>): Chosen<Ends> {
  return { part: { upper: upper.part, lower: lower.part, faces: null }, units: [...upper.units, ...lower.units] };
}

/** A grip with a seat needs faces; both sides of a train take the same. */
function withFaces(chosen: Chosen<Ends>, faces: readonly Chosen<JawFace>[]): Chosen<Ends>[] {
  const { upper, lower } = chosen.part;
  const slots = [upper, lower].flatMap((end) =>
    end.kind === 'grip' && end.details.faceSlot ? [end.details.faceSlot] : [],
  );
  if (slots.length === 0) return [chosen];
  return faces
    .filter(({ part }) => slots.every((slot) => slot === part.details.slot))
    .map((face) => ({ part: { ...chosen.part, faces: face.part }, units: [...chosen.units, ...face.units] }));
}
