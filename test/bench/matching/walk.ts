import { performance } from 'node:perf_hooks';
import type { Adapter, Coupling, Item, Lab, MatchSettings, Needs, TimeWindow } from '#libs/matching/src/index.js';
import { brokenRules, holds, plainRating, plainUsable } from '#test/properties/matching/plain-rules.js';
import type { PlainTrain } from '#test/properties/matching/plain-rules.js';
import { holders } from '#test/properties/matching/plain-walk.js';

type Of<K extends Item['kind']> = Extract<Item, { kind: K }>;

/** The walk took longer than it was given. */
export class OutOfTime extends Error {}

/**
 * The plain way: on each frame every cell with every holder, adapters that join them, every extensometer, chamber and guard, nested
 * loops that leave out at once what cannot serve by its own figures; each whole train is judged by the plain rules, until one passes.
 *
 * @param untilMs when to give up, on the clock of `performance.now()`
 * @returns ids of the frames that can, and how many whole trains were judged
 * @throws {OutOfTime} when that moment has passed
 */
export function walk(
  lab: Lab,
  needs: Needs,
  settings: MatchSettings,
  period: TimeWindow,
  untilMs: number,
): { frames: string[]; judged: number } {
  let judged = 0;
  const passes = (train: PlainTrain) => {
    judged += 1;
    if (performance.now() > untilMs) throw new OutOfTime();
    return brokenRules(train, needs, lab, settings, period).length === 0;
  };
  const serves = (item: Item) => plainUsable(item, needs, period).length > 0;
  const load = needs.peakHigh.value * (1 + settings.forceMargin);
  const carries = (item: Item) => serves(item) && plainRating(item, needs) >= load * (1 - 1e-9);
  const frames = lab.items
    .filter((item): item is Of<'frame'> => item.kind === 'frame')
    .filter((frame) => anyTrain(lab, frame, needs, { passes, serves, carries }));
  return { frames: frames.map(({ id }) => id).sort(), judged };
}

interface Tests {
  passes: (train: PlainTrain) => boolean;
  serves: (item: Item) => boolean;
  carries: (item: Item) => boolean;
}

function anyTrain(lab: Lab, frame: Of<'frame'>, needs: Needs, { passes, serves, carries }: Tests): boolean {
  const of = <K extends Item['kind']>(kind: K) => lab.items.filter((item): item is Of<K> => item.kind === kind);
  const capacityN = needs.direction === 'tension' ? frame.details.tensionCapacityN : frame.details.compressionCapacityN;
  if (capacityN < needs.peakHigh.value || !serves(frame)) return false;
  const adapters = of('adapter').filter(carries);
  const extensometers = needs.strain.how === 'extensometer' ? of('extensometer').filter(serves) : [];
  const chambers = needs.chamber ? of('chamber').filter(serves) : [];
  for (const cell of of('load-cell')) {
    if (cell.details.capacityN > capacityN || cell.details.capacityN < needs.peakHigh.value || !serves(cell)) continue;
    for (const cellAt of frame.details.cellPositions) {
      const seat = cellAt === 'crosshead' ? frame.details.crossheadCoupling : frame.details.baseCoupling;
      if (!meets(seat, cell.details.frameCoupling)) continue;
      const top = cellAt === 'crosshead' ? cell.details.specimenCoupling : frame.details.crossheadCoupling;
      const bottom = cellAt === 'crosshead' ? frame.details.baseCoupling : cell.details.specimenCoupling;
      for (const holder of holders(lab, needs)) {
        const { upper, lower, faces } = holder;
        if (![upper, lower].every((end) => carries(end) && holds(end, faces, needs)) || (faces && !carries(faces)))
          continue;
        for (const upperAdapters of joining(top, upper.details.coupling, adapters))
          for (const lowerAdapters of joining(
            bottom,
            lower.details.coupling,
            adapters.filter((each) => !upperAdapters.includes(each)),
          ))
            for (const extensometer of [...extensometers, null])
              for (const chamber of [...chambers, null])
                for (const guard of [null, ...of('guard')])
                  if (
                    passes({
                      frame,
                      cell,
                      cellAt,
                      upperAdapters,
                      lowerAdapters,
                      ...holder,
                      extensometer,
                      chamber,
                      guard,
                      thermocouple: null,
                    })
                  )
                    return true;
      }
    }
  }
  return false;
}

/** Every row of at most two adapters between two ends. */
function joining(from: Coupling, to: Coupling, adapters: readonly Adapter[], most = 2): Adapter[][] {
  const here = meets(from, to) ? [[]] : [];
  if (most === 0) return here;
  const further = adapters.flatMap((adapter) => {
    const [a, b] = adapter.details.ends;
    const rest = adapters.filter((each) => each !== adapter);
    return [
      ...(meets(from, a) ? joining(b, to, rest, most - 1) : []),
      ...(meets(from, b) ? joining(a, to, rest, most - 1) : []),
    ].map((path) => [adapter, ...path]);
  });
  return [...here, ...further];
}

function meets(a: Coupling, b: Coupling): boolean {
  return (
    a.type === b.type &&
    a.sizeMm === b.sizeMm &&
    (a.gender === 'plain' ? b.gender === 'plain' : b.gender !== 'plain' && a.gender !== b.gender)
  );
}
