import type { Adapter, Coupling, Item, Lab, MatchSettings, Needs, TimeWindow } from '#libs/matching/src/index.js';
import { brokenRules } from '#test/properties/matching/plain-rules.js';
import type { PlainTrain } from '#test/properties/matching/plain-rules.js';
import { holders } from '#test/properties/matching/plain-walk.js';

type Of<K extends Item['kind']> = Extract<Item, { kind: K }>;

/**
 * The plain way: on each frame every cell with every holder, adapters that join them, every extensometer, chamber, guard and
 * thermocouple, each whole train judged by the plain rules, until one passes.
 *
 * @returns ids of the frames that can, and how many trains were judged
 */
export function walk(
  lab: Lab,
  needs: Needs,
  settings: MatchSettings,
  period: TimeWindow,
): { frames: string[]; judged: number } {
  let judged = 0;
  const passes = (train: PlainTrain) => {
    judged += 1;
    return brokenRules(train, needs, lab, settings, period).length === 0;
  };
  const frames = lab.items
    .filter((item): item is Of<'frame'> => item.kind === 'frame')
    .filter((frame) => anyTrain(lab, frame, needs, passes));
  return { frames: frames.map(({ id }) => id).sort(), judged };
}

function anyTrain(lab: Lab, frame: Of<'frame'>, needs: Needs, passes: (train: PlainTrain) => boolean): boolean {
  const of = <K extends Item['kind']>(kind: K) => lab.items.filter((item): item is Of<K> => item.kind === kind);
  const adapters = of('adapter');
  const extensometers = needs.strain.how === 'extensometer' ? of('extensometer') : [];
  const chambers = needs.chamber ? of('chamber') : [];
  for (const cell of of('load-cell'))
    for (const cellAt of frame.details.cellPositions)
      for (const holder of holders(lab, needs)) {
        const top = cellAt === 'crosshead' ? cell.details.specimenCoupling : frame.details.crossheadCoupling;
        const bottom = cellAt === 'crosshead' ? frame.details.baseCoupling : cell.details.specimenCoupling;
        for (const upperAdapters of joining(top, holder.upper.details.coupling, adapters))
          for (const lowerAdapters of joining(
            bottom,
            holder.lower.details.coupling,
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
