import { readFileSync } from 'node:fs';
import { proposeFormat, reduceCurve, sayDoubt, sayProblem } from '#libs/reduction/src/index.js';
import type { CurveChannel } from '#libs/reduction/src/index.js';
import { readOrFail, readingOf, readingOfBytes } from '#test/curves/read-curve-file.js';

const ok = (name: string) => new URL(`./ok/${name}`, import.meta.url);
const notOk = (name: string) => new URL(`./not-ok/${name}`, import.meta.url);

// Twelve rows: row i has time i/10 s, force 12.3456·i N, strain or extension by 0.00123·i (mm, or twice that in %).
describe('files that are in order', () => {
  const FIFTH: [string, Partial<Record<CurveChannel, number>>][] = [
    [
      'german-semicolons-and-commas-latin1.csv',
      { timeS: 0.5, forceN: 61.728, strain: 0.000123, displacementMm: 0.338 },
    ],
    ['german-utf8-with-mark.csv', { timeS: 0.5, forceN: 61.728, strain: 0.000123, displacementMm: 0.338 }],
    ['german-utf16-little-endian.csv', { timeS: 0.5, forceN: 61.728, strain: 0.000123, displacementMm: 0.338 }],
    ['german-utf16-big-endian.csv', { timeS: 0.5, forceN: 61.728, strain: 0.000123, displacementMm: 0.338 }],
    ['sizes-in-the-first-row-only.csv', { timeS: 0.5, forceN: 61.728, extensionMm: 0.00615 }],
    ['decimal-commas-in-quotes.csv', { timeS: 0.5, forceN: 61.728, extensionMm: 0.00615 }],
    // 61.728 N / 4.448 = 13.8777 lbf as written; 1 lbf = 4.4482216152605 N, 1 in = 25.4 mm (NIST SP 811).
    [
      'aligned-by-spaces-inch-pounds.txt',
      { timeS: 0.5, forceN: 13.8777 * 4.4482216152605, displacementMm: 0.000242 * 25.4 },
    ],
    ['exponents-and-carriage-returns-only.tsv', { timeS: 0.5, torqueNm: 0.61728, angleDeg: 0.615 }],
    ['text-column-and-trailing-delimiters.csv', { timeS: 0.5, forceN: 61.728, displacementMm: 0.00615 }],
    ['pipes-and-no-last-line-end.csv', { timeS: 0.5, forceN: 61.728, strain: 61.5e-6 }],
  ];

  it.each(FIFTH)('%s is read whole', (name, expected) => {
    const { curve, confirmed } = readOrFail(readingOf(ok(name)));
    expect(curve.pointCount).toBe(12);
    expect(confirmed).toBe(false);
    for (const [channel, value] of Object.entries(expected))
      expect(curve[channel as CurveChannel]![5]).toBeCloseTo(value, 9);
    expect(Object.keys(curve).sort()).toEqual([...Object.keys(expected), 'pointCount'].sort());
  });

  it.each(FIFTH)('%s reads the same in chunks of 1, 7 and 4099 bytes', (name) => {
    const bytes = readFileSync(ok(name));
    const whole = readOrFail(readingOfBytes(bytes));
    for (const size of [1, 7, 4099])
      expect(readOrFail(readingOfBytes(bytes, undefined, size)).curve).toEqual(whole.curve);
  });

  it('an extensometer that is taken off leaves its cells empty to the end: the rest is read', () => {
    const { curve } = readOrFail(readingOf(ok('extensometer-taken-off.csv')));
    expect([curve.pointCount, curve.strainRows, curve.forceN![5]]).toEqual([12, 3, 61.728]);
    expect([...curve.extensionMm!.subarray(2, 5)]).toEqual([0.04, 0.04, 0.04]);
  });

  it('remarks that a last line without an end may be cut', () => {
    expect(readOrFail(readingOf(ok('pipes-and-no-last-line-end.csv'))).doubts.map(({ code }) => code)).toEqual([
      'last-line-not-ended',
    ]);
    expect(readOrFail(readingOf(ok('decimal-commas-in-quotes.csv'))).doubts).toEqual([]);
  });

  it('shows what it found for a person to confirm', () => {
    const proposal = proposeFormat(readFileSync(ok('german-semicolons-and-commas-latin1.csv')), true)!;
    expect(proposal.format).toMatchObject({
      encoding: 'windows-1252',
      delimiter: 'semicolon',
      decimalMark: 'comma',
      headerLines: 5,
      hasHeadings: true,
      hasUnitLine: true,
    });
    expect(proposal.format.columns.map(({ heading, channel, unit }) => [heading, channel, unit])).toEqual([
      ['Prüfzeit', 'timeS', 's'],
      ['Standardkraft', 'forceN', 'N'],
      ['Dehnung', 'strain', '%'],
      ['Traversenweg', 'displacementMm', 'mm'],
    ]);
    expect(proposal.preamble[1]).toBe('Probe;R-2031-1');
    expect(proposal.sample[1]).toEqual(['0,10', '12,346', '0,0025', '0,068']);
    expect(proposal.doubts).toEqual([]);
  });

  it('reads the next file of a source by the format confirmed for it, however long its header is', () => {
    const first = proposeFormat(readFileSync(notOk('force-without-unit.csv')), true)!;
    const columns = first.format.columns.map((column) =>
      column.channel === 'forceN' ? { ...column, unit: 'kN' as const } : column,
    );
    const next = `Lab,North\nOperator,7\n${readFileSync(notOk('force-without-unit.csv'), 'utf8')}`;
    const reading = readOrFail(readingOfBytes(Buffer.from(next), { ...first.format, columns }));
    expect(reading.confirmed).toBe(true);
    expect(reading.firstRowLine).toBe(4);
    expect(reading.curve.forceN![2]).toBe(25_000);
  });

  it('refuses a file whose headings are not the confirmed ones', () => {
    const { format } = proposeFormat(readFileSync(ok('pipes-and-no-last-line-end.csv')), true)!;
    expect(readingOf(ok('decimal-commas-in-quotes.csv'), format)).toMatchObject({
      state: 'refused',
      problems: [{ reason: 'headings-not-found' }],
    });
  });
});

describe('files that are not', () => {
  it.each([
    ['empty.csv', 'The file is empty.'],
    ['headings-only.csv', 'Fewer than two rows of numbers were found.'],
    ['one-row-only.csv', 'Fewer than two rows of numbers were found ("1 rows").'],
    ['cut-off-in-the-last-line.csv', 'Line 13, column 3: the line has fewer columns than the first row ("1.1,13").'],
    [
      'cut-off-in-a-number-that-still-reads.csv',
      'Line 13, column 3: the line has fewer columns than the first row ("1.1,137.5").',
    ],
    ['letter-in-a-number-on-line-5.csv', 'Line 5, column 2: the cell is not a number ("0.3,37.x5,0.06").'],
    ['empty-cell-on-line-4.csv', 'Line 4, column 2: the cell is empty ("0.2,,0.04").'],
    ['extension-empty-on-line-4.csv', 'Line 4, column 3: the cell is empty ("0.2,25.0,").'],
    ['not-a-number-written-out-on-line-6.csv', 'Line 6, column 2: the cell is not a number ("0.4,NaN,0.08").'],
    ['infinity-on-line-3.csv', 'Line 3, column 2: the number is too large to be kept ("0.1,1e999,0.02").'],
    [
      'headings-repeated-on-line-8.csv',
      'Line 8, column 1: the headings stand here again; export one test per file ("Time [s],Force [N],Displacement [mm]").',
    ],
    [
      'one-column-more-on-line-7.csv',
      'Line 7, column 4: the line has more columns than allowed here ("0.5,62.5,0.10,9").',
    ],
    ['thousands-marks-from-line-3.csv', 'Line 3, column 2: the cell is not a number ("0,2;1.012,5;0,04").'],
    ['not-text-at-all.csv', 'The file is not text; export it as delimited text.'],
    ['zero-bytes-on-line-5.csv', 'Line 5, column 2: the cell is not a number ("0.3,\u0000\u0000,0.06").'],
  ])('%s is refused with its line and reason', (name, sentence) => {
    const reading = readingOf(notOk(name));
    expect(reading.state).toBe('refused');
    if (reading.state === 'refused') expect(sayProblem(reading.problems[0]!)).toBe(sentence);
  });

  it.each([
    ['no-headings.csv', 'No line of headings was found; name the columns and their units.'],
    [
      'decimal-commas-between-commas.csv',
      'The line above the rows has another number of columns than the rows; check delimiter and decimal mark.',
    ],
    ['force-without-unit.csv', 'Column 2 ("Force"): The unit is not written; choose it.'],
    [
      'force-in-millimetres.csv',
      'Column 2 ("Force [mm]"): The unit does not fit what the column seems to hold; choose one.',
    ],
    [
      'strain-without-unit.csv',
      'Column 2 ("Strain"): Strain has no unit; a fraction (mm/mm) is proposed. Confirm it, or choose percent.',
    ],
    ['no-load-column.csv', 'No column of force, stress or torque was recognised; choose one.'],
  ])('%s waits for a person', (name, sentence) => {
    const reading = readingOf(notOk(name));
    expect(reading).toMatchObject({ state: 'refused', problems: [{ reason: 'format-in-doubt' }] });
    expect(reading.doubts.filter(({ blocking }) => blocking).map(sayDoubt)).toContain(sentence);
  });

  it('names the first twenty bad lines and counts the rest', () => {
    const rows = Array.from({ length: 200 }, (_, at) => (at < 110 ? `${at},${at},0.1` : `${at},x,0.1`));
    const reading = readingOfBytes(Buffer.from(`Time [s],Force [N],Extension [mm]\n${rows.join('\n')}\n`));
    expect(reading).toMatchObject({ state: 'refused', problemCount: 90 });
    if (reading.state === 'refused')
      expect(reading.problems.map(({ line }) => line)).toEqual(Array.from({ length: 20 }, (_, at) => 112 + at));
  });

  it('refuses a curve that holds no load at all, or too little of it', () => {
    const recipe = {
      kind: 'component',
      section: 'given-area',
      results: ['peak-load'],
      toe: { way: 'none' },
      break: { way: 'end-of-curve' },
    } as const;
    const flat = { pointCount: 3, forceN: new Float64Array(3), displacementMm: new Float64Array(3) };
    expect(reduceCurve(flat, recipe, {})).toMatchObject({ state: 'refused', reasons: [{ reason: 'no-load' }] });
    expect(reduceCurve({ pointCount: 1, forceN: new Float64Array([5]) }, recipe, {})).toMatchObject({
      state: 'refused',
      reasons: [{ reason: 'too-few-points' }],
    });
  });
});
