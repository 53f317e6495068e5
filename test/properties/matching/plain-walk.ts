import type { Adapter, Item, Lab, MatchSettings, Needs, RuleCode, TimeWindow } from '#libs/matching/src/index.js';
import { brokenRules } from './plain-rules.js';
import type { PlainEnd, PlainTrain } from './plain-rules.js';

type Of<K extends Item['kind']> = Extract<Item, { kind: K }>;

/** Every train that can be put together on a frame out of all lists, right or wrong, one after the other. */
export function* allTrains(lab: Lab, frame: Of<'frame'>, needs: Needs): Generator<PlainTrain> {
  const of = <K extends Item['kind']>(kind: K) => lab.items.filter((item): item is Of<K> => item.kind === kind);
  const torque = needs.direction === 'torque';
  const cells = of('load-cell').filter(({ details }) => (torque ? details.torqueCapacityNm : details.capacityN) > 0);
  const adapterPaths = paths(of('adapter'));
  const extensometers =
    needs.strain.how === 'extensometer'
      ? of('extensometer').filter(({ details }) => details.measures === needs.strain.rule!.measures)
      : [];
  const chambers = needs.chamber ? of('chamber') : [];
  const warm = needs.temperature.value;
  const thermocouples = needs.chamber
    ? of('transducer').filter(
        ({ details }) => details.measures === 'temperature' && details.rangeFrom <= warm && details.rangeTo >= warm,
      )
    : [];
  for (const cell of cells)
    for (const cellAt of frame.details.cellPositions)
      for (const { upper, lower, faces } of holders(lab, needs))
        for (const upperAdapters of adapterPaths)
          for (const lowerAdapters of adapterPaths)
            if (!upperAdapters.some((each) => lowerAdapters.includes(each)))
              for (const extensometer of [null, ...extensometers])
                for (const chamber of [null, ...chambers])
                  for (const guard of [null, ...of('guard')])
                    for (const thermocouple of [null, ...thermocouples])
                      yield {
                        frame,
                        cell,
                        cellAt,
                        upperAdapters,
                        lowerAdapters,
                        upper,
                        lower,
                        faces,
                        extensometer,
                        chamber,
                        guard,
                        thermocouple,
                      };
}

/** Whether any train passes, and otherwise the fewest rules that any breaks. */
export function plainAnswer(
  lab: Lab,
  frame: Of<'frame'>,
  needs: Needs,
  settings: MatchSettings,
  period: TimeWindow,
): { passes: boolean; fewest: RuleCode[] | null } {
  let fewest: RuleCode[] | null = null;
  for (const train of allTrains(lab, frame, needs)) {
    const broken = brokenRules(train, needs, lab, settings, period);
    if (broken.length === 0) return { passes: true, fewest: [] };
    if (!fewest || broken.length < fewest.length) fewest = broken;
  }
  return { passes: false, fewest };
}

/** None, one, or two different adapters in a row. */
function paths(adapters: readonly Adapter[]): Adapter[][] {
  return [
    [],
    ...adapters.map((each) => [each]),
    ...adapters.flatMap((a) => adapters.filter((b) => b !== a).map((b) => [a, b])),
  ];
}

export interface Holder {
  upper: PlainEnd;
  lower: PlainEnd;
  faces: Of<'jaw-face'> | null;
}

/** Everything that could hold the specimen: pairs, and every upper with every lower, with every set of faces that fits the seat. */
export function holders(lab: Lab, needs: Needs): Holder[] {
  const { ends } = needs;
  const of = <K extends Item['kind']>(kind: K) => lab.items.filter((item): item is Of<K> => item.kind === kind);
  const grips = of('grip').filter(({ details }) => details.acceptedEnds.includes(needs.specimen.endShape));
  const fixtures = of('fixture').filter(
    ({ details }) => ends.by === 'fixture' && details.purposes.includes(ends.purpose),
  );
  if (ends.by === 'platens') return couples(of('platen'));
  if (ends.by === 'grips') return couples(grips).flatMap((each) => dressed(each, of('jaw-face')));
  if (!ends.withGrip) return couples(fixtures);
  return grips
    .filter(({ details }) => details.side !== 'lower')
    .flatMap((upper) =>
      fixtures.filter(({ details }) => details.side !== 'upper').map((lower) => ({ upper, lower, faces: null })),
    )
    .flatMap((each) => dressed(each, of('jaw-face')));
}

function couples(ends: readonly PlainEnd[]): Holder[] {
  const pairs = ends
    .filter(({ details }) => details.side === 'pair')
    .map((pair) => ({ upper: pair, lower: pair, faces: null }));
  const lowers = ends.filter(({ details }) => details.side === 'lower');
  const singles = ends
    .filter(({ details }) => details.side === 'upper')
    .flatMap((upper) => lowers.map((lower) => ({ upper, lower, faces: null })));
  return [...pairs, ...singles];
}

/** Grips with a seat take faces of that seat; two grips whose seats differ do not make a holder. */
function dressed(holder: Holder, faces: readonly Of<'jaw-face'>[]): Holder[] {
  const seats = [holder.upper, holder.lower].flatMap((end) => (end.kind === 'grip' ? [end.details.faceSlot] : []));
  const [seat = null] = seats;
  if (seats.some((each) => each !== seat)) return [];
  if (seat === null) return [holder];
  const seated = faces.filter((face) => face.details.slot === seat).map((face) => ({ ...holder, faces: face }));
  return seated.length > 0 ? seated : [holder];
}
