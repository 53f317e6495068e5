import { measuredSizes } from './measured-sizes.js';

describe('the sizes measured on a specimen', () => {
  it('come in the order of the bench, with their name, unit and readings, and a mean of as many decimals', () => {
    // (9.98 + 10.02 + 10.03) / 3 = 10.01, and (4 + 4.1) / 2 = 4.05 to one decimal, the tie to the even digit
    expect(measuredSizes(['widthMm', 'thicknessMm'], { thicknessMm: [4, 4.1], widthMm: [9.98, 10.02, 10.03] })).toEqual(
      [
        { key: 'widthMm', label: 'Width', unit: 'mm', readings: [9.98, 10.02, 10.03], mean: '10.01' },
        { key: 'thicknessMm', label: 'Thickness', unit: 'mm', readings: [4, 4.1], mean: '4.0' },
      ],
    );
  });

  it('keep a zero that was read: the mean of 10.01 and 9.99 is 10.00', () => {
    expect(measuredSizes(['diameterMm'], { diameterMm: [10.01, 9.99] })[0]?.mean).toBe('10.00');
  });

  it('are none where nobody measured', () => {
    expect(measuredSizes(['widthMm', 'thicknessMm'], { widthMm: [] })).toEqual([]);
  });
});
