import type { BatchResults, ReportBatch, StatisticsView } from '#libs/contract/src/index.js';
import { sizesTable } from '#libs/contract/src/index.js';
import { drawCurves } from './draw-curves.js';
import { reported } from '#libs/reduction/src/index.js';
import { day, meanWithUncertainty, spread } from './figures.js';
import { heading, INK, paragraph } from './page.js';
import type { Pdf } from './page.js';
import { writePairs, writeTable } from './write-table.js';
import type { Row } from './write-table.js';

/** One batch: what was tested, how, on what, and every figure. */
export function drawBatch(pdf: Pdf, batch: ReportBatch, position: number): void {
  const { method, results, conditions } = batch;
  heading(pdf, `${position}. ${results.label || method.title}`, 1);
  writePairs(pdf, [
    ['Method', `${method.designation} (lab version ${method.version})`],
    ['Procedure', method.title],
    ['Material', results.material ?? 'as declared by the customer'],
    ['Conditioning', conditions.conditioning || 'none asked for'],
    ['Test temperature', conditions.temperatureC === null ? 'not recorded' : `${conditions.temperatureC} °C`],
    ['Humidity', conditions.humidityPct === null ? 'not recorded' : `${conditions.humidityPct} %`],
    ['Speed', conditions.speed],
    ['Tested by', batch.technician],
  ]);
  paragraph(pdf, conditions.remarks);
  drawResults(pdf, results);
  drawCurves(pdf, batch.curves);
  drawCurves(pdf, batch.stressStrain ?? []);
  drawBudgets(pdf, results);
  drawSpecimens(pdf, batch);
  drawItems(pdf, batch);
}

function drawResults(pdf: Pdf, { columns, rows, statistics }: BatchResults): void {
  heading(pdf, 'Results', 2);
  if (columns.length === 0) return paragraph(pdf, 'No results.');
  const of = (key: string) => statistics.find((one) => one.key === key);
  const sums: [string, (column: BatchResults['columns'][number]) => string][] = [
    ['Mean', (column) => (of(column.key) ? reported(of(column.key)!.mean, column) : '–')],
    ['Standard deviation', ({ key }) => spread(of(key)?.standardDeviation ?? null)],
    ['Coefficient of variation, %', ({ key }) => spread(of(key)?.cvPct ?? null)],
    ['Mean ± U', (column) => (of(column.key) ? meanWithUncertainty(of(column.key)!, column) : '–')],
  ];
  const body: Row[] = rows.map(({ label, fate, invalidWhy, values }) => ({
    cells: [label, ...columns.map((column) => cell(values[column.key], column, fate))],
    alarm: invalidWhy !== null,
  }));
  const sumRows = sums.map(([name, value], index) => ({
    cells: [name, ...columns.map(value)],
    sum: index === 0,
    plain: true,
  }));
  writeTable(
    pdf,
    [
      { head: 'Specimen', share: 2.4, weight: 'mono' },
      ...columns.map(({ label, unit }) => ({
        head: unit ? `${label}, ${unit}` : label,
        share: 1.6,
        align: 'right' as const,
      })),
    ],
    [...body, ...sumRows],
  );
  drawDefinitions(pdf, columns);
  rows
    .filter(({ invalidWhy }) => invalidWhy !== null)
    .forEach(({ label, invalidWhy }) =>
      paragraph(pdf, `${label} is invalid and not counted: ${invalidWhy}.`, INK.alarm),
    );
  rows.forEach(({ label, missing = [] }) =>
    missing.forEach((lack) =>
      paragraph(pdf, `${label}, ${lack.label}: no result. ${lack.why ?? 'No reason was given.'}`),
    ),
  );
  remarks({ columns, rows }).forEach((remark) => paragraph(pdf, `* ${remark}`, INK.soft));
  statistics
    .filter(({ possibleOutliers }) => possibleOutliers.length > 0)
    .forEach(({ label, possibleOutliers }) =>
      paragraph(
        pdf,
        `${label}: ${possibleOutliers.join(', ')} may be an outlier (Grubbs, two-sided, 5 %). It is counted.`,
      ),
    );
  statistics.forEach(
    ({ label, toleranceBound }) => toleranceBound && paragraph(pdf, `${label}: ${toleranceBound.sentence}`),
  );
}

/** What each result is: which stress or strain, read where, over which length. */
function drawDefinitions(pdf: Pdf, columns: BatchResults['columns']): void {
  const defined = columns.flatMap(({ label, definition }) => (definition ? [`${label}: ${definition}.`] : []));
  if (defined.length === 0) return;
  paragraph(pdf, 'How the results are defined', INK.soft);
  defined.forEach((sentence) => paragraph(pdf, sentence));
}

/** What the flagged figures mean, in words, each with the result and the specimens that it is about. */
export function remarks({ columns, rows }: Pick<BatchResults, 'columns' | 'rows'>): string[] {
  const labels = new Map<string, string[]>();
  for (const column of columns)
    for (const { label, values } of rows)
      for (const flag of values[column.key]?.flags ?? []) {
        const remark = `${column.label}: ${flag}`;
        labels.set(remark, [...(labels.get(remark) ?? []), label]);
      }
  return [...labels].map(([remark, of]) => `${of.join(', ')}, ${remark}`);
}

/** The sources of one result, and what expands them to U. */
function budgetRows(label: string, unit: string, uncertainty: NonNullable<StatisticsView['uncertainty']>): string[][] {
  const { budget, expanded, k, degreesOfFreedom } = uncertainty;
  const freedom = degreesOfFreedom === undefined ? '' : `, degrees of freedom ${degreesOfFreedom ?? 'without limit'}`;
  return [
    ...budget.map(({ source, value, contributionPct }, index) => [
      index === 0 ? label : '',
      source,
      `${spread(value)} ${unit}`,
      `${Math.round(contributionPct)} %`,
    ]),
    ['', `U with k = ${k.toFixed(2)}${freedom}`, `${spread(expanded)} ${unit}`, ''],
  ];
}

function cell(
  value: { value: number; flags: string[] } | null | undefined,
  column: { step: number | null },
  fate: string,
): string {
  if (!value) return fate === 'invalid' ? 'invalid' : '–';
  return `${reported(value.value, column)}${value.flags.length > 0 ? ' *' : ''}`;
}

function drawBudgets(pdf: Pdf, { statistics }: BatchResults): void {
  const rows = statistics.flatMap(({ label, unit, uncertainty }) =>
    uncertainty === null ? [] : budgetRows(label, unit, uncertainty),
  );
  if (rows.length === 0) return;
  heading(pdf, 'Uncertainty budget', 2);
  writeTable(
    pdf,
    [
      { head: 'Result', share: 3 },
      { head: 'Source', share: 4 },
      { head: 'Standard uncertainty', share: 2.4, align: 'right' },
      { head: 'Share', share: 1.2, align: 'right' },
    ],
    rows.map((cells) => ({ cells })),
  );
}

function drawSpecimens(pdf: Pdf, { specimens }: ReportBatch): void {
  heading(pdf, 'Specimens', 2);
  writeTable(
    pdf,
    [
      { head: 'Specimen', share: 2, weight: 'mono' },
      { head: 'Description', share: 4 },
      { head: 'Condition on receipt', share: 3 },
      { head: 'Fate', share: 1.4 },
    ],
    specimens.map(({ label, description, condition, fate }) => ({
      cells: [label, description, condition || 'as expected', fate],
    })),
  );
  drawSizes(pdf, specimens);
}

function drawSizes(pdf: Pdf, specimens: ReportBatch['specimens']): void {
  const table = sizesTable(specimens);
  if (!table) return;
  heading(pdf, 'Measured sizes: mean (number of readings)', 2);
  writeTable(
    pdf,
    [
      { head: 'Specimen', share: 2, weight: 'mono' },
      ...table.columns.map(({ head }) => ({ head, share: 2, align: 'right' as const })),
    ],
    table.rows.map(({ label, cells }) => ({ cells: [label, ...cells] })),
  );
}

function drawItems(pdf: Pdf, { items }: ReportBatch): void {
  heading(pdf, 'Equipment', 2);
  writeTable(
    pdf,
    [
      { head: 'Item', share: 1.8, weight: 'mono' },
      { head: 'What', share: 3.4 },
      { head: 'Calibration', share: 3.4 },
      { head: 'Certificate', share: 1.7 },
      { head: 'Due', share: 1.6 },
    ],
    items.map(({ tag, name, role, calibration, certificate, dueAt }) => ({
      cells: [tag, `${name} (${role})`, calibration || 'none needed', certificate || '–', day(dueAt)],
    })),
  );
}
