import { couplingId } from '../register/couplings.js';
import type { Parts } from '../rules/parts.js';
import { openEnds } from '../rules/couplings.js';
import type { MatchSettings } from '../ask/settings.js';
import { cheaperFirst } from './fresh.js';
import type { HolderGroup } from './holders.js';
import type { Joinings, Routes } from './routes.js';

export interface Reachable {
  group: HolderGroup;
  /** How its ends are joined with the open ends, fewest adapters first. */
  joinings: Joinings;
  /** Points of the adapters, at least. */
  adapterPoints: number;
}

/** Which holders a cell on a frame can be joined with; trains with the same open ends share the answer. */
export class Reach {
  private readonly known = new Map<number, readonly Reachable[]>();

  constructor(
    private readonly routes: Routes,
    private readonly groups: readonly HolderGroup[],
    private readonly settings: MatchSettings,
  ) {}

  /**
   * The groups of holders, those with the least points first.
   *
   * @param hanging whether adapters hang on the frame, which then may cost nothing
   */
  from(parts: Pick<Parts, 'frame' | 'cell' | 'cellAt'>, hanging: boolean): readonly Reachable[] {
    const { upper, lower } = openEnds(parts);
    const key = (couplingId(upper.coupling) * 4096 + couplingId(lower.coupling)) * 2 + (hanging ? 1 : 0);
    const found = this.known.get(key) ?? this.reachable(parts, hanging);
    this.known.set(key, found);
    return found;
  }

  private reachable(parts: Pick<Parts, 'frame' | 'cell' | 'cellAt'>, hanging: boolean): Reachable[] {
    const each = hanging ? 0 : this.settings.weights.changeoverPerMin * this.settings.changeMin.adapter;
    return this.groups
      .flatMap((group): (Reachable & { points: number })[] => {
        const joinings = this.routes.join({ ...parts, ends: group.sample });
        const first = joinings.nth(0);
        if (!first) return [];
        const adapterPoints = each * (first.adapters.upper.length + first.adapters.lower.length);
        return [{ group, joinings, adapterPoints, points: adapterPoints + group.holders[0]!.points }];
      })
      .sort(cheaperFirst);
  }
}
