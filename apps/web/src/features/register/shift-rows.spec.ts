import { fieldOf } from './settings-typed.js';
import { rowProblems, rowsOf, shiftsOf } from './shift-rows.js';

const early = (weekday: number) => ({ weekday, from: '06:00', to: '14:00', name: 'early' });
const late = (weekday: number) => ({ weekday, from: '13:30', to: '21:30', name: 'late' });

describe('shifts as rows', () => {
  it('gathers the days of a shift, and gives the same shifts back', () => {
    const shifts = [early(1), early(2), late(1), late(2)];
    expect(rowsOf([early(1), late(1), early(2), late(2)])).toEqual([
      { name: 'early', from: '06:00', to: '14:00', days: ['1', '2'] },
      { name: 'late', from: '13:30', to: '21:30', days: ['1', '2'] },
    ]);
    expect(shiftsOf(rowsOf(shifts))).toEqual(shifts);
  });

  it('shows what the server refused at the row whose day it is', () => {
    const rows = rowsOf([early(1), early(2), late(1)]);
    expect(fieldOf('shifts[1].to', rows)).toBe('shifts.0.to');
    expect(fieldOf('shifts[2].to', rows)).toBe('shifts.1.to');
  });

  it('says once what is wrong with a row, however many days it has', () => {
    const good = { name: 'night', from: '22:00', to: '06:00', days: ['1'] };
    const problems = rowProblems([good, { ...good, name: ' ', from: '6', to: '24:00' }, { ...good, days: [] }]);
    expect(problems.map((each) => Object.keys(each))).toEqual([[], ['name', 'from', 'to'], ['days']]);
  });
});
