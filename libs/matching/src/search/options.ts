import type { Chamber, Extensometer, Guard, Item, ItemKind, JawFace, LoadCell, Side, Transducer } from '../item.js';
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

/** Makes the choices for one part. */
type Maker<T> = (index: LabIndex, context: RequestContext) => T;

const NONE: readonly Chosen<null>[] = [{ part: null, units: [] }];

/** How the choices for each part are made. */
const MAKERS: { readonly [P in keyof Options]: Maker<Options[P]> } = {
  cells: (index, context) =>
    judged(
      split(index, 'load-cell', context).filter(({ part }) => senses(part, context.needs.direction)),
      (part) => ({ cell: part }),
      CELL,
      context,
    ),
  ends: (index, context) => judged(endChoices(index, context), (part) => ({ ends: part }), ENDS, context),
  faces: (index, context) =>
    bySeat(
      judged(
        context.needs.ends.by === 'platens' ? [] : split(index, 'jaw-face', context),
        (part) => ({ faces: part }),
        FACES,
        context,
      ),
    ),
  extensometers: (index, context) =>
    judged([...measuring(index, context), ...NONE], (part) => ({ extensometer: part }), EXTENSOMETER, context),
  chambers: (index, context) =>
    judged(
      [...(context.needs.chamber ? split(index, 'chamber', context) : []), ...NONE],
      (part) => ({ chamber: part }),
      CHAMBER,
      context,
    ),
  guards: (index, context) =>
    judged([...split(index, 'guard', context), ...NONE], (part) => ({ guard: part }), GUARD, context),
  thermocouples: (index, context) =>
    judged([...reading(index, context), ...NONE], (part) => ({ thermocouple: part }), THERMOCOUPLE, context),
};

/** The part of a train that a kind of item takes. */
const PART_OF: Partial<Record<ItemKind, keyof Options>> = {
  'load-cell': 'cells',
  grip: 'ends',
  fixture: 'ends',
  platen: 'ends',
  'jaw-face': 'faces',
  extensometer: 'extensometers',
  chamber: 'chambers',
  guard: 'guards',
  transducer: 'thermocouples',
};

/** Every choice for each part, judged by the checks that look at that part alone, fewest failures first: the frame comes later. */
export function optionsFor(index: LabIndex, context: RequestContext): Options {
  return {
    cells: MAKERS.cells(index, context),
    ends: MAKERS.ends(index, context),
    faces: MAKERS.faces(index, context),
    extensometers: MAKERS.extensometers(index, context),
    chambers: MAKERS.chambers(index, context),
    guards: MAKERS.guards(index, context),
    thermocouples: MAKERS.thermocouples(index, context),
  };
}

/** The same options, but for the part that one kind of item takes. */
export function optionsWith(base: Options, kind: ItemKind, index: LabIndex, context: RequestContext): Options {
  const part = PART_OF[kind];
  return part ? { ...base, [part]: MAKERS[part](index, context) } : base;
}

/** Pools of a kind; units that are never usable in the period are left out, so that they cannot speak for the others. */
function split<K extends ItemKind>(
  index: LabIndex,
  kind: K,
  context: RequestContext,
): Chosen<Extract<Item, { kind: K }>>[] {
  const pools = index.pools.get(kind) ?? [];
  return pools.map(({ units, standing }) => (standing ?? timely(units, context)) as Chosen<Extract<Item, { kind: K }>>);
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

function measuring(index: LabIndex, context: RequestContext): Chosen<Extensometer>[] {
  const { strain } = context.needs;
  if (strain.how !== 'extensometer') return [];
  return split(index, 'extensometer', context).filter(({ part }) => part.details.measures === strain.rule!.measures);
}

function reading(index: LabIndex, context: RequestContext): Chosen<Transducer>[] {
  const { chamber, temperature } = context.needs;
  return chamber ? split(index, 'transducer', context).filter(({ part }) => reads(part, temperature.value)) : [];
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
function endChoices(index: LabIndex, context: RequestContext): Chosen<Ends>[] {
  const { needs } = context;
  const { ends } = needs;
  if (ends.by === 'platens') return bothSides(split(index, 'platen', context));
  const holding = split(index, 'grip', context).filter(({ part }) =>
    part.details.acceptedEnds.includes(needs.specimen.endShape),
  );
  if (ends.by === 'grips') return bothSides(holding);
  const fitting = split(index, 'fixture', context).filter(({ part }) => part.details.purposes.includes(ends.purpose));
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
