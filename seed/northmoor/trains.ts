import type { LinkRole } from '#libs/matching/src/index.js';

export interface DemoLink {
  role: LinkRole;
  tag: string;
}

/** A load train that was or is really fitted in the demo lab. */
export interface DemoTrain {
  frame: string;
  links: readonly DemoLink[];
}

/** The trains of the jobs that ran or run, by a word for their work. The rules pass each of them, see the spec. */
export const TRAINS = {
  plastics: train('FR-10K', {
    'load-cell': 'LM-10K-1',
    ends: 'GC-WEDGE10-1',
    faces: 'JF-W10-DIAMOND-1',
    extensometer: 'EX-PLAST-1',
  }),
  plasticsOther: train('FR-30K', {
    'load-cell': 'LM-10K-2',
    ends: 'GC-WEDGE10-2',
    faces: 'JF-W10-DIAMOND-3',
    extensometer: 'EX-PLAST-2',
  }),
  steerer8: train('FR-100K', {
    'load-cell': 'LH-100K-1',
    ends: 'GD-WEDGE100-1',
    faces: 'JF-W100-VEE-1',
    extensometer: 'EX-CLIP50-1',
  }),
  steerer6: train('FR-50K', {
    'load-cell': 'LM-50K-1',
    ends: 'GC-WEDGE50-1',
    faces: 'JF-W50-VEE-1',
    extensometer: 'EX-CLIP50-2',
  }),
  fabric: train('FR-5K', { 'load-cell': 'LC-5K-1', ends: 'GB-AIR5-1', faces: 'JF-A200-LINED-1' }),
  rubber: train('FR-1K', { 'load-cell': 'LC-0500-1', ends: 'GB-ROLL1-1', extensometer: 'EX-LONG-1' }),
  lapShear: train('FR-30K', { 'load-cell': 'LM-30K-1', ends: 'GC-WEDGE30-1', faces: 'JF-W30-SERRATED-1' }),
  bend: train('FR-1K', { 'load-cell': 'LC-0500-1', ends: 'FX-BEND-S2', extensometer: 'EX-DEFL-1', guard: 'GU-S1' }),
  peel: train('FR-0500', { 'load-cell': 'LC-0500-3', ends: 'GB-AIR1-1', faces: 'JF-A100-RUBBER-1' }),
  hook: train('FR-10K', { 'load-cell': 'LM-5K-1', ends: 'FX-HOOK-1', 'lower-adapter': 'AD-30-15-1' }),
  foam: train('FR-1K', { 'load-cell': 'LC-1K-2', ends: 'PL-150-1' }),
  torsion: train('FR-T200', { ends: 'GT-CHUCK200-1', 'load-cell': 'LT-0200-1' }),
  heavy: train('FR-250K', { 'load-cell': 'LH-250K-1', ends: 'GD-WEDGE250-1', faces: 'JF-W250-SERRATED-1' }),
} as const satisfies Record<string, DemoTrain>;

export type TrainName = keyof typeof TRAINS;

/** What hangs on each frame at the start. */
export const RIGS: readonly DemoTrain[] = [
  TRAINS.peel,
  TRAINS.rubber,
  TRAINS.fabric,
  TRAINS.plastics,
  TRAINS.lapShear,
  TRAINS.steerer6,
  TRAINS.steerer8,
  TRAINS.heavy,
  TRAINS.torsion,
];

function train(frame: string, links: Partial<Record<LinkRole, string>>): DemoTrain {
  return { frame, links: Object.entries(links).map(([role, tag]) => ({ role: role as LinkRole, tag })) };
}
