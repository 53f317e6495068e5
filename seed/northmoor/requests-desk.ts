import { ask, pull, push, roundBar, rubberDumbBell, trousers } from './ask-parts.js';
import type { DemoRequest } from './demo-request.js';

/** Requests that wait for a person: returned with a question, submitted, or not yet sent. */
export const ON_THE_DESK: readonly DemoRequest[] = [
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
