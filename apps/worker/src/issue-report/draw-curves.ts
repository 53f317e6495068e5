import type { CurveView } from '#libs/contract/src/index.js';
import { INK, needHeight, PAGE, TEXT_WIDTH, write } from './page.js';
import type { Pdf } from './page.js';
import { axisTicks } from './axis-ticks.js';

const HEIGHT = 210;
const ROOM = { left: 46, right: 12, top: 10, bottom: 34 };
/** Told apart by dash as well as by shade, so that a grey print says the same. */
const STROKES = [
  { colour: '#10233f', dash: null },
  { colour: '#1f6f78', dash: [5, 2] },
  { colour: '#b3391b', dash: [2, 2] },
  { colour: '#6b4fa0', dash: [7, 2, 2, 2] },
  { colour: '#7a6a12', dash: [1, 2] },
] as const;

interface Scale {
  x(value: number): number;
  y(value: number): number;
}

/** All curves of a batch in one picture, with the points that the results rest on. Nothing when there is no curve. */
export function drawCurves(pdf: Pdf, curves: readonly CurveView[]): void {
  const drawn = curves.flatMap((curve) => (curve.columns.length >= 2 ? [seriesOf(curve)] : []));
  if (drawn.length === 0) return;
  needHeight(pdf, HEIGHT + 16);
  const top = pdf.y;
  const box = {
    x: PAGE.left + ROOM.left,
    y: top + ROOM.top,
    width: TEXT_WIDTH - ROOM.left - ROOM.right,
    height: HEIGHT - ROOM.top - ROOM.bottom,
  };
  const xTicks = axisTicks(drawn.flatMap(({ xs }) => xs));
  const yTicks = axisTicks(drawn.flatMap(({ ys }) => ys));
  const scale: Scale = {
    x: (value) => box.x + ((value - xTicks.from) / (xTicks.to - xTicks.from)) * box.width,
    y: (value) => box.y + box.height - ((value - yTicks.from) / (yTicks.to - yTicks.from)) * box.height,
  };
  drawAxes(pdf, box, scale, xTicks.ticks, yTicks.ticks, drawn[0]!);
  drawn.forEach((series, index) => drawSeries(pdf, series, scale, STROKES[index % STROKES.length]!));
  drawKey(pdf, drawn, box);
  pdf.x = PAGE.left;
  pdf.y = top + HEIGHT + 6;
}

interface Series {
  label: string;
  xs: readonly number[];
  ys: readonly number[];
  marks: CurveView['marks'];
  xTitle: string;
  yTitle: string;
}

function seriesOf(curve: CurveView): Series {
  const [x, y] = [curve.columns[0]!, curve.columns[1]!];
  const title = ({ label, unit }: { label: string; unit: string }) => (unit ? `${label}, ${unit}` : label);
  const [xs, ys] = [curve.points[x.key] ?? [], curve.points[y.key] ?? []];
  return { label: curve.specimenLabel, marks: curve.marks, xTitle: title(x), yTitle: title(y), xs, ys };
}

function drawAxes(
  pdf: Pdf,
  box: { x: number; y: number; width: number; height: number },
  scale: Scale,
  xTicks: string[],
  yTicks: string[],
  { xTitle, yTitle }: Series,
): void {
  pdf.lineWidth(0.25).strokeColor(INK.line);
  for (const tick of xTicks)
    pdf
      .moveTo(scale.x(+tick), box.y)
      .lineTo(scale.x(+tick), box.y + box.height)
      .stroke();
  for (const tick of yTicks)
    pdf
      .moveTo(box.x, scale.y(+tick))
      .lineTo(box.x + box.width, scale.y(+tick))
      .stroke();
  pdf.lineWidth(0.8).strokeColor(INK.text).rect(box.x, box.y, box.width, box.height).stroke();
  for (const tick of xTicks)
    write(pdf, tick, 'text', 7.5, INK.soft).text(tick, scale.x(+tick) - 20, box.y + box.height + 4, {
      width: 40,
      align: 'center',
      lineBreak: false,
    });
  for (const tick of yTicks)
    write(pdf, tick, 'text', 7.5, INK.soft).text(tick, box.x - 44, scale.y(+tick) - 4, {
      width: 40,
      align: 'right',
      lineBreak: false,
    });
  write(pdf, xTitle, 'text', 8).text(xTitle, box.x, box.y + box.height + 17, { width: box.width, align: 'center' });
  pdf.save().rotate(-90, { origin: [PAGE.left + 2, box.y + box.height] });
  write(pdf, yTitle, 'text', 8).text(yTitle, PAGE.left + 2, box.y + box.height, { width: box.height, align: 'center' });
  pdf.restore();
}

function drawSeries(
  pdf: Pdf,
  { xs, ys, marks }: Series,
  scale: Scale,
  { colour, dash }: (typeof STROKES)[number],
): void {
  if (dash) pdf.dash(dash[0], { space: dash[1] });
  pdf.lineWidth(0.9).strokeColor(colour);
  xs.forEach((x, index) => {
    const at = [scale.x(x), scale.y(ys[index] ?? 0)] as const;
    if (index === 0) pdf.moveTo(...at);
    else pdf.lineTo(...at);
  });
  pdf.stroke().undash();
  for (const mark of marks)
    pdf.circle(scale.x(mark.x), scale.y(mark.y), 1.8).lineWidth(0.7).strokeColor(colour).stroke();
}

function drawKey(
  pdf: Pdf,
  drawn: readonly Series[],
  box: { x: number; y: number; height: number; width: number },
): void {
  drawn.slice(0, 12).forEach(({ label }, index) => {
    const { colour, dash } = STROKES[index % STROKES.length]!;
    const y = box.y + box.height - 12 - (Math.min(drawn.length, 12) - 1 - index) * 10;
    const x = box.x + box.width - 120;
    if (dash) pdf.dash(dash[0], { space: dash[1] });
    pdf
      .lineWidth(1)
      .strokeColor(colour)
      .moveTo(x, y + 4)
      .lineTo(x + 20, y + 4)
      .stroke()
      .undash();
    write(pdf, label, 'mono', 7).text(label, x + 25, y, { lineBreak: false });
  });
}
