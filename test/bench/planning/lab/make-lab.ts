import type {
  Candidate,
  Frame,
  Item,
  Job,
  LinkNeed,
  Problem,
  Technician,
  Visit,
  Window,
} from '#libs/planning/src/index.js';
import { DEFAULT_OBJECTIVE } from '#libs/planning/src/index.js';
import { Random } from '#libs/planning/src/engine/random.js';

export interface LabSize {
  frames: number;
  jobs: number;
  /** Whether setups and tests need technicians of a roster. */
  roster: boolean;
  seed: number;
}

const DAY_MIN = 1440;
const DAYS = 56;

/** Kinds of train: each draws on one pool of cells and one of grips, both with fewer units than frames that could use them. */
const KINDS = 6;

/** A made-up lab with scarce pools, shifts, calibration that runs out, and more work than is comfortable. The same seed gives the same lab. */
export function makeLab(size: LabSize): Problem {
  const random = new Random(size.seed * 7919 + size.frames);
  const cells = pools('C', Math.max(1, Math.round(size.frames * 0.25)), random);
  const grips = pools('G', Math.max(1, Math.round(size.frames * 0.3)), random);
  const frames = Array.from({ length: size.frames }, (_, at) => frameOf(at, random));
  const items = [...cells, ...grips].flat();
  const visits = cells
    .flat()
    .filter(({ usable }) => usable !== null)
    .map((item) => visitOf(item, random));
  const loadMin = (size.jobs / size.frames) * 260;
  return {
    horizonMin: DAYS * DAY_MIN,
    frames,
    items,
    technicians: size.roster ? rosterOf(size.frames, random) : null,
    jobs: Array.from({ length: size.jobs }, (_, at) => jobOf(at, size.frames, loadMin, cells, grips, random)),
    visits,
    changeover: {
      byLinkMin: { cell: 25, grips: 15, extensometer: 10 },
      checkedLinks: ['cell'],
      checkMin: 10,
      rampCPerMin: 2,
      soakMin: 20,
      families: null,
    },
    objective: DEFAULT_OBJECTIVE,
    published: null,
    freezeUntilMin: 0,
  };
}

function pools(letter: string, units: number, random: Random): Item[][] {
  return Array.from({ length: KINDS }, (_, kind) =>
    Array.from({ length: units }, (_, at) => {
      const dueMin = random.below(5) === 0 ? (3 + random.below(20)) * DAY_MIN : 0;
      return {
        id: `${letter}${kind + 1}-${at + 1}`,
        usable: letter === 'C' && dueMin > 0 ? [{ startMin: 0, endMin: dueMin }] : null,
      };
    }),
  );
}

function visitOf({ id, usable }: Item, random: Random): Visit {
  const beforeMin = usable![0]!.endMin;
  return {
    id: `V-${id}`,
    itemId: id,
    durationMin: (1 + random.below(3)) * DAY_MIN,
    earliestMin: 0,
    beforeMin,
    inForceUntilMin: beforeMin + 365 * DAY_MIN,
  };
}

/** Monday to Friday; the horizon begins on a Monday at midnight. */
function weekdays(fromMin: number, untilMin: number): Window[] {
  return Array.from({ length: DAYS }, (_, day) => day)
    .filter((day) => day % 7 < 5)
    .map((day) => ({ startMin: day * DAY_MIN + fromMin, endMin: day * DAY_MIN + untilMin }));
}

function frameOf(at: number, random: Random): Frame {
  const late = random.below(3) === 0;
  const downDay = random.below(4) === 0 ? 2 + random.below(10) : -1;
  return {
    id: `F${at + 1}`,
    open: weekdays(360, late ? 1320 : 1080),
    down: downDay < 0 ? [] : [{ startMin: downDay * DAY_MIN, endMin: (downDay + 1) * DAY_MIN }],
    warmUpMin: 15,
    warmUpAfterMin: 240,
    rig: { items: {}, family: null, temperatureC: null },
  };
}

function rosterOf(frames: number, random: Random): Technician[] {
  return Array.from({ length: Math.ceil(frames * 0.8) }, (_, at) => ({
    id: `T${at + 1}`,
    shifts: random.below(2) === 0 ? weekdays(360, 840) : weekdays(840, 1320),
    authorisations: Array.from({ length: KINDS }, (_, kind) => `M${kind + 1}`).filter(() => random.below(10) < 7),
  }));
}

function jobOf(at: number, frames: number, loadMin: number, cells: Item[][], grips: Item[][], random: Random): Job {
  const kind = random.below(KINDS);
  const releaseMin = random.below(3) === 0 ? random.below(Math.ceil(loadMin)) * 2 : 0;
  const specimens = 3 + random.below(8);
  const perSpecimenMin = 10 + random.below(50);
  const temperatureC = kind === 0 && random.below(2) === 0 ? [-30, 80][random.below(2)]! : null;
  const links: LinkNeed[] = [
    { link: 'cell', pool: cells[kind]!.map(({ id }) => id) },
    { link: 'grips', pool: grips[(kind + random.below(2)) % KINDS]!.map(({ id }) => id) },
  ];
  const first = random.below(frames);
  const count = Math.max(1, Math.round(frames * (0.15 + 0.35 * random.unit())));
  const candidates: Candidate[] = Array.from({ length: count }, (_, x) => ({
    frameId: `F${((first + x) % frames) + 1}`,
    perSpecimenMin: perSpecimenMin + random.below(5),
    specimens,
    links,
    family: null,
    temperatureC,
  }));
  return {
    id: `J${at + 1}`,
    releaseMin,
    dueMin: releaseMin + 600 + random.below(Math.ceil(loadMin * 3)),
    weight: 1 + random.below(9),
    after: [],
    candidates,
    attended: random.below(4) === 0 ? 'setup' : 'throughout',
    authorisation: `M${kind + 1}`,
    hold: false,
    pin: null,
    running: null,
  };
}
