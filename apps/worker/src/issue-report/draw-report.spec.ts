// The reader is not ours: Mozilla's PDF.js (npm pdfjs-dist).
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { drawReport } from './draw-report.js';
import { sampleReport } from '#test/support/sample-report.js';

const options = { publicUrl: 'http://lab.example', issuedAt: new Date('2026-11-12T09:00:00Z') };

async function read(file: Buffer): Promise<{ pdf: PDFDocumentProxy; pages: string[] }> {
  const pdf = await getDocument({ data: new Uint8Array(file), verbosity: 0 }).promise;
  const pages: string[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const { items } = await (await pdf.getPage(number)).getTextContent();
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join(' '));
  }
  return { pdf, pages };
}

describe('the PDF of a report', () => {
  let file: Buffer;
  let pages: string[];
  let pdf: PDFDocumentProxy;

  beforeAll(async () => {
    file = await drawReport(sampleReport(), options);
    ({ pdf, pages } = await read(file));
  });

  it('bears its number and page n of N on every page, and one end mark', () => {
    pages.forEach((page, index) => expect(page).toContain(`page ${index + 1} of ${pages.length}`));
    pages.forEach((page) => expect(page).toContain('TR-2026-0042'));
    expect(pages.join(' ').match(/End of report TR-2026-0042 rev\. 2/g)).toHaveLength(1);
  });

  it('holds every figure, item and statement as text that can be searched', () => {
    const whole = pages.join(' ').replace(/\s+/g, ' ');
    for (const words of [
      '142.3 ± 1.7',
      '8930',
      'R-2031-1-04',
      'broke in the jaw',
      'LC-10K-1',
      'C-2026-118',
      'ISO 527-2',
      'conforms',
      'guarded by U',
    ]) {
      expect(whole).toContain(words);
    }
  });

  it('says how each result is defined', () => {
    const whole = pages.join(' ').replace(/\s+/g, ' ');
    expect(whole).toContain('Tensile strength: highest force over the original section.');
    expect(whole).toContain(
      'Modulus: slope of stress over strain, chord between 0.05 % and 0.25 % strain, over the gauge',
    );
  });

  it('holds what was measured on each specimen, with units', () => {
    const whole = pages.join(' ').replace(/\s+/g, ' ');
    expect(whole).toMatch(/Specimen Width, mm Thickness, mm R-2031-1-01 10\.03 \(2\) 4\.01 \(3\) R-2031-1-02/);
  });

  it('draws stress over strain beside the record', () => {
    const whole = pages.join(' ').replace(/\s+/g, ' ');
    for (const axis of ['Stress, MPa', 'Strain, %', 'Stress by its results, MPa', 'Strain by its results, %'])
      expect(whole).toContain(axis);
  });

  // ISO/IEC 17025:2017 7.8.2.1, letter by letter (seen in a secondary copy).
  it.each([
    ['a', 'Test report'],
    ['b', '4 Foundry Lane'],
    ['c', 'Hall 2, Northmoor'],
    ['d', 'End of report TR-2026-0042'],
    ['e', 'Bags and racks'],
    ['f', 'ISO 527-2'],
    ['g', 'Moulded bar 1A'],
    ['h', '2026-11-02'],
    ['i', '2026-11-09'],
    ['j', '2026-11-12'],
    ['k', 'the laboratory did not sample'],
    ['l', 'relate only to the items tested'],
    ['m', 'Tensile strength, MPa'],
    ['n', 'Grip separation 110 mm instead of 115 mm'],
    ['o', 'Harriet Boone'],
    ['p', 'Results from external providers'],
  ])('tells what 7.8.2.1 %s asks for', (_, words) => {
    expect(pages.join(' ').replace(/\s+/g, ' ')).toContain(words);
  });

  it('keeps letters that its main font does not have', () => {
    expect(pages.join(' ')).toContain('Zofia Łącka');
    expect(pages.join(' ')).toContain('σ and ε');
  });

  it('carries its fonts inside, and names itself in its metadata', async () => {
    expect(file.includes('/FontFile')).toBe(true);
    const { info } = await pdf.getMetadata();
    expect(info).toMatchObject({
      Title: 'Test report TR-2026-0042 rev. 2',
      Author: 'Northmoor Cycles Test Laboratory',
    });
    expect(file.toString('latin1')).toContain('pdfaid:part');
  });

  it('is the same for the same content', async () => {
    const words = (await read(await drawReport(sampleReport(), options))).pages;
    expect(words).toEqual(pages);
  });

  it('goes on over pages with many specimens, and stays within them', async () => {
    const report = sampleReport();
    const rows = Array.from({ length: 120 }, (_, index) => ({
      ...report.batches[0]!.results.rows[0]!,
      label: `R-2031-1-${index + 1}`,
    }));
    report.batches[0]!.results.rows = rows;
    const long = await read(await drawReport(report, options));
    expect(long.pages.length).toBeGreaterThan(pages.length);
    expect(long.pages.join(' ')).toContain('R-2031-1-120');
  });
});
