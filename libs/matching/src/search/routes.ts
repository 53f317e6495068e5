import { couplingKey, meets } from '../couplings.js';
import type { Adapter, Coupling } from '../item.js';
import type { Adapters, Parts } from '../parts.js';
import { MOST_ADAPTERS, openEnds } from '../rules/couplings.js';
import { checksOf, tally } from './checks.js';
import type { LabIndex } from './lab-index.js';
import { compareText } from './lab-index.js';
import type { RequestContext } from './request-context.js';

const ADAPTERS = checksOf(['adapters']);

/** Alternatives that are kept between two ends, shortest first. A longer one may serve where a stack is too short. */
const MOST_ROUTES = 12;

/** Left out: a train whose ends do not meet there. */
const NOTHING: readonly Known[] = [];

interface Known {
  adapter: Adapter;
  units: readonly Adapter[];
  sound: boolean;
}

/** Finds adapters between two open ends on the graph of couplings: fewest first, then lightest. Good for one request. */
export class Routes {
  private readonly found = new Map<string, readonly (readonly Known[])[]>();
  private readonly adapters: readonly Known[];

  constructor(index: LabIndex, context: RequestContext) {
    this.adapters = (index.pools.get('adapter') ?? []).flatMap(({ units }) => {
      const usable = (units as readonly Adapter[]).filter((unit) => context.windowsOf(unit).length > 0);
      const list = usable.length > 0 ? usable : (units as readonly Adapter[]).slice(0, 1);
      context.shareWindows(usable);
      const adapter = list[0]!;
      const sound =
        tally(ADAPTERS, { adapters: { upper: [adapter], lower: [] } } as unknown as Parts, context).fails === 0;
      return [{ adapter, units: list, sound }];
    });
  }

  /** Adapters for both sides, as units that differ, shortest first; nothing when the ends cannot be joined. */
  *join(parts: Pick<Parts, 'frame' | 'cell' | 'cellAt' | 'ends'>): Generator<Adapters> {
    const open = openEnds(parts);
    const uppers = this.between(open.upper.coupling, parts.ends.upper.details.coupling, false);
    if (uppers.length === 0) return;
    yield* pairings(uppers, this.between(open.lower.coupling, parts.ends.lower.details.coupling, false));
  }

  /** The same, then adapters that fail a rule of their own, then trains whose ends do not meet. */
  *joinSomehow(parts: Pick<Parts, 'frame' | 'cell' | 'cellAt' | 'ends'>): Generator<Adapters> {
    const open = openEnds(parts);
    const uppers = this.between(open.upper.coupling, parts.ends.upper.details.coupling, true);
    const lowers = this.between(open.lower.coupling, parts.ends.lower.details.coupling, true);
    yield* pairings([...uppers, NOTHING], [...lowers, NOTHING]);
  }

  /** Units that could stand in for an adapter of a train, itself included. */
  poolOf(adapter: Adapter): readonly Adapter[] {
    return this.adapters.find(({ units }) => units.some(({ id }) => id === adapter.id))?.units ?? [adapter];
  }

  private between(from: Coupling, to: Coupling, anyState: boolean): readonly (readonly Known[])[] {
    const key = `${couplingKey(from)}>${couplingKey(to)}>${anyState}`;
    const found = this.found.get(key);
    if (found) return found;
    const sound = this.walk(
      from,
      to,
      this.adapters.filter((each) => each.sound),
    );
    const routes = anyState ? [...sound, ...this.walk(from, to, this.adapters).filter(isUnsound)] : sound;
    this.found.set(key, routes);
    return routes;
  }

  private walk(from: Coupling, to: Coupling, adapters: readonly Known[]): readonly (readonly Known[])[] {
    const done: (readonly Known[])[] = meets(from, to) ? [[]] : [];
    let open: { coupling: Coupling; path: readonly Known[] }[] = [{ coupling: from, path: [] }];
    for (let length = 1; length <= MOST_ADAPTERS && done.length < MOST_ROUTES; length += 1) {
      open = open.flatMap(({ coupling, path }) => adapters.flatMap((known) => steps(coupling, known, path)));
      done.push(
        ...open
          .filter(({ coupling }) => meets(coupling, to))
          .map(({ path }) => path)
          .sort(byMass),
      );
    }
    return done.slice(0, MOST_ROUTES);
  }
}

function steps(
  coupling: Coupling,
  known: Known,
  path: readonly Known[],
): { coupling: Coupling; path: readonly Known[] }[] {
  const [a, b] = known.adapter.details.ends;
  const next = [...path, known];
  return [
    ...(meets(coupling, a) ? [{ coupling: b, path: next }] : []),
    ...(meets(coupling, b) ? [{ coupling: a, path: next }] : []),
  ];
}

function byMass(a: readonly Known[], b: readonly Known[]): number {
  const mass = (path: readonly Known[]) => path.reduce((sum, { adapter }) => sum + adapter.massKg, 0);
  const name = (path: readonly Known[]) => path.map(({ adapter }) => adapter.tag).join();
  return mass(a) - mass(b) || compareText(name(a), name(b));
}

function* pairings(uppers: readonly (readonly Known[])[], lowers: readonly (readonly Known[])[]): Generator<Adapters> {
  for (const upper of uppers) {
    for (const lower of lowers) {
      const units = distinct([...upper, ...lower]);
      if (units) yield { upper: units.slice(0, upper.length), lower: units.slice(upper.length) };
    }
  }
}

function isUnsound(path: readonly Known[]): boolean {
  return path.some(({ sound }) => !sound);
}

/** A unit for each place, none twice; null when a pool is too small. */
function distinct(path: readonly Known[]): Adapter[] | null {
  const used = new Map<Known, number>();
  const units: Adapter[] = [];
  for (const known of path) {
    const nth = used.get(known) ?? 0;
    const unit = known.units[nth];
    if (!unit) return null;
    used.set(known, nth + 1);
    units.push(unit);
  }
  return units;
}
