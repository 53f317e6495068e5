import { couplingId } from '../register/couplings.js';
import type { JawFace } from '../register/item.js';
import { seatOf } from '../rules/parts.js';
import type { Ends } from '../rules/parts.js';
import type { MatchSettings } from '../ask/settings.js';
import { cheaperFirst, freshest } from './fresh.js';
import type { Fresh } from './fresh.js';
import type { SoundOption } from './choices.js';
import type { LabIndex } from './lab-index.js';
import type { Options } from './options.js';

/** Ends with the faces that seat in them, cheapest first. */
export interface Holder {
  ends: Fresh<Ends>;
  /** One choice of no faces where the ends bring their own. */
  faces: readonly Fresh<JawFace | null>[];
  /** With the cheapest faces. */
  points: number;
}

/** Holders that are joined in one way, because their couplings are the same. */
export interface HolderGroup {
  sample: Ends;
  holders: readonly Holder[];
  /** Those whose ends an item is part of, by the id of each that hangs somewhere. */
  having: ReadonlyMap<string, readonly Holder[]>;
  /** Those that take separate faces, by the name of the seat. */
  seated: ReadonlyMap<string, readonly Holder[]>;
}

const NO_FACES: SoundOption<null> = { part: null, units: [], cautions: 0 };

/** Every sound way to hold the specimen on any frame, grouped by coupling; made once for a request. */
export function holderGroups(options: Options, { fittedOn }: LabIndex, settings: MatchSettings): HolderGroup[] {
  const faces = new Map(
    [...options.faces].map(([seat, list]) => [seat, freshest<JawFace | null>(list.sound, settings)]),
  );
  const none = freshest<JawFace | null>([NO_FACES], settings);
  const groups = new Map<number, Holder[]>();
  for (const ends of freshest(options.ends.sound, settings)) {
    const seat = seatOf(ends.option.part);
    const seated = seat === null ? none : (faces.get(seat) ?? []);
    if (seated.length === 0) continue;
    const { upper, lower } = ends.option.part;
    const key = couplingId(upper.details.coupling) * 4096 + couplingId(lower.details.coupling);
    const group = groups.get(key) ?? [];
    groups.set(key, group);
    group.push({ ends, faces: seated, points: ends.points + seated[0]!.points });
  }
  return [...groups.values()].map((holders) => {
    holders.sort(cheaperFirst);
    return {
      sample: holders[0]!.ends.option.part,
      holders,
      having: byItem(holders, fittedOn),
      seated: bySeat(holders),
    };
  });
}

function byItem(holders: readonly Holder[], fittedOn: LabIndex['fittedOn']): Map<string, Holder[]> {
  const found = new Map<string, Holder[]>();
  for (const holder of holders)
    for (const list of holder.ends.option.units)
      for (const { id } of list) if (fittedOn.has(id)) add(found, id, holder);
  return found;
}

function bySeat(holders: readonly Holder[]): Map<string, Holder[]> {
  const found = new Map<string, Holder[]>();
  for (const holder of holders) {
    const seat = seatOf(holder.ends.option.part);
    if (seat !== null) add(found, seat, holder);
  }
  return found;
}

function add(found: Map<string, Holder[]>, key: string, holder: Holder): void {
  const list = found.get(key);
  if (list) list.push(holder);
  else found.set(key, [holder]);
}
