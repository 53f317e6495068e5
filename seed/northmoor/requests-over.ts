import { beam, dumbBell, pull, strip, tPeel } from './ask-parts.js';
import type { DemoRequest } from './demo-request.js';
import { PRODUCTS } from './products.js';

const PA6 = 'pa6-gf30';
const EPOXY = 'adhesive-epoxy';
const SIMPLE = { rule: 'simple', of: 'each' } as const;

/** Requests that are over, and those whose results are reported or reviewed. */
export const OVER_OR_TESTED: readonly DemoRequest[] = [
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
        ask: beam({ strength: { low: 180, high: 245 } }),
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
];
