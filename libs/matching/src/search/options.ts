import type {
  Chamber,
  Extensometer,
  Guard,
  Item,
  ItemKind,
  JawFace,
  LoadCell,
  Side,
  Transducer,
} from '../register/item.js';
import { slotOf } from '../rules/parts.js';
import type { Ends, EndItem, Parts } from '../rules/parts.js';
import { isGoodFor } from '../rules/usable-windows.js';
import { PART_CHECKS } from './checks.js';
import { Choices } from './choices.js';
import type { Chosen, LabIndex, Pool, Span } from './lab-index.js';
import type { RequestContext } from './request-context.js';

export interface Options {
  cells: Choices<LoadCell>;
  ends: Choices<Ends>;
  /** Separate faces by the name of their seat. */
  faces: ReadonlyMap<string, Choices<JawFace>>;
  extensometers: Choices<Extensometer | null>;
  chambers: Choices<Chamber | null>;
  guards: Choices<Guard | null>;
  thermocouples: Choices<Transducer | null>;
}

/** Makes the choices for one part. */
type Maker<T> = (index: LabIndex, context: RequestContext) => T;

const NONE: readonly Chosen<null>[] = [{ part: null, units: [] }];

/** How the choices for each part are made. */
const MAKERS: { readonly [P in keyof Options]: Maker<Options[P]> } = {
  cells: (index, context) =>
    new Choices(
      split(index, 'load-cell', context, (cell) => senses(cell, context.needs.direction)),
      (parts, part) => (parts.cell = part),
      PART_CHECKS.cell,
      context,
    ),
  ends: (index, context) =>
    new Choices(endChoices(index, context), (parts, part) => (parts.ends = part), PART_CHECKS.ends, context),
  faces: (index, context) => (context.needs.ends.by === 'platens' ? new Map() : facesBySeat(index, context)),
  extensometers: (index, context) =>
    new Choices(
      [...measuring(index, context), ...NONE],
      (parts, part) => (parts.extensometer = part),
      PART_CHECKS.extensometer,
      context,
    ),
  chambers: (index, context) =>
    new Choices(
      [...(context.needs.chamber ? split(index, 'chamber', context) : []), ...NONE],
      (parts, part) => (parts.chamber = part),
      PART_CHECKS.chamber,
      context,
    ),
  guards: (index, context) =>
    new Choices(
      [...split(index, 'guard', context), ...NONE],
      (parts, part) => (parts.guard = part),
      PART_CHECKS.guard,
      context,
    ),
  thermocouples: (index, context) =>
    new Choices(
      [...reading(index, context), ...NONE],
      (parts, part) => (parts.thermocouple = part),
      PART_CHECKS.thermocouple,
      context,
    ),
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

/** Every choice for each part. */
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

/** The pools of a kind as choices. */
function split<K extends ItemKind>(
  index: LabIndex,
  kind: K,
  context: RequestContext,
  suits: (sample: Extract<Item, { kind: K }>) => boolean = () => true,
): Chosen<Extract<Item, { kind: K }>>[] {
  const chosen: Chosen<Item>[] = [];
  for (const pool of index.pools.get(kind) ?? [])
    if (suits(pool.first.part as Extract<Item, { kind: K }>)) chosen.push(timely(pool, context));
  return chosen as Chosen<Extract<Item, { kind: K }>>[];
}

/** The units of a pool that are usable at some time of the period; if none is, the first one stands for all. */
export function timely(pool: Pool, context: RequestContext): Chosen<Item> {
  return pool.standing ?? (pool.spans && atOnce(pool, pool.spans, context)) ?? byUnit(pool.units, context);
}

/** The quick answer where all units are usable for the whole period, or none ever is; null otherwise. */
function atOnce({ all, first }: Pool, spans: readonly Span[], context: RequestContext): Chosen<Item> | null {
  const need = context.calibrationNeed(first.part.kind);
  const { period } = context;
  let good = false;
  for (const { calibration, startMs, endMs } of spans) {
    if (need && !isGoodFor(calibration, need)) continue;
    if (startMs <= period.startMs && endMs >= period.endMs) return all;
    good = true;
  }
  return good ? null : first;
}

function byUnit(units: readonly Item[], context: RequestContext): Chosen<Item> {
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
  return split(index, 'extensometer', context, ({ details }) => details.measures === strain.rule!.measures);
}

function reading(index: LabIndex, context: RequestContext): Chosen<Transducer>[] {
  const { chamber, temperature } = context.needs;
  return chamber ? split(index, 'transducer', context, (each) => reads(each, temperature.value)) : [];
}

function reads({ details }: Transducer, temperatureC: number): boolean {
  return details.measures === 'temperature' && details.rangeFrom <= temperatureC && details.rangeTo >= temperatureC;
}

/** Every way to hold the specimen with fixtures of the right purpose and grips for the right end shape. */
function endChoices(index: LabIndex, context: RequestContext): Chosen<Ends>[] {
  const { needs } = context;
  const { ends } = needs;
  if (ends.by === 'platens') return bothSides(split(index, 'platen', context));
  const holding = split(index, 'grip', context, ({ details }) =>
    details.acceptedEnds.includes(needs.specimen.endShape),
  );
  if (ends.by === 'grips') return bothSides(holding);
  const fitting = split(index, 'fixture', context, ({ details }) => details.purposes.includes(ends.purpose));
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

function facesBySeat(index: LabIndex, context: RequestContext): Map<string, Choices<JawFace>> {
  const seats = new Map<string, Chosen<JawFace>[]>();
  for (const face of split(index, 'jaw-face', context)) {
    const { slot } = face.part.details;
    const list = seats.get(slot);
    if (list) list.push(face);
    else seats.set(slot, [face]);
  }
  const place = (parts: Parts, part: JawFace) => (parts.faces = part);
  return new Map([...seats].map(([slot, list]) => [slot, new Choices(list, place, PART_CHECKS.faces, context)]));
}
