import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';

/** A4, in points. */
export const PAGE = { width: 595.28, height: 841.89, left: 51, right: 51, top: 62, bottom: 62 } as const;
export const TEXT_WIDTH = PAGE.width - PAGE.left - PAGE.right;

/** Ink of a technical drawing: lines and words dark blue, what must be seen vermilion. */
export const INK = { text: '#10233f', soft: '#4a5b75', line: '#9aa9bf', fill: '#eef2f7', alarm: '#b3391b' } as const;

export type Weight = 'text' | 'bold' | 'mono';
export type Pdf = PDFKit.PDFDocument;

interface Naming {
  title: string;
  author: string;
  subject: string;
  keywords: string;
  createdAt: Date;
}

const require = createRequire(import.meta.url);
const FONT_FILES: Record<Weight | `wide-${Weight}`, string> = {
  text: '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-400-normal.woff',
  bold: '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-700-normal.woff',
  mono: '@fontsource/atkinson-hyperlegible-mono/files/atkinson-hyperlegible-mono-latin-400-normal.woff',
  'wide-text': 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf',
  'wide-bold': 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf',
  'wide-mono': 'dejavu-fonts-ttf/ttf/DejaVuSansMono.ttf',
};

/** An empty document by PDF/A-2 rules: every font goes into the file, and its title and language stand in its metadata. */
export function openPdf({ title, author, subject, keywords, createdAt }: Naming): Pdf {
  const pdf = new PDFDocument({
    size: 'A4',
    margins: { left: PAGE.left, right: PAGE.right, top: PAGE.top, bottom: PAGE.bottom },
    bufferPages: true,
    pdfVersion: '1.7',
    subset: 'PDF/A-2b',
    tagged: true,
    lang: 'en-GB',
    displayTitle: true,
    font: require.resolve(FONT_FILES.text),
    info: {
      Title: title,
      Author: author,
      Subject: subject,
      Keywords: keywords,
      CreationDate: createdAt,
      ModDate: createdAt,
    },
  });
  for (const [name, file] of Object.entries(FONT_FILES)) pdf.registerFont(name, require.resolve(file));
  return pdf;
}

/** What the narrow text fonts can write; anything else (Greek, Polish, Cyrillic …) is written in the wide ones. */
const NARROW = /^[\u0020-\u007e\u00a0-\u00ff\u2013\u2014\u2018-\u201d\u2022\u2026\u20ac\u2212]*$/;

/** Selects the font for a text, so that none of its letters is lost. */
export function write(pdf: Pdf, text: string, weight: Weight, size: number, colour: string = INK.text): Pdf {
  const font = NARROW.test(text.replace(/\s/g, ' ')) ? weight : (`wide-${weight}` as const);
  // The wide fonts are cut larger; a tenth less looks like the same size.
  return pdf
    .font(font)
    .fontSize(font === weight ? size : size * 0.9)
    .fillColor(colour);
}

/** Goes to a new page unless so much height is left, pt. */
export function needHeight(pdf: Pdf, height: number): void {
  if (pdf.y + height > PAGE.height - PAGE.bottom) pdf.addPage();
}

export function heading(pdf: Pdf, text: string, level: 1 | 2): void {
  needHeight(pdf, level === 1 ? 70 : 50);
  pdf.y += level === 1 ? 16 : 10;
  write(pdf, text, 'bold', level === 1 ? 13 : 10.5).text(text, PAGE.left, pdf.y, { width: TEXT_WIDTH });
  if (level === 1) {
    const at = pdf.y + 2;
    pdf
      .moveTo(PAGE.left, at)
      .lineTo(PAGE.width - PAGE.right, at)
      .lineWidth(0.8)
      .strokeColor(INK.text)
      .stroke();
    pdf.y = at;
  }
  pdf.y += 5;
}

export function paragraph(pdf: Pdf, text: string, colour: string = INK.text): void {
  if (text === '') return;
  write(pdf, text, 'text', 9.5, colour);
  needHeight(pdf, Math.min(60, pdf.heightOfString(text, { width: TEXT_WIDTH })));
  pdf.text(text, PAGE.left, pdf.y, { width: TEXT_WIDTH, lineGap: 1.5 });
  pdf.y += 4;
}
