import { INK, needHeight, PAGE, TEXT_WIDTH, write } from './page.js';
import type { Pdf, Weight } from './page.js';

export interface Column {
  head: string;
  /** Share of the text width. */
  share: number;
  align?: 'left' | 'right';
  weight?: Weight;
}

export interface Row {
  cells: string[];
  /** Drawn in the colour that must be seen. */
  alarm?: boolean;
  /** A line above it, bold: what sums up the rows before. */
  sum?: boolean;
  /** In the text font, whatever its columns say. */
  plain?: boolean;
}

const SIZE = 8.8;
const PAD_X = 4;
const PAD_Y = 3;

/** A table that goes on over pages with its head repeated; a row is never torn. */
export function writeTable(pdf: Pdf, columns: readonly Column[], rows: readonly Row[]): void {
  const total = columns.reduce((sum, { share }) => sum + share, 0);
  const widths = columns.map(({ share }) => (share / total) * TEXT_WIDTH);
  const head: Row = { cells: columns.map((column) => column.head) };
  const headHeight = heightOf(pdf, columns, widths, head, 'bold');
  const first = rows[0] ? heightOf(pdf, columns, widths, rows[0]) : 0;
  needHeight(pdf, headHeight + first + 4);
  writeHead(pdf, columns, widths, head, headHeight);
  for (const row of rows) {
    const height = heightOf(pdf, columns, widths, row);
    if (pdf.y + height > PAGE.height - PAGE.bottom) {
      pdf.addPage();
      writeHead(pdf, columns, widths, head, headHeight);
    }
    writeRow(pdf, columns, widths, row, height);
  }
  pdf.y += 6;
}

function writeHead(pdf: Pdf, columns: readonly Column[], widths: readonly number[], head: Row, height: number): void {
  pdf.rect(PAGE.left, pdf.y, TEXT_WIDTH, height).fill(INK.fill);
  writeCells(pdf, columns, widths, head, 'bold', INK.text);
  pdf.y += height;
  rule(pdf, INK.text, 0.7);
}

function writeRow(pdf: Pdf, columns: readonly Column[], widths: readonly number[], row: Row, height: number): void {
  if (row.sum) rule(pdf, INK.text, 0.4);
  const weight = row.sum ? 'bold' : row.plain ? 'text' : undefined;
  writeCells(pdf, columns, widths, row, weight, row.alarm ? INK.alarm : INK.text);
  pdf.y += height;
  rule(pdf, INK.line, 0.3);
}

function writeCells(
  pdf: Pdf,
  columns: readonly Column[],
  widths: readonly number[],
  { cells }: Row,
  weight: Weight | undefined,
  colour: string,
): void {
  const top = pdf.y;
  let x = PAGE.left;
  columns.forEach((column, index) => {
    const text = cells[index] ?? '';
    const width = widths[index]! - 2 * PAD_X;
    write(pdf, text, weight ?? column.weight ?? 'text', SIZE, colour).text(text, x + PAD_X, top + PAD_Y, {
      width,
      align: column.align ?? 'left',
    });
    x += widths[index]!;
  });
  pdf.y = top;
}

function heightOf(
  pdf: Pdf,
  columns: readonly Column[],
  widths: readonly number[],
  { cells }: Row,
  weight?: Weight,
): number {
  const heights = columns.map((column, index) => {
    const text = cells[index] ?? '';
    return write(pdf, text, weight ?? column.weight ?? 'text', SIZE).heightOfString(text || ' ', {
      width: widths[index]! - 2 * PAD_X,
    });
  });
  return Math.max(...heights) + 2 * PAD_Y;
}

function rule(pdf: Pdf, colour: string, width: number): void {
  pdf
    .moveTo(PAGE.left, pdf.y)
    .lineTo(PAGE.width - PAGE.right, pdf.y)
    .lineWidth(width)
    .strokeColor(colour)
    .stroke();
}

/** Name and value, two pairs a line: the head of a report and conditions. */
export function writePairs(pdf: Pdf, pairs: readonly (readonly [string, string])[]): void {
  const half = TEXT_WIDTH / 2;
  for (let at = 0; at < pairs.length; at += 2) {
    const line = pairs.slice(at, at + 2);
    const heights = line.map(([, value]) =>
      write(pdf, value, 'text', 9).heightOfString(value || ' ', { width: half - 104 }),
    );
    const height = Math.max(...heights) + 4;
    needHeight(pdf, height);
    const top = pdf.y;
    line.forEach(([name, value], index) => {
      const x = PAGE.left + index * half;
      write(pdf, name, 'text', 8, INK.soft).text(name, x, top + 0.8, { width: 90 });
      write(pdf, value, 'text', 9).text(value, x + 94, top, { width: half - 104 });
    });
    pdf.y = top + height;
  }
  pdf.y += 4;
}
