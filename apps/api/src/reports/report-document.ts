import type { CurveView, LabSettings, ReportBatch, ReportDocument, ReportRemarks } from '#libs/contract/src/index.js';
import type { Method } from '#libs/matching/src/index.js';
import type { BatchFound, RequestEntity } from '#libs/records/src/index.js';
import { reported, rowsToDraw } from '#libs/reduction/src/index.js';
import { askOf, materialOf, methodOf } from '#libs/records/src/index.js';
import { dimensionKeys } from '../bench/specimens/dimensions-of.js';
import { foundResults } from '../results/found-results.js';
import { stressStrainView } from '../results/stress-strain-view.js';
import { curveView } from '../results/curve-view.js';
import { measuredSizes } from './measured-sizes.js';
import { describeSpecimen, sayCalibration, sayConditioning, saySpeed } from './words.js';

/** Everything that a report is built from. Nothing of it is typed again. */
export interface ReportParts {
  number: string;
  revision: number;
  amendment: string | null;
  settings: LabSettings;
  request: RequestEntity;
  team: string;
  requester: { name: string; email: string };
  found: readonly BatchFound[];
  remarks: ReportRemarks;
  authorisedBy: { name: string; function: string } | null;
  issuedAt: Date | null;
}

/** The content of a report, out of the record as it stands. */
export function reportDocument(parts: ReportParts): ReportDocument {
  const { number, revision, settings, request, found, remarks } = parts;
  const batches = found.map((one) => batchOf(one, request));
  return {
    title: remarks.title || 'Test report',
    ...{ number, revision, amendment: parts.amendment },
    replaces: revision > 1 ? `${number} rev. ${revision - 1}` : null,
    laboratory: {
      name: settings.name,
      address: settings.address,
      place: settings.address.replace(/\n/g, ', '),
      contact: settings.contact,
    },
    customer: { team: parts.team, requester: parts.requester.name, contact: parts.requester.email },
    request: { reference: request.reference, title: request.title, purpose: request.purpose },
    summary: batches.flatMap(summaryOf),
    batches,
    sampling: remarks.sampling ?? '',
    deviations: [...sentences(remarks.deviations), ...found.flatMap(deviationsAtTheBench)],
    opinions: sentences(remarks.opinions),
    conformity: batches.flatMap(({ results }) => results.conformity ?? []),
    uncertaintyNote: batches.some(({ results }) => results.statistics.some(({ uncertainty }) => uncertainty))
      ? 'U is the expanded uncertainty of the mean, about 95 % coverage, evaluated by the GUM (JCGM 100:2008); its coverage factor k follows from the effective degrees of freedom and stands in the budget. Class limits and lengths enter as rectangular distributions, the scatter of the specimens as the standard deviation of the mean.'
      : '',
    relatesOnlyToItems:
      'The results relate only to the items tested. This report shall not be reproduced except in full without approval of the laboratory. Descriptions of items and materials were given by the customer.',
    dates: datesOf(found, parts.issuedAt),
    external: remarks.external ?? '',
    authorisedBy: parts.authorisedBy,
    verifyPath: `/verify/${number}?revision=${revision}`,
  };
}

function batchOf(found: BatchFound, request: RequestEntity): ReportBatch {
  const method = methodOf(found.method);
  const ask = askOf(found.batch, found.method, found.material);
  const conditions = found.job?.conditions ?? {};
  return {
    results: foundResults(found, request),
    curves: found.curves.map((curve) => reportCurve(found, curve, method)),
    stressStrain: stressStrainOf(found, method),
    method: { designation: method.designation, version: method.version, title: method.title },
    specimens: found.specimens.map((specimen) => ({
      label: specimen.label,
      description: describeSpecimen(ask, found.material && materialOf(found.material)),
      condition: specimen.condition,
      fate: specimen.fate === 'invalid' ? `invalid: ${specimen.invalidWhy ?? ''}` : specimen.fate,
      sizes: measuredSizes(dimensionKeys({ method, ask }), specimen.dimensions),
    })),
    conditions: {
      temperatureC: conditions.temperatureC ?? null,
      humidityPct: conditions.humidityPct ?? null,
      speed: saySpeed(ask, method),
      conditioning: sayConditioning(method),
      remarks: conditions.remarks ?? '',
    },
    items: found.items.map(({ role, item, calibration }) => ({
      role,
      tag: item.tag,
      name: item.name,
      calibration: calibration ? sayCalibration(calibration) : '',
      certificate: calibration?.certificateNumber ?? '',
      dueAt: calibration?.dueAt.toISOString() ?? null,
    })),
    technician: found.technician ?? '',
  };
}

/** Few points are enough for print; the whole curve stays in its file. */
const POINTS_IN_PRINT = 400;

function reportCurve(found: BatchFound, curve: BatchFound['curves'][number], method: Method): CurveView {
  const specimenLabel = found.specimens.find(({ id }) => id === curve.specimenId)?.label ?? '';
  const whole = curveView(curve, { specimenLabel, method, results: found.results });
  return { ...whole, points: thinned(whole) };
}

/** Stress over strain beside the record, where the recipe reads both; a record that holds them itself is drawn so already. */
function stressStrainOf(found: BatchFound, method: Method): CurveView[] {
  return found.curves.flatMap((curve) => {
    const whole = stressStrainView(curve, reportCurve(found, curve, method), found.results, method);
    return whole ? [{ ...whole, points: thinned(whole) }] : [];
  });
}

/** Neither the peak nor a drop of what is drawn upwards is lost. */
function thinned({ columns, points }: CurveView): CurveView['points'] {
  const up = columns[1] && points[columns[1].key];
  if (!up) return points;
  const rows = rowsToDraw(Float64Array.from(up), POINTS_IN_PRINT);
  return Object.fromEntries(Object.entries(points).map(([key, values]) => [key, rows.map((row) => values[row]!)]));
}

function summaryOf({ results, method }: ReportBatch): string[] {
  const main = results.statistics[0];
  if (!main) return [];
  const counted = main.n === 1 ? 'One specimen' : `${main.n} specimens`;
  const of = [results.label, results.material].filter(Boolean).join(', ');
  const column = results.columns.find(({ key }) => key === main.key) ?? { step: null };
  const shown = (value: number): string => reported(value, column);
  const spread = main.n > 1 ? `, from ${shown(main.min)} to ${shown(main.max)} ${main.unit}` : '';
  const invalid = results.rows.filter(({ fate }) => fate === 'invalid').length;
  const lost =
    invalid > 0
      ? ` ${invalid} more ${invalid === 1 ? 'was' : 'were'} invalid and ${invalid === 1 ? 'is' : 'are'} not counted.`
      : '';
  return [
    `${counted}${of ? ` of ${of}` : ''} by ${method.designation}: ${main.label.toLowerCase()} ${shown(main.mean)} ${main.unit} in the mean${spread}.${lost}`,
  ];
}

function deviationsAtTheBench({ job, batch }: BatchFound): string[] {
  return sentences(job?.conditions.deviations).map((sentence) =>
    batch.label ? `${batch.label}: ${sentence}` : sentence,
  );
}

function sentences(text: string | undefined): string[] {
  return (text ?? '')
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
}

function datesOf(found: readonly BatchFound[], issuedAt: Date | null): ReportDocument['dates'] {
  const received = found.flatMap(({ specimens }) => specimens.flatMap(({ arrivedAt }) => arrivedAt ?? []));
  const started = found.flatMap(({ job }) => job?.startedAt ?? []);
  const ended = found.flatMap(({ job }) => job?.finishedAt ?? []);
  return {
    received: extreme(received, -1),
    testedFrom: extreme(started, -1),
    testedTo: extreme(ended, 1),
    issued: issuedAt?.toISOString() ?? null,
  };
}

function extreme(dates: readonly Date[], sign: 1 | -1): string | null {
  const sorted = [...dates].sort((a, b) => sign * (b.getTime() - a.getTime()));
  return sorted[0]?.toISOString() ?? null;
}
