import type { AtFrame } from '#libs/bench/src/index.js';

/** A job for which nothing is in the way: each spec spoils one thing of it. */
export const READY: Readonly<AtFrame> = Object.freeze({
  job: { reference: 'J-7-1', state: 'rigged', technicianId: 'tess', checks: { guard: {} } },
  byId: 'tess',
  method: { id: 'iso-527-2', designation: 'ISO 527-2' },
  authorised: true,
  frame: { id: 'frame', tag: 'UF-10' },
  train: [
    { itemId: 'cell', confirmedAt: '2026-03-02T10:00:00.000Z' },
    { itemId: 'grips', confirmedAt: '2026-03-02T10:01:00.000Z' },
  ],
  trainItems: [
    { role: 'load-cell', item: { id: 'cell', tag: 'LC-5K' } },
    { role: 'ends', item: { id: 'grips', tag: 'GP-5K' } },
  ],
  rig: [{ itemId: 'cell' }, { itemId: 'grips' }],
  problems: [],
  frameHolder: null,
  shiftCheckReason: null,
  shiftCheckValidMin: 720,
  checksAsked: [{ key: 'guard', label: 'Guard in place', detail: 'Close it.', required: true, kind: 'tick' as const }],
  specimens: [{ label: 'S-01', fate: 'tested' }],
  notTestedWhy: null,
  lacks: [],
});
