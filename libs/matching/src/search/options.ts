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
import { slotOf } from '../parts.js';
import type { Ends, EndItem, Parts } from '../parts.js';
import { checksOf, countBits, tally } from './checks.js';
import type { BitCheck, Tally } from './checks.js';
import type { Chosen, LabIndex } from './lab-index.js';
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
  /** Separate faces by the name of their seat. */
  faces: ReadonlyMap<string, readonly Option<JawFace>[]>;
  extensometers: readonly Option<Extensometer | null>[];
  chambers: readonly Option<Chamber | null>[];
  guards: readonly Option<Guard | null>[];
  thermocouples: readonly Option<Transducer | null>[];
}

const CELL = checksOf(['cell']);
const ENDS = checksOf(['ends']);
const FACES = checksOf(['faces']);
const EXTENSOMETER = checksOf(['extensometer']);
const CHAMBER = checksOf(['chamber']);
const GUARD = checksOf(['guard']);
const THERMOCOUPLE = checksOf(['thermocouple']);
export const PART_CHECKS: readonly BitCheck[] = [
  ...CELL,
  ...ENDS,
  ...FACES,
  ...EXTENSOMETER,
  ...CHAMBER,
  ...GUARD,
  ...THERMOCOUPLE,
];

/** Every choice for each part, judged by the checks that look at that part alone, fewest failures first: the frame comes later. */
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
      endChoices(of('grip'), of('fixture'), of('platen'), context),
      (part) => ({ ends: part }),
      ENDS,
      context,
    ),
    faces: bySeat(
      judged(needs.ends.by === 'platens' ? [] : of('jaw-face'), (part) => ({ faces: part }), FACES, context),
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

/** Pools of a kind; units that are never usable in the period are left out, so that they cannot speak for the others. */
function split<T extends Item>(index: LabIndex, kind: ItemKind, context: RequestContext): Chosen<T>[] {
  const pools = index.pools.get(kind) ?? [];
  return pools.flatMap(({ units, standing }) => (standing ?? [timely(units, context)]) as readonly Chosen<T>[]);
}

/** The units of a pool that are usable at some time; where none is, one that speaks for them. */
export function timely<T extends Item>(units: readonly T[], context: RequestContext): Chosen<T> {
  const usable = units.filter((unit) => context.windowsOf(unit).length > 0);
  context.shareWindows(usable);
  const list = usable.length > 0 ? usable : units.slice(0, 1);
  return { part: list[0]!, units: [list] };
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
  return chosen
    .map(({ part, units }) => ({ part, units, tally: tally(checks, place(part) as Parts, context) }))
    .sort((a, b) => countBits(a.tally.fails) - countBits(b.tally.fails) || a.tally.severity - b.tally.severity);
}

/** Every way to hold the specimen that is of the right kind: right purpose of a fixture, right end shape of a grip. */
function endChoices(
  grips: readonly Chosen<Grip>[],
  fixtures: readonly Chosen<Fixture>[],
  platens: readonly Chosen<Platen>[],
  { needs }: RequestContext,
): Chosen<Ends>[] {
  const { ends } = needs;
  if (ends.by === 'platens') return bothSides(platens);
  const holding = grips.filter(({ part }) => part.details.acceptedEnds.includes(needs.specimen.endShape));
  if (ends.by === 'grips') return bothSides(holding);
  const fitting = fixtures.filter(({ part }) => part.details.purposes.includes(ends.purpose));
  if (!ends.withGrip) return bothSides(fitting);
  const below = fitting.filter(({ part }) => part.details.side !== 'upper');
  return holding
    .filter(({ part }) => part.details.side !== 'lower')
    .flatMap((grip) => below.map((fixture) => over(grip, fixture)));
}

/** Pairs, and every upper with every lower whose seats for faces agree. */
function bothSides<T extends EndItem>(ends: readonly Chosen<T>[]): Chosen<Ends>[] {
  const of = (side: Side) => ends.filter(({ part }) => part.details.side === side);
  const pairs = of('pair').map(({ part, units }) => ({ part: { upper: part, lower: part }, units }));
  const lowers = of('lower');
  const singles = of('upper').flatMap((upper) =>
    lowers.filter((lower) => slotOf(upper.part) === slotOf(lower.part)).map((lower) => over(upper, lower)),
  );
  return [...pairs, ...singles];
}

function over(upper: Chosen<EndItem>, lower: Chosen<EndItem>): Chosen<Ends> {
  return { part: { upper: upper.part, lower: lower.part }, units: [...upper.units, ...lower.units] };
}

function bySeat(faces: readonly Option<JawFace>[]): Map<string, Option<JawFace>[]> {
  const seats = new Map<string, Option<JawFace>[]>();
  for (const face of faces) seats.set(face.part.details.slot, [...(seats.get(face.part.details.slot) ?? []), face]);
  return seats;
}
