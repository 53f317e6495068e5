import type { ConformityAsk, JobState, RequestState } from '#libs/contract/src/index.js';
import {
  ask,
  beam,
  boltTorque,
  cord,
  dumbBell,
  dumbBellAt,
  flatBar,
  lap,
  prism,
  pull,
  push,
  roundBar,
  rubberDumbBell,
  strip,
  tPeel,
  trousers,
} from './ask-parts.js';
import type { AskPart } from './ask-parts.js';
import type { TeamName } from './people.js';
import { PRODUCTS } from './products.js';
import type { Product } from './products.js';
import type { TrainName } from './trains.js';

/** Working days from today and a time on the wall. */
export type Day = readonly [workingDays: number, time: string];

export interface DemoBatch {
  label?: string;
  method: string;
  material?: string;
  count: number;
  ask: AskPart;
  /** Figures that the requester typed in another unit, by field. */
  asTyped?: Record<string, { value: string; unit: string }>;
  /** Where its job is, once the request was accepted; `waiting` or `ready` follow from the specimens. */
  job?: DemoJob;
  /** Pieces that came so far; all of them when absent. */
  arrived?: number;
}

export interface DemoJob {
  state: Exclude<JobState, 'waiting' | 'ready' | 'aborted'>;
  train: TrainName;
  technician: string;
  /** Minutes before now at which it was taken, or the day on which it was done. */
  began: number | Day;
  /** Pieces tested so far; all when done. */
  tested?: number;
  why?: string;
  product: Product;
  /** Whether the frame recorded curves, from which the results were reduced; they were typed otherwise. */
  recorded?: true;
  /** A piece that broke far away from the others, with its share of the mean. */
  outlier?: { piece: number; share: number };
}

export interface DemoRequest {
  title: string;
  purpose: string;
  requester: string;
  team: TeamName;
  state: RequestState;
  created: Day;
  due?: Day;
  weight?: number;
  disposal?: 'return' | 'keep-90-days' | 'discard';
  conformity?: ConformityAsk;
  /** When the specimens came, or (later than now) are announced for. */
  specimens?: Day;
  batches: readonly DemoBatch[];
  /** Said on the request, in order; for returned and declined ones the first is the reason. */
  messages?: readonly { by: string; at: Day; body: string }[];
  /** Meant to have no load train in this lab. */
  impossible?: true;
}

const PA6 = 'pa6-gf30';
const EPOXY = 'adhesive-epoxy';
const INCHES = { 'geometry.widthMm': { value: '1', unit: 'in' }, 'geometry.overlapMm': { value: '0.5', unit: 'in' } };
const SIMPLE = { rule: 'simple', of: 'each' } as const;

/** What lies on the lab's desk at the start, oldest first; what is older is in `history.ts`. */
export const REQUESTS: readonly DemoRequest[] = [
  // Over: withdrawn, declined
  {
    title: 'Rack strut, old section',
    purpose: 'Does the old strut still hold 25 kg on one side?',
    requester: 'sam.whitlock',
    team: 'Components',
    state: 'withdrawn',
    created: [-24, '09:12'],
    due: [-10, '17:00'],
    batches: [{ method: 'component-pull', count: 3, ask: pull(320, 900, 1500, 40) }],
    messages: [
      { by: 'sam.whitlock', at: [-20, '11:30'], body: 'The strut is no longer built. We take the request back.' },
    ],
  },
  {
    title: 'Impact peel of the frame adhesive',
    purpose: 'Compare two adhesives under impact, 2 m/s.',
    requester: 'katja.lund',
    team: 'Frames & forks',
    state: 'declined',
    created: [-19, '15:40'],
    due: [-5, '17:00'],
    batches: [{ method: 'iso-11339', material: EPOXY, count: 5, ask: tPeel() }],
    messages: [
      {
        by: 'ruth.calloway',
        at: [-18, '09:05'],
        body: 'Impact wedge-peel runs at 2 to 3 m/s; our frames reach 2.5 m/min. It needs a drop-weight machine, which we do not have.',
      },
    ],
  },
  // Tested: reported, in review
  {
    title: 'Pannier bracket, lot 2430',
    purpose: 'Release of the moulding lot.',
    requester: 'sam.whitlock',
    team: 'Components',
    state: 'reported',
    created: [-15, '08:30'],
    due: [-6, '12:00'],
    specimens: [-14, '10:00'],
    conformity: {
      resultKey: 'peak-stress',
      lower: 140,
      upper: null,
      unit: 'MPa',
      specification: 'NC-M-104, bracket',
      ...SIMPLE,
    },
    batches: [
      {
        method: 'iso-527-2',
        material: PA6,
        count: 5,
        ask: dumbBell(),
        job: {
          state: 'done',
          train: 'plasticsOther',
          technician: 'priya.raman',
          began: [-8, '09:10'],
          recorded: true,
          product: PRODUCTS.pannierBracketPa6,
        },
      },
    ],
  },
  {
    title: 'Tent floor fabric, roll 88',
    purpose: 'Incoming check of the roll, warp.',
    requester: 'beth.tarrant',
    team: 'Tents & bags',
    state: 'reported',
    created: [-13, '10:20'],
    due: [-4, '17:00'],
    specimens: [-12, '09:00'],
    batches: [
      {
        label: 'Warp',
        method: 'iso-13934-1',
        material: 'fabric-woven',
        count: 5,
        ask: strip(),
        job: {
          state: 'done',
          train: 'fabric',
          technician: 'mei.lindqvist',
          began: [-7, '15:00'],
          product: PRODUCTS.tentFabric,
        },
      },
    ],
  },
  {
    title: 'Pannier hook, new spring',
    purpose: 'Pull-off force with the new spring, against drawing NC-H-031.',
    requester: 'beth.tarrant',
    team: 'Tents & bags',
    state: 'in-review',
    created: [-9, '13:15'],
    due: [0, '17:00'],
    specimens: [-8, '11:00'],
    conformity: {
      resultKey: 'peak-load',
      lower: 1200,
      upper: null,
      unit: 'N',
      specification: 'NC-H-031',
      rule: 'guarded',
      of: 'each',
    },
    batches: [
      {
        method: 'component-pull',
        count: 6,
        ask: pull(180, 900, 1900, 35),
        job: {
          state: 'done',
          train: 'hook',
          technician: 'gareth.pell',
          recorded: true,
          began: [-2, '10:05'],
          product: PRODUCTS.pannierHook,
          outlier: { piece: 4, share: 0.71 },
        },
      },
    ],
  },
  {
    title: 'Headset spacer, flexure of the new compound',
    purpose: 'Is the cheaper compound as stiff as the old one?',
    requester: 'katja.lund',
    team: 'Components',
    state: 'in-review',
    created: [-8, '09:45'],
    due: [1, '12:00'],
    specimens: [-7, '08:30'],
    batches: [
      {
        method: 'iso-178',
        material: PA6,
        count: 5,
        ask: beam(),
        job: {
          state: 'done',
          train: 'bend',
          technician: 'priya.raman',
          began: [-3, '07:40'],
          product: PRODUCTS.spacerPa6,
        },
      },
    ],
  },
  // In work
  {
    title: 'Bonded lug, fresh and after salt spray',
    purpose: 'Loss of strength by salt spray, 240 h.',
    requester: 'daniel.orme',
    team: 'Frames & forks',
    state: 'in-work',
    created: [-11, '14:10'],
    due: [0, '12:00'],
    weight: 2,
    specimens: [-5, '10:30'],
    batches: [
      {
        label: 'Fresh',
        method: 'astm-d1002',
        material: EPOXY,
        count: 12,
        ask: lap(25.4, 12.7, 1.6),
        asTyped: INCHES,
        job: {
          state: 'done',
          train: 'lapShear',
          technician: 'tom.ashdown',
          began: [-1, '08:20'],
          product: PRODUCTS.lugBond,
        },
      },
      {
        label: 'After salt spray',
        method: 'astm-d1002',
        material: EPOXY,
        count: 24,
        ask: lap(25.4, 12.7, 1.6),
        asTyped: INCHES,
      },
    ],
  },
  {
    title: 'Pannier bracket, lot 2439',
    purpose: 'Release of the moulding lot.',
    requester: 'sam.whitlock',
    team: 'Components',
    state: 'in-work',
    created: [-7, '08:20'],
    due: [1, '17:00'],
    specimens: [-5, '09:00'],
    conformity: {
      resultKey: 'peak-stress',
      lower: 140,
      upper: null,
      unit: 'MPa',
      specification: 'NC-M-104, bracket',
      ...SIMPLE,
    },
    batches: [
      {
        method: 'iso-527-2',
        material: PA6,
        count: 5,
        ask: dumbBell(),
        job: {
          state: 'running',
          train: 'plastics',
          technician: 'tom.ashdown',
          began: 55,
          recorded: true,
          tested: 3,
          product: PRODUCTS.pannierBracketPa6,
        },
      },
    ],
  },
  {
    title: 'Fork steerer, heat 7741',
    purpose: 'Acceptance of the heat for the touring fork.',
    requester: 'daniel.orme',
    team: 'Frames & forks',
    state: 'accepted',
    created: [-6, '11:00'],
    due: [2, '17:00'],
    specimens: [-3, '14:00'],
    conformity: {
      resultKey: 'peak-stress',
      lower: 1100,
      upper: 1300,
      unit: 'MPa',
      specification: 'NC-F-012, steerer',
      rule: 'guarded',
      of: 'each',
    },
    batches: [
      {
        method: 'iso-6892-1',
        material: 'steel-42crmos4-qt',
        count: 4,
        ask: roundBar(8, 12),
        job: { state: 'rigged', train: 'steerer8', technician: 'ian.marsh', began: 35, product: PRODUCTS.steererSteel },
      },
    ],
  },
  {
    title: 'Tent roof fabric after weathering',
    purpose: 'Strength left after 500 h of light and rain.',
    requester: 'jonas.vik',
    team: 'Tents & bags',
    state: 'accepted',
    created: [-6, '16:30'],
    due: [2, '12:00'],
    specimens: [-4, '10:00'],
    batches: [
      {
        label: 'Warp',
        method: 'iso-13934-1',
        material: 'fabric-woven',
        count: 15,
        ask: strip(),
        job: { state: 'taken', train: 'fabric', technician: 'priya.raman', began: 20, product: PRODUCTS.tentFabric },
      },
      { label: 'Weft', method: 'iso-13934-1', material: 'fabric-woven', count: 15, ask: strip() },
    ],
  },
  {
    title: 'Tread compound T9',
    purpose: 'New silica filler against the present compound.',
    requester: 'nuno.farrell',
    team: 'Wheels & tyres',
    state: 'in-work',
    created: [-5, '09:00'],
    due: [3, '12:00'],
    specimens: [-3, '11:00'],
    batches: [
      {
        label: 'T9',
        method: 'iso-37',
        material: 'rubber-synthetic',
        count: 5,
        ask: rubberDumbBell(),
        job: {
          state: 'paused',
          train: 'rubber',
          technician: 'mei.lindqvist',
          began: 170,
          tested: 2,
          why: 'The third piece slipped in the rollers; new pieces are cut',
          product: PRODUCTS.treadRubber,
        },
      },
      { label: 'Present compound', method: 'iso-37', material: 'rubber-synthetic', count: 15, ask: rubberDumbBell() },
    ],
  },
  {
    title: 'Saddle foam, softer grade',
    purpose: 'Compression stress at 40 % for the comfort saddle.',
    requester: 'katja.lund',
    team: 'Components',
    state: 'in-work',
    created: [-6, '10:05'],
    due: [2, '17:00'],
    specimens: [-4, '15:00'],
    batches: [
      {
        method: 'iso-3386-1',
        count: 12,
        ask: prism(100, 50, { strength: { low: 0.004, high: 0.02 } }),
        job: {
          state: 'blocked',
          train: 'foam',
          technician: 'mei.lindqvist',
          began: [-1, '13:40'],
          why: 'Load cell LC-1K-2 failed its shift check',
          product: PRODUCTS.saddleFoam,
        },
      },
    ],
  },
  // Accepted, specimens here: these are planned
  {
    title: 'Bracket compound at three temperatures',
    purpose: 'Design data for winter touring: stiffness and strength from −20 to 60 °C.',
    requester: 'sam.whitlock',
    team: 'Components',
    state: 'accepted',
    created: [-8, '12:00'],
    due: [6, '17:00'],
    specimens: [-5, '12:00'],
    batches: [
      { label: '−20 °C', method: 'iso-527-2', material: PA6, count: 10, ask: dumbBellAt(-20) },
      { label: '23 °C', method: 'iso-527-2', material: PA6, count: 10, ask: dumbBell() },
      { label: '60 °C', method: 'iso-527-2', material: PA6, count: 10, ask: dumbBellAt(60) },
    ],
  },
  {
    title: 'Laminated tent fabric, T-peel',
    purpose: 'Adhesion of the coating after ten washes.',
    requester: 'jonas.vik',
    team: 'Tents & bags',
    state: 'accepted',
    created: [-7, '09:30'],
    due: [3, '17:00'],
    specimens: [-5, '13:00'],
    batches: [{ method: 'iso-11339', material: EPOXY, count: 20, ask: tPeel({ strength: { low: 1, high: 6 } }) }],
  },
  {
    title: 'Guy line 4 mm, three makers',
    purpose: 'Choose the maker of the reflective guy line.',
    requester: 'beth.tarrant',
    team: 'Tents & bags',
    state: 'accepted',
    created: [-7, '15:20'],
    due: [2, '17:00'],
    specimens: [-5, '09:30'],
    batches: [
      { label: 'Maker A', method: 'northmoor-cord', count: 20, ask: cord(4, 1600, 2600) },
      { label: 'Maker B', method: 'northmoor-cord', count: 20, ask: cord(4, 1600, 2600) },
      { label: 'Maker C', method: 'northmoor-cord', count: 20, ask: cord(4, 1600, 2600) },
    ],
  },
  {
    title: 'Hauling cord for food bags, 5 mm',
    purpose: 'Strength dry and wet.',
    requester: 'jonas.vik',
    team: 'Tents & bags',
    state: 'accepted',
    created: [-6, '08:50'],
    due: [3, '12:00'],
    specimens: [-4, '08:30'],
    batches: [
      { label: 'Dry', method: 'northmoor-cord', count: 15, ask: cord(5, 2200, 3600) },
      { label: 'Wet', method: 'northmoor-cord', count: 15, ask: cord(5, 1900, 3300) },
    ],
  },
  {
    title: 'Spokes, 2.0 mm, supplier change',
    purpose: 'Same strength as before, within 3 %.',
    requester: 'nuno.farrell',
    team: 'Wheels & tyres',
    state: 'accepted',
    created: [-6, '13:30'],
    due: [4, '17:00'],
    specimens: [-2, '10:00'],
    batches: [
      {
        method: 'iso-6892-1',
        material: 'stainless-304',
        count: 30,
        ask: roundBar(2, 2, {
          strength: { low: 950, high: 1200 },
          results: ['peak-stress'],
          confirmed: ['smallest', 'travel', 'speed'],
        }),
      },
    ],
  },
  {
    title: 'Carbon chainstay laminate',
    purpose: 'Allowable for the new lay-up; the plate is from production.',
    requester: 'daniel.orme',
    team: 'Frames & forks',
    state: 'accepted',
    created: [-10, '10:40'],
    due: [-1, '17:00'],
    weight: 2,
    specimens: [-1, '15:30'],
    batches: [
      {
        method: 'astm-d3039',
        material: 'cfrp-qi',
        count: 18,
        ask: ask(
          {
            shape: 'rectangle',
            widthMm: 25,
            thicknessMm: 2.5,
            gaugeLengthMm: 50,
            gripSeparationMm: 138,
            endThicknessMm: 5.5,
            lengthMm: 250,
          },
          ['modulus', 'peak-stress', 'strain-at-break'],
        ),
      },
    ],
  },
  {
    title: 'Crank arm, push to failure',
    purpose: 'Margin of the forged arm over the standard load.',
    requester: 'katja.lund',
    team: 'Components',
    state: 'accepted',
    created: [-7, '11:45'],
    due: [5, '12:00'],
    specimens: [-4, '14:00'],
    batches: [{ method: 'component-push', count: 10, ask: push(170, 9000, 16_000, 40) }],
  },
  {
    title: 'Stem bolts M5, lot 118',
    purpose: 'Torque to failure of the new coating.',
    requester: 'sam.whitlock',
    team: 'Components',
    state: 'accepted',
    created: [-5, '14:25'],
    due: [3, '17:00'],
    specimens: [-3, '09:00'],
    batches: [
      { label: 'New coating', method: 'northmoor-bolt-torque', count: 40, ask: boltTorque(4.1, 4, 10, 19) },
      { label: 'Present coating', method: 'northmoor-bolt-torque', count: 40, ask: boltTorque(4.1, 4, 10, 19) },
    ],
  },
  {
    title: 'Tent roof fabric, tear',
    purpose: 'Tear before and after weathering.',
    requester: 'jonas.vik',
    team: 'Tents & bags',
    state: 'accepted',
    created: [-5, '16:00'],
    due: [4, '12:00'],
    specimens: [-3, '10:30'],
    batches: [
      { label: 'New', method: 'iso-13937-2', count: 20, ask: trousers(20, 70) },
      { label: 'Weathered', method: 'iso-13937-2', count: 20, ask: trousers(10, 50) },
    ],
  },
  {
    title: 'Headset spacer, compression',
    purpose: 'Does the spacer creep under the headset preload?',
    requester: 'katja.lund',
    team: 'Components',
    state: 'accepted',
    created: [-4, '09:10'],
    due: [5, '17:00'],
    specimens: [-2, '13:00'],
    batches: [
      {
        method: 'iso-604',
        material: 'pa66',
        count: 20,
        ask: ask({ shape: 'rectangle', widthMm: 10, thicknessMm: 4, heightMm: 10 }, ['peak-stress'], {
          speedMmPerMin: 1,
        }),
      },
    ],
  },
  {
    title: 'Fork steerer, small bars from the crown',
    purpose: 'Is the crown zone softened by brazing?',
    requester: 'daniel.orme',
    team: 'Frames & forks',
    state: 'accepted',
    created: [-4, '11:20'],
    due: [4, '17:00'],
    specimens: [-2, '09:15'],
    batches: [{ method: 'iso-6892-1', material: 'steel-42crmos4-qt', count: 12, ask: roundBar(6, 10) }],
  },
  {
    title: 'Fork crown lug, three cure cycles',
    purpose: 'Can the oven time be halved?',
    requester: 'katja.lund',
    team: 'Frames & forks',
    state: 'accepted',
    created: [-6, '14:40'],
    due: [3, '17:00'],
    specimens: [-3, '15:30'],
    batches: [
      { label: '60 min', method: 'astm-d1002', material: EPOXY, count: 20, ask: lap(25.4, 12.7, 1.6) },
      { label: '45 min', method: 'astm-d1002', material: EPOXY, count: 20, ask: lap(25.4, 12.7, 1.6) },
      { label: '30 min', method: 'astm-d1002', material: EPOXY, count: 20, ask: lap(25.4, 12.7, 1.6) },
    ],
  },
  {
    title: 'Saddle rail 7 mm, push to yield',
    purpose: 'Hollow rail against solid rail.',
    requester: 'sam.whitlock',
    team: 'Components',
    state: 'accepted',
    created: [-5, '10:50'],
    due: [4, '17:00'],
    specimens: [-3, '13:20'],
    batches: [
      { label: 'Hollow', method: 'component-push', count: 10, ask: push(140, 1500, 4000, 25) },
      { label: 'Solid', method: 'component-push', count: 10, ask: push(140, 2500, 5500, 25) },
    ],
  },
  {
    title: 'Tent pole ferrule, pull-out',
    purpose: 'Crimped ferrules from two presses.',
    requester: 'beth.tarrant',
    team: 'Tents & bags',
    state: 'accepted',
    created: [-5, '11:15'],
    due: [3, '12:00'],
    specimens: [-3, '08:20'],
    batches: [
      { label: 'Press 1', method: 'component-pull', count: 12, ask: pull(150, 700, 1800, 30) },
      { label: 'Press 2', method: 'component-pull', count: 12, ask: pull(150, 700, 1800, 30) },
    ],
  },
  {
    title: 'Mudguard stay, polypropylene',
    purpose: 'Stiffness after ageing.',
    requester: 'nuno.farrell',
    team: 'Wheels & tyres',
    state: 'accepted',
    created: [-4, '13:00'],
    due: [5, '12:00'],
    specimens: [-2, '11:10'],
    batches: [
      {
        label: 'New',
        method: 'iso-527-2',
        material: 'pp',
        count: 12,
        ask: dumbBell({ speedMmPerMin: 50, results: ['modulus', 'peak-stress'] }),
      },
      {
        label: 'Aged',
        method: 'iso-527-2',
        material: 'pp',
        count: 12,
        ask: dumbBell({ speedMmPerMin: 50, results: ['modulus', 'peak-stress'] }),
      },
    ],
  },
  {
    title: 'Frame tube 6061, beside the weld',
    purpose: 'Loss of strength in the heat-affected zone.',
    requester: 'daniel.orme',
    team: 'Frames & forks',
    state: 'accepted',
    created: [-4, '15:35'],
    due: [4, '12:00'],
    weight: 1.5,
    specimens: [-2, '14:15'],
    batches: [
      {
        label: 'Beside the weld',
        method: 'iso-6892-1',
        material: 'aluminium-6061-t6',
        count: 14,
        ask: flatBar(12.5, 2.2),
      },
      { label: 'Parent tube', method: 'iso-6892-1', material: 'aluminium-6061-t6', count: 14, ask: flatBar(12.5, 2.2) },
    ],
  },
  {
    title: 'Bag fabric, four colours',
    purpose: 'Does the pigment weaken the yarn?',
    requester: 'jonas.vik',
    team: 'Tents & bags',
    state: 'accepted',
    created: [-3, '08:35'],
    due: [6, '17:00'],
    specimens: [-1, '09:40'],
    batches: ['Moss', 'Slate', 'Rust', 'Sand'].map((label) => ({
      label,
      method: 'iso-13934-1',
      material: 'fabric-woven',
      count: 15,
      ask: strip(),
    })),
  },
  // Accepted, waiting for specimens
  {
    title: 'Bracket compound, second source',
    purpose: 'Release of a second compounder.',
    requester: 'sam.whitlock',
    team: 'Components',
    state: 'accepted',
    created: [-3, '10:00'],
    due: [8, '17:00'],
    specimens: [2, '10:00'],
    batches: [
      { label: 'Tension', method: 'iso-527-2', material: PA6, count: 10, ask: dumbBell() },
      { label: 'Flexure', method: 'iso-178', material: PA6, count: 10, ask: beam() },
    ],
  },
  {
    title: 'Seams of the Fell 2 inner tent',
    purpose: 'Seam strength at the corners.',
    requester: 'beth.tarrant',
    team: 'Tents & bags',
    state: 'accepted',
    created: [-3, '13:40'],
    due: [7, '12:00'],
    specimens: [1, '11:00'],
    batches: [
      {
        method: 'iso-13935-1',
        material: 'fabric-woven',
        count: 12,
        ask: strip({ results: ['peak-load'] }),
        arrived: 2,
      },
    ],
  },
  {
    title: 'Dropout plate 7075, new temper',
    purpose: 'Certificate check of the plate.',
    requester: 'daniel.orme',
    team: 'Frames & forks',
    state: 'accepted',
    created: [-2, '09:50'],
    due: [9, '17:00'],
    specimens: [3, '09:00'],
    batches: [{ method: 'iso-6892-1', material: 'aluminium-7075-t6', count: 8, ask: flatBar(12.5, 5) }],
  },
  {
    title: 'Comfort saddle, stiffness of the shell',
    purpose: 'Stiffness of the new shell under 1 kN.',
    requester: 'katja.lund',
    team: 'Components',
    state: 'accepted',
    created: [-2, '14:30'],
    due: [8, '12:00'],
    batches: [
      {
        method: 'saddle-foam-indent',
        count: 8,
        ask: ask(
          { shape: 'component', heightMm: 90, widthMm: 140, thicknessMm: 140 },
          ['stiffness', 'travel-at-peak'],
          {
            peak: { low: 600, high: 1000 },
            travelMm: 30,
            speedMmPerMin: 20,
          },
        ),
      },
    ],
  },
  {
    title: 'Cargo box core, rigid foam',
    purpose: 'Compression of the sandwich core.',
    requester: 'nuno.farrell',
    team: 'Wheels & tyres',
    state: 'accepted',
    created: [-1, '10:15'],
    due: [10, '17:00'],
    specimens: [4, '10:00'],
    batches: [{ method: 'iso-844', material: 'foam-rigid', count: 12, ask: prism(100, 50) }],
  },
  // Returned with a question
  {
    title: 'Tyre bead rubber',
    purpose: 'Tension of the bead compound.',
    requester: 'nuno.farrell',
    team: 'Wheels & tyres',
    state: 'returned',
    created: [-4, '15:10'],
    due: [6, '17:00'],
    batches: [{ method: 'iso-37', material: 'rubber-natural', count: 5, ask: rubberDumbBell() }],
    messages: [
      {
        by: 'ruth.calloway',
        at: [-3, '08:40'],
        body: 'Bead or apex compound? The drawing shows both, and the apex is too stiff for the roller grips. Please say which, and send moulded sheets of 2 mm.',
      },
      { by: 'nuno.farrell', at: [-3, '16:05'], body: 'The bead. I ask the moulder for sheets and come back.' },
    ],
  },
  {
    title: 'Carbon fork blade, short beam',
    purpose: 'Voids at the crown bend?',
    requester: 'daniel.orme',
    team: 'Frames & forks',
    state: 'returned',
    created: [-3, '11:35'],
    due: [7, '12:00'],
    batches: [
      {
        method: 'astm-d2344',
        material: 'cfrp-ud-0',
        count: 6,
        ask: ask({ shape: 'rectangle', widthMm: 8, thicknessMm: 4, spanMm: 16, lengthMm: 24 }, ['peak-stress'], {
          strength: { low: 45, high: 95 },
        }),
      },
    ],
    messages: [
      {
        by: 'ian.marsh',
        at: [-2, '10:20'],
        body: 'The blade is curved. Can you cut six flat pieces of 24 × 8 mm, or shall we bend the rules and say so on the report?',
      },
    ],
  },
  // Submitted: to be reviewed
  {
    title: 'Handlebar HB-31, bend to 1.5 kN',
    purpose: 'First sample of the new bar.',
    requester: 'katja.lund',
    team: 'Components',
    state: 'submitted',
    created: [-1, '09:20'],
    due: [9, '17:00'],
    batches: [{ method: 'component-push', count: 3, ask: push(180, 900, 1800, 60, { speedMmPerMin: 20 }) }],
  },
  {
    title: 'Recall check: fork steerer, heat 7698',
    purpose: 'Two forks came back from customers. Strength of the steerer, as fast as you can.',
    requester: 'daniel.orme',
    team: 'Frames & forks',
    state: 'submitted',
    created: [0, '06:35'],
    due: [2, '12:00'],
    weight: 5,
    specimens: [0, '06:30'],
    conformity: {
      resultKey: 'peak-stress',
      lower: 1100,
      upper: 1300,
      unit: 'MPa',
      specification: 'NC-F-012, steerer',
      rule: 'guarded',
      of: 'each',
    },
    batches: [{ method: 'iso-6892-1', material: 'steel-42crmos4-qt', count: 4, ask: roundBar(6, 10) }],
  },
  {
    title: 'Lifting eye M24 for the crane in hall 2',
    purpose: 'Proof that the eye bolts hold, class 12.9.',
    requester: 'sam.whitlock',
    team: 'Components',
    state: 'submitted',
    created: [-1, '14:45'],
    due: [12, '17:00'],
    impossible: true,
    batches: [
      {
        method: 'iso-898-1',
        material: 'bolt-12-9',
        count: 3,
        ask: ask(
          { shape: 'thread', areaMm2: 353, diameterMm: 24, gripSeparationMm: 90, lengthMm: 160 },
          ['peak-load'],
          { endShape: 'threaded' },
        ),
      },
    ],
  },
  {
    title: 'Bag webbing 25 mm, buckle pull',
    purpose: 'Side-release buckle with the thinner webbing.',
    requester: 'beth.tarrant',
    team: 'Tents & bags',
    state: 'submitted',
    created: [-1, '16:10'],
    due: [8, '17:00'],
    batches: [{ method: 'component-pull', count: 6, ask: pull(150, 500, 1100, 60) }],
  },
  {
    title: 'Rim tape adhesion',
    purpose: 'Peel from anodised aluminium.',
    requester: 'nuno.farrell',
    team: 'Wheels & tyres',
    state: 'submitted',
    created: [0, '07:10'],
    due: [7, '12:00'],
    batches: [
      {
        method: 'iso-8510-1',
        material: 'tape',
        count: 5,
        ask: ask({ shape: 'strip', widthMm: 25, lengthMm: 150, thicknessMm: 0.5, gripSeparationMm: 60 }, ['mean-peel']),
      },
    ],
  },
  // Drafts
  {
    title: 'Ripstop for the Fell 2, tear',
    purpose: '',
    requester: 'beth.tarrant',
    team: 'Tents & bags',
    state: 'draft',
    created: [-1, '17:05'],
    batches: [{ method: 'iso-13937-2', count: 5, ask: trousers(15, 60) }],
  },
  {
    title: 'Rim, radial stiffness',
    purpose: 'Before and after the lighter extrusion.',
    requester: 'nuno.farrell',
    team: 'Wheels & tyres',
    state: 'draft',
    created: [0, '06:50'],
    due: [15, '17:00'],
    batches: [{ method: 'component-push', count: 3, ask: push(600, 2000, 6000, 15) }],
  },
  {
    title: 'Seat post clamp, slip',
    purpose: '',
    requester: 'sam.whitlock',
    team: 'Components',
    state: 'draft',
    created: [-2, '12:30'],
    batches: [],
  },
];
