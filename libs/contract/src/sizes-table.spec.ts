import { sizesTable } from './sizes-table.js';

const size = (key: string, label: string, mean: string, count: number) => ({
  ...{ key, label, unit: 'mm', mean },
  readings: Array<number>(count).fill(Number(mean)),
});
const specimen = (label: string, sizes?: ReturnType<typeof size>[]) => ({
  ...{ label, description: '', condition: '', fate: 'tested' },
  ...(sizes && { sizes }),
});

describe('the table of measured sizes', () => {
  it('has a row per specimen, and a dash where one was not measured', () => {
    const measured = [size('widthMm', 'Width', '10.01', 3), size('thicknessMm', 'Thickness', '4.0', 2)];
    expect(sizesTable([specimen('a', measured), specimen('b', [measured[1]!]), specimen('c')])).toEqual({
      columns: [
        { key: 'widthMm', head: 'Width, mm' },
        { key: 'thicknessMm', head: 'Thickness, mm' },
      ],
      rows: [
        { label: 'a', cells: ['10.01 (3)', '4.0 (2)'] },
        { label: 'b', cells: ['–', '4.0 (2)'] },
        { label: 'c', cells: ['–', '–'] },
      ],
    });
  });

  it('is not there where nothing was measured, as in a report made before sizes were kept', () => {
    expect(sizesTable([specimen('a'), specimen('b', [])])).toBeNull();
  });
});
