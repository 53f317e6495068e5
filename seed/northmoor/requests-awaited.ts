import { ask, beam, dumbBell, flatBar, prism, strip } from './ask-parts.js';
import type { DemoRequest } from './demo-request.js';

const PA6 = 'pa6-gf30';

/** Accepted requests whose specimens are still to come. */
export const AWAITED: readonly DemoRequest[] = [
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
];
