import { couplingId, meets } from '../register/couplings.js';
import type { Adapter, Coupling } from '../register/item.js';
import { blankParts } from '../rules/parts.js';
import type { Adapters, Parts } from '../rules/parts.js';
import { MOST_ADAPTERS, openEnds } from '../rules/couplings.js';
import { ADAPTER_CHECKS, tally } from './checks.js';
import type { LabIndex } from './lab-index.js';
import { compareText } from './lab-index.js';
import { timely } from './options.js';
import type { RequestContext } from './request-context.js';
import { NO_RULES, ruleSets, setOf } from './rule-set.js';
import type { RuleSet } from './rule-set.js';

/** Most alternatives between two ends, shortest first. A longer one may help where a stack is too short. */
const MOST_ROUTES = 12;

/** More kinds of ends than any lab has; keeps the keys of pairs of ends apart. */
const MOST_ENDS = 4096;
const MOST_KEYS = MOST_ENDS ** 2;

/** Stands for ends that do not meet. */
const NOTHING: readonly Known[] = [];

const COUPLINGS = setOf('couplings');

/** A way to join both sides, the length that it adds, and the rules that it certainly fails. */
export interface Joining {
  adapters: Adapters;
  lengthMm: number;
  /** Mass above the specimen, and below it, kg. */
  upperKg: number;
  lowerKg: number;
  fails: RuleSet;
}

interface Known {
  adapter: Adapter;
  units: readonly Adapter[];
  /** Rules that it fails by itself. */
  fails: RuleSet;
}

/** What has to be joined. */
type Joined = Pick<Parts, 'frame' | 'cell' | 'cellAt' | 'ends'>;

/** Finds adapters between two open ends on the graph of couplings: fewest first, then lightest. Good for one request. */
export class Routes {
  private readonly sound = new Map<number, Joinings>();
  private readonly somehow = new Map<number, Joinings>();
  private readonly soundPaths = new Map<number, readonly Path[]>();
  private readonly anyPaths = new Map<number, readonly Path[]>();
  private readonly steps = new Map<number, readonly Step[]>();
  private readonly pools = new Map<string, readonly Adapter[]>();
  private readonly adapters: readonly Known[];

  constructor(index: LabIndex, context: RequestContext) {
    const scratch = blankParts();
    this.adapters = (index.pools.get('adapter') ?? []).map((pool) => {
      const [list] = timely(pool, context).units as [readonly Adapter[]];
      const adapter = list[0]!;
      for (const { id } of list) this.pools.set(id, list);
      scratch.adapters = { upper: [adapter], lower: [] };
      return { adapter, units: list, fails: tally(ADAPTER_CHECKS, scratch, context).fails };
    });
  }

  /** Adapters for both sides, as units that differ, fewest first; none when the ends cannot be joined. */
  join(parts: Joined): Joinings {
    return this.pairings(parts, this.sound, (from, to) => this.between(from, to, false));
  }

  /** The same, then adapters that fail a rule of their own, then trains whose ends do not meet. */
  joinSomehow(parts: Joined): Joinings {
    return this.pairings(parts, this.somehow, (from, to) => [...this.between(from, to, true), NOTHING]);
  }

  /** Units that could stand in for an adapter of a train, itself included. */
  poolOf(adapter: Adapter): readonly Adapter[] {
    return this.pools.get(adapter.id) ?? [adapter];
  }

  private pairings(
    parts: Joined,
    known: Map<number, Joinings>,
    between: (from: Coupling, to: Coupling) => readonly Path[],
  ): Joinings {
    const { upper, lower } = openEnds(parts);
    const above = parts.ends.upper.details.coupling;
    const below = parts.ends.lower.details.coupling;
    const key = keyOf(upper.coupling, above) * MOST_KEYS + keyOf(lower.coupling, below);
    const found = known.get(key) ?? new Joinings(between(upper.coupling, above), between(lower.coupling, below));
    known.set(key, found);
    return found;
  }

  private between(from: Coupling, to: Coupling, anyState: boolean): readonly Path[] {
    const key = keyOf(from, to);
    const known = anyState ? this.anyPaths : this.soundPaths;
    const found = known.get(key);
    if (found) return found;
    const made = anyState
      ? [...this.between(from, to, false), ...this.walk(from, to, false).filter(isUnsound)]
      : this.walk(from, to, true);
    known.set(key, made);
    return made;
  }

  private walk(from: Coupling, to: Coupling, sound: boolean): readonly Path[] {
    const done: Path[] = meets(from, to) ? [[]] : [];
    let open: { coupling: Coupling; path: Path }[] = [{ coupling: from, path: [] }];
    for (let length = 1; length <= MOST_ADAPTERS && done.length < MOST_ROUTES; length += 1) {
      const there: Path[] = [];
      const further: typeof open = [];
      for (const { coupling, path } of open)
        for (const { known, other } of this.stepsFrom(coupling)) {
          if (sound && known.fails !== NO_RULES) continue;
          if (meets(other, to)) there.push([...path, known]);
          if (length < MOST_ADAPTERS) further.push({ coupling: other, path: [...path, known] });
        }
      done.push(...there.sort(byMass));
      open = further;
    }
    return done.slice(0, MOST_ROUTES);
  }

  private stepsFrom(coupling: Coupling): readonly Step[] {
    const id = couplingId(coupling);
    const found = this.steps.get(id);
    if (found) return found;
    const made = this.adapters.flatMap((known): Step[] => {
      const [a, b] = known.adapter.details.ends;
      return [
        ...(meets(coupling, a) ? [{ known, other: b }] : []),
        ...(meets(coupling, b) ? [{ known, other: a }] : []),
      ];
    });
    this.steps.set(id, made);
    return made;
  }
}

/** Adapters of one side, from frame or cell to the specimen. */
type Path = readonly Known[];

/** An adapter that meets an end, and the end that it offers instead. */
interface Step {
  known: Known;
  other: Coupling;
}

function byMass(a: Path, b: Path): number {
  return massOf(a) - massOf(b) || compareText(nameOf(a), nameOf(b));
}

function massOf(path: Path): number {
  let sumKg = 0;
  for (const { adapter } of path) sumKg += adapter.massKg;
  return sumKg;
}

function nameOf(path: Path): string {
  return path.map(({ adapter }) => adapter.tag).join();
}

/** Every way above combined with every way below. Pairs are made one by one, since most trains use the first. */
export class Joinings {
  private readonly made: Joining[] = [];
  private tried = 0;
  private sure: RuleSet | null = null;

  constructor(
    private readonly uppers: readonly Path[],
    private readonly lowers: readonly Path[],
  ) {}

  /** Every one. */
  get all(): readonly Joining[] {
    this.nth(Infinity);
    return this.made;
  }

  /** Rules that each of them fails; all rules when there is none. */
  get failsSurely(): RuleSet {
    this.sure ??= this.all.reduce<RuleSet>((least, { fails }) => ruleSets.common(least, fails), ruleSets.all);
    return this.sure;
  }

  /** The one at this place, fewest adapters first; null beyond the last. */
  nth(n: number): Joining | null {
    const all = this.uppers.length * this.lowers.length;
    while (this.made.length <= n && this.tried < all) {
      const upper = this.uppers[Math.floor(this.tried / this.lowers.length)]!;
      const found = joining(upper, this.lowers[this.tried % this.lowers.length]!);
      if (found) this.made.push(found);
      this.tried += 1;
    }
    return this.made[n] ?? null;
  }
}

function joining(upper: Path, lower: Path): Joining | null {
  const units = distinct([...upper, ...lower]);
  if (!units) return null;
  const unjoined = upper === NOTHING || lower === NOTHING ? COUPLINGS : NO_RULES;
  return {
    adapters: { upper: units.slice(0, upper.length), lower: units.slice(upper.length) },
    upperKg: massOf(upper),
    lowerKg: massOf(lower),
    lengthMm: units.reduce((sum, { lengthMm }) => sum + lengthMm, 0),
    fails: [...upper, ...lower].reduce((all, { fails }) => ruleSets.union(all, fails), unjoined),
  };
}

function keyOf(from: Coupling, to: Coupling): number {
  return couplingId(from) * MOST_ENDS + couplingId(to);
}

function isUnsound(path: Path): boolean {
  return path.some(({ fails }) => fails !== NO_RULES);
}

/** A unit for each place, none twice; null when a pool is too small. */
function distinct(path: Path): Adapter[] | null {
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
