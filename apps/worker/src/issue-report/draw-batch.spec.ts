import { remarks } from './draw-batch.js';

const columns = [
  { key: 'peak-stress', label: 'Strength', unit: 'MPa', step: 1 },
  { key: 'modulus', label: 'Modulus', unit: 'MPa', step: null },
];
const row = (label: string, flags: Record<string, string[]>) => ({
  ...{ specimenId: label, label, fate: 'tested', invalidWhy: null },
  values: Object.fromEntries(Object.entries(flags).map(([key, of]) => [key, { value: 1, flags: of, revision: 1 }])),
});

it('what was flagged stands in the report in words, once, with its result and its specimens', () => {
  const rows = [
    row('R-1-1', { 'peak-stress': ['It was cut off.'], modulus: [] }),
    row('R-1-2', { 'peak-stress': ['It was cut off.'], modulus: ['It bends.'] }),
    row('R-1-3', { 'peak-stress': [] }),
  ];
  expect(remarks({ columns, rows })).toEqual(['R-1-1, R-1-2, Strength: It was cut off.', 'R-1-2, Modulus: It bends.']);
});
