import type { ReportBatch, ReportDocument } from '#libs/contract/src/index.js';
import QRCode from 'qrcode';
import { drawBatch } from './draw-batch.js';
import { day, meanWithUncertainty } from './figures.js';
import { heading, INK, needHeight, openPdf, PAGE, paragraph, TEXT_WIDTH, write } from './page.js';
import type { Pdf } from './page.js';
import { writePairs, writeTable } from './write-table.js';

interface Options {
  /** Address that people reach the lab's page under; the code on the first page leads there. */
  publicUrl: string;
  issuedAt: Date;
}

/**
 * Draws a report: summary first, then batch by batch, and what ISO/IEC 17025:2017 7.8.2.1 asks for, each on its place.
 * The same document and options give the same pages.
 */
export async function drawReport(report: ReportDocument, { publicUrl, issuedAt }: Options): Promise<Buffer> {
  const pdf = openPdf({
    title: `${report.title} ${nameOf(report)}`,
    author: report.laboratory.name,
    subject: report.request.title,
    keywords: [report.number, report.request.reference, ...report.batches.map(({ method }) => method.designation)].join(
      ', ',
    ),
    createdAt: issuedAt,
  });
  const chunks: Buffer[] = [];
  const whole = new Promise<Buffer>((resolve, reject) => {
    pdf.on('data', (chunk: Buffer) => chunks.push(chunk));
    pdf.on('end', () => resolve(Buffer.concat(chunks)));
    pdf.on('error', reject);
  });
  const code = await QRCode.toBuffer(`${publicUrl}${report.verifyPath}`, {
    margin: 4,
    scale: 6,
    errorCorrectionLevel: 'M',
  });
  drawHead(pdf, report, code);
  drawSummary(pdf, report);
  report.batches.forEach((batch, index) => drawBatch(pdf, batch, index + 1));
  drawStatements(pdf, report);
  drawEnd(pdf, report);
  drawFeet(pdf, report);
  pdf.end();
  return whole;
}

function nameOf({ number, revision }: ReportDocument): string {
  return revision === 1 ? number : `${number} rev. ${revision}`;
}

const CODE_SIZE = 74;

function drawHead(pdf: Pdf, report: ReportDocument, code: Buffer): void {
  const { laboratory, customer, request, dates } = report;
  const textWidth = TEXT_WIDTH - CODE_SIZE - 12;
  pdf.image(code, PAGE.width - PAGE.right - CODE_SIZE, PAGE.top - 8, { width: CODE_SIZE });
  write(pdf, laboratory.name, 'bold', 10).text(laboratory.name, PAGE.left, PAGE.top - 8, { width: textWidth });
  const address = [laboratory.address, laboratory.contact].filter(Boolean).join('\n');
  write(pdf, address, 'text', 8.5, INK.soft).text(address, { width: textWidth });
  pdf.y = Math.max(pdf.y + 12, PAGE.top + 46);
  write(pdf, report.title, 'bold', 20).text(report.title, PAGE.left, pdf.y, { width: textWidth });
  write(pdf, nameOf(report), 'mono', 11).text(nameOf(report), { width: textWidth });
  pdf.y += 8;
  writePairs(pdf, [
    ['Customer', customer.team],
    ['Contact', [customer.requester, customer.contact].filter(Boolean).join(', ')],
    ['Request', `${request.reference}  ${request.title}`],
    ['Place of testing', laboratory.place],
    ['Items received', day(dates.received)],
    [
      'Tested',
      dates.testedFrom === dates.testedTo
        ? day(dates.testedFrom)
        : `${day(dates.testedFrom)} to ${day(dates.testedTo)}`,
    ],
    ['Issued', day(dates.issued)],
    ['Authorised by', report.authorisedBy ? `${report.authorisedBy.name}, ${report.authorisedBy.function}` : '–'],
  ]);
  if (report.amendment !== null) {
    paragraph(
      pdf,
      `This revision replaces ${report.replaces ?? 'the one before'}. What changed, and why: ${report.amendment}`,
      INK.alarm,
    );
  }
}

function drawSummary(pdf: Pdf, report: ReportDocument): void {
  heading(pdf, 'Summary', 1);
  report.summary.forEach((sentence) => paragraph(pdf, sentence));
  const rows = report.batches.flatMap((batch) => summaryRows(batch));
  if (rows.length > 0) {
    writeTable(
      pdf,
      [
        { head: 'Batch', share: 3 },
        { head: 'Result', share: 4 },
        { head: 'Mean ± U', share: 3, align: 'right' },
        { head: 'Unit', share: 1.2 },
        { head: 'n', share: 0.7, align: 'right' },
      ],
      rows.map((cells) => ({ cells })),
    );
  }
  for (const { specification, statement, rule, detail } of report.conformity) {
    const colour = statement === 'does not conform' ? INK.alarm : INK.text;
    const sentence = `Conformity with ${specification}: ${statement}. ${detail} Decision rule: ${rule}.`;
    write(pdf, sentence, 'bold', 9.5, colour).text(sentence, PAGE.left, pdf.y, { width: TEXT_WIDTH });
    pdf.y += 4;
  }
}

function summaryRows({ results }: ReportBatch): string[][] {
  return results.statistics.map((one, index) => {
    const column = results.columns.find(({ key }) => key === one.key) ?? { step: null };
    return [index === 0 ? results.label : '', one.label, meanWithUncertainty(one, column), one.unit, String(one.n)];
  });
}

function drawStatements(pdf: Pdf, report: ReportDocument): void {
  heading(pdf, 'Statements', 1);
  section(pdf, 'Deviations from, additions to and exclusions from the method', report.deviations, 'None.');
  section(
    pdf,
    'Sampling',
    report.sampling ? [report.sampling] : [],
    'The items were tested as received; the laboratory did not sample.',
  );
  section(pdf, 'Measurement uncertainty', report.uncertaintyNote ? [report.uncertaintyNote] : [], 'Not stated.');
  if (report.opinions.length > 0)
    section(pdf, 'Opinions and interpretations (not part of the results)', report.opinions, '');
  section(pdf, 'Results from external providers', report.external ? [report.external] : [], 'None.');
  paragraph(pdf, report.relatesOnlyToItems);
}

function section(pdf: Pdf, title: string, sentences: readonly string[], otherwise: string): void {
  heading(pdf, title, 2);
  (sentences.length > 0 ? sentences : [otherwise]).forEach((sentence) => paragraph(pdf, sentence));
}

function drawEnd(pdf: Pdf, report: ReportDocument): void {
  needHeight(pdf, 40);
  pdf.y += 14;
  const mark = `End of report ${nameOf(report)}`;
  const width = write(pdf, mark, 'bold', 9).widthOfString(mark);
  const middle = PAGE.width / 2;
  const at = pdf.y + 5;
  for (const [from, to] of [
    [PAGE.left, middle - width / 2 - 10],
    [middle + width / 2 + 10, PAGE.width - PAGE.right],
  ] as const) {
    pdf.moveTo(from, at).lineTo(to, at).lineWidth(0.6).strokeColor(INK.text).stroke();
  }
  pdf.text(mark, PAGE.left, pdf.y, { width: TEXT_WIDTH, align: 'center' });
}

/** Number and page of pages on every page: 7.8.2.1 d. */
function drawFeet(pdf: Pdf, report: ReportDocument): void {
  const { start, count } = pdf.bufferedPageRange();
  for (let page = start; page < start + count; page += 1) {
    pdf.switchToPage(page);
    pdf.page.margins.bottom = 0; // else a foot below the margin would start a page of its own
    const foot = `${nameOf(report)}   ·   ${report.laboratory.name}   ·   page ${page - start + 1} of ${count}`;
    write(pdf, foot, 'text', 8, INK.soft).text(foot, PAGE.left, PAGE.height - 40, {
      width: TEXT_WIDTH,
      align: 'center',
      lineBreak: false,
    });
    pdf.page.margins.bottom = PAGE.bottom;
  }
}
