import type { ConformityAsk } from '#libs/contract/src/index.js';
import { dumbBell, lap, prism, pull, roundBar, rubberDumbBell, strip, tPeel } from './ask-parts.js';
import type { AskPart } from './ask-parts.js';
import type { TeamName } from './people.js';
import { PRODUCTS } from './products.js';
import type { Product } from './products.js';
import type { TrainName } from './trains.js';

/** Work that came back again and again over the last months: one line a kind, one request a run. */
export interface DemoSeries {
  /** `{lot}` is the number of the lot. */
  title: string;
  /** Number of the first lot, and the step to the next. */
  lot: readonly [first: number, step: number];
  purpose: string;
  requester: string;
  team: TeamName;
  method: string;
  material?: string;
  count: number;
  ask: AskPart;
  product: Product;
  conformity?: ConformityAsk;
  runs: readonly DemoRun[];
}

export interface DemoRun {
  /** Working days before today, and the hour at which testing began. */
  ago: number;
  time: string;
  train: TrainName;
  technician: string;
  /** Share by which the cell read high on that day: a drift, as a fraction. */
  drift?: number;
  outlier?: { piece: number; share: number };
  /** A piece that did not count, with the reason. */
  invalid?: { piece: number; why: string };
}

const run = (
  ago: number,
  time: string,
  train: TrainName,
  technician: string,
  rest: Partial<DemoRun> = {},
): DemoRun => ({
  ...{ ago, time, train, technician },
  ...rest,
});

export const HISTORY: readonly DemoSeries[] = [
  {
    title: 'Pannier bracket, lot {lot}',
    lot: [2304, 9],
    purpose: 'Release of the moulding lot.',
    requester: 'sam.whitlock',
    team: 'Components',
    method: 'iso-527-2',
    material: 'pa6-gf30',
    count: 5,
    ask: dumbBell(),
    product: PRODUCTS.pannierBracketPa6,
    conformity: {
      resultKey: 'peak-stress',
      lower: 140,
      upper: null,
      unit: 'MPa',
      specification: 'NC-M-104, bracket',
      rule: 'simple',
      of: 'each',
    },
    runs: [
      run(104, '08:40', 'plastics', 'tom.ashdown'),
      run(97, '09:15', 'plastics', 'priya.raman'),
      run(90, '15:20', 'plastics', 'olu.adeyemi'),
      run(83, '07:55', 'plastics', 'tom.ashdown', { invalid: { piece: 2, why: 'Broke inside the upper grip' } }),
      run(76, '10:30', 'plastics', 'gareth.pell'),
      run(69, '16:05', 'plastics', 'mei.lindqvist', { drift: 0.001 }),
      run(62, '08:10', 'plasticsOther', 'priya.raman'),
      run(55, '09:40', 'plastics', 'tom.ashdown', { drift: 0.002 }),
      run(48, '11:20', 'plastics', 'priya.raman', { drift: 0.004 }),
      run(41, '14:50', 'plasticsOther', 'olu.adeyemi'),
      run(34, '08:25', 'plastics', 'gareth.pell', { drift: 0.0055 }),
      run(27, '10:10', 'plastics', 'tom.ashdown', { drift: 0.007 }),
      run(20, '15:35', 'plasticsOther', 'mei.lindqvist'),
      run(13, '09:05', 'plastics', 'priya.raman', { drift: 0.0085 }),
    ],
  },
  {
    title: 'Fork steerer, heat {lot}',
    lot: [7602, 23],
    purpose: 'Acceptance of the heat.',
    requester: 'daniel.orme',
    team: 'Frames & forks',
    method: 'iso-6892-1',
    material: 'steel-42crmos4-qt',
    count: 4,
    ask: roundBar(8, 12),
    product: PRODUCTS.steererSteel,
    conformity: {
      resultKey: 'peak-stress',
      lower: 1100,
      upper: 1300,
      unit: 'MPa',
      specification: 'NC-F-012, steerer',
      rule: 'guarded',
      of: 'each',
    },
    runs: [
      run(101, '10:15', 'steerer8', 'tom.ashdown'),
      run(86, '08:50', 'steerer8', 'ian.marsh'),
      run(71, '16:10', 'steerer8', 'olu.adeyemi', { invalid: { piece: 1, why: 'Slipped in the vee faces' } }),
      run(52, '09:30', 'steerer8', 'tom.ashdown'),
      run(37, '07:45', 'steerer8', 'tom.ashdown'),
      run(18, '15:05', 'steerer8', 'olu.adeyemi'),
    ],
  },
  {
    title: 'Steerer bars from the crown, heat {lot}',
    lot: [7618, 41],
    purpose: 'Softening by brazing.',
    requester: 'daniel.orme',
    team: 'Frames & forks',
    method: 'iso-6892-1',
    material: 'steel-42crmos4-qt',
    count: 4,
    ask: roundBar(6, 10),
    product: PRODUCTS.steererSteel6,
    runs: [run(79, '10:50', 'steerer6', 'tom.ashdown'), run(44, '08:15', 'steerer6', 'ian.marsh')],
  },
  {
    title: 'Tent roof fabric, roll {lot}',
    lot: [61, 5],
    purpose: 'Incoming check, warp.',
    requester: 'beth.tarrant',
    team: 'Tents & bags',
    method: 'iso-13934-1',
    material: 'fabric-woven',
    count: 5,
    ask: strip(),
    product: PRODUCTS.tentFabric,
    runs: [
      run(93, '09:20', 'fabric', 'priya.raman'),
      run(74, '15:40', 'fabric', 'mei.lindqvist'),
      run(58, '10:05', 'fabric', 'priya.raman', { outlier: { piece: 3, share: 0.7 } }),
      run(39, '14:25', 'fabric', 'olu.adeyemi'),
      run(22, '08:35', 'fabric', 'gareth.pell'),
    ],
  },
  {
    title: 'Tread compound, mix {lot}',
    lot: [318, 7],
    purpose: 'Release of the mix.',
    requester: 'nuno.farrell',
    team: 'Wheels & tyres',
    method: 'iso-37',
    material: 'rubber-synthetic',
    count: 5,
    ask: rubberDumbBell(),
    product: PRODUCTS.treadRubber,
    runs: [
      run(88, '15:15', 'rubber', 'mei.lindqvist'),
      run(66, '09:50', 'rubber', 'priya.raman'),
      run(46, '16:20', 'rubber', 'mei.lindqvist'),
      run(25, '08:05', 'rubber', 'priya.raman'),
    ],
  },
  {
    title: 'Bonded lug, adhesive batch {lot}',
    lot: [54, 3],
    purpose: 'Release of the adhesive batch.',
    requester: 'katja.lund',
    team: 'Frames & forks',
    method: 'astm-d1002',
    material: 'adhesive-epoxy',
    count: 6,
    ask: lap(25.4, 12.7, 1.6),
    product: PRODUCTS.lugBond,
    runs: [
      run(81, '08:30', 'lapShear', 'tom.ashdown'),
      run(50, '15:10', 'lapShear', 'olu.adeyemi', { outlier: { piece: 5, share: 0.7 } }),
      run(29, '10:40', 'lapShear', 'tom.ashdown'),
    ],
  },
  {
    title: 'Coated fabric, adhesion of roll {lot}',
    lot: [71, 6],
    purpose: 'Adhesion of the coating.',
    requester: 'jonas.vik',
    team: 'Tents & bags',
    method: 'iso-11339',
    material: 'adhesive-epoxy',
    count: 5,
    ask: tPeel({ strength: { low: 1, high: 6 } }),
    product: PRODUCTS.fabricLaminate,
    runs: [run(64, '09:10', 'peel', 'priya.raman'), run(32, '15:50', 'peel', 'mei.lindqvist')],
  },
  {
    title: 'Pannier hook, tool {lot}',
    lot: [12, 2],
    purpose: 'Sample from the tool after maintenance.',
    requester: 'beth.tarrant',
    team: 'Tents & bags',
    method: 'component-pull',
    count: 6,
    ask: pull(180, 900, 1900, 35),
    product: PRODUCTS.pannierHook,
    runs: [run(59, '10:25', 'hook', 'gareth.pell'), run(30, '08:55', 'hook', 'tom.ashdown')],
  },
  {
    title: 'Saddle foam, block {lot}',
    lot: [906, 14],
    purpose: 'Compression stress at 40 %.',
    requester: 'katja.lund',
    team: 'Components',
    method: 'iso-3386-1',
    count: 4,
    ask: prism(100, 50, { strength: { low: 0.004, high: 0.02 } }),
    product: PRODUCTS.saddleFoam,
    runs: [run(57, '09:35', 'foam', 'priya.raman'), run(16, '15:25', 'foam', 'mei.lindqvist')],
  },
];
