import { dumbBell, lap, prism, roundBar, rubberDumbBell, strip } from './ask-parts.js';
import type { DemoRequest } from './demo-request.js';
import { PRODUCTS } from './products.js';

const PA6 = 'pa6-gf30';
const EPOXY = 'adhesive-epoxy';
const INCHES = { 'geometry.widthMm': { value: '1', unit: 'in' }, 'geometry.overlapMm': { value: '0.5', unit: 'in' } };
const SIMPLE = { rule: 'simple', of: 'each' } as const;

/** Requests whose jobs are on a frame, paused or blocked. */
export const IN_WORK: readonly DemoRequest[] = [
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
];
