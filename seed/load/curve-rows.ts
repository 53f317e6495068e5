import { createHash } from 'node:crypto';
import type { Method } from '#libs/matching/src/index.js';
import { createCurveReader, CURVE_CHANNELS, reduceCurve } from '#libs/reduction/src/index.js';
import type {
  Curve,
  CurveReading,
  ReducedResult,
  ReductionRecipe,
  ResultKey,
  Section,
} from '#libs/reduction/src/index.js';
import type { CurveEntity, ResultBasis, StoredFileEntity } from '#libs/records/src/index.js';
import { curveFile, springyPart, stiffPlastic } from '../northmoor/curve-shapes.js';
import type { RecordedPoint } from '../northmoor/curve-shapes.js';
import { idOf } from '../northmoor/ids.js';
import type { DemoBatch } from '../northmoor/demo-request.js';
import type { Measured } from './measured.js';

/** A recorded curve of one piece: its file, its row, and the results that follow from it. */
export interface RecordedPiece {
  file: Partial<StoredFileEntity>;
  curve: Partial<CurveEntity>;
  results: { key: string; value: number; unit: string; basis: ResultBasis }[];
}

interface Piece {
  label: string;
  specimenId: string;
  jobId: string;
  byId: string;
  at: Date;
  found: Measured;
}

/** Records a curve that shows what was found on the piece, and reads and reduces it as the lab would. */
export function recordedPiece(batch: DemoBatch, method: Method, piece: Piece): RecordedPiece {
  const content = Buffer.from(curveFile(`specimen;${piece.label}`, pointsOf(batch, method, piece)), 'utf8');
  const { curve, format } = readWhole(content, piece.label);
  const { specimenId, jobId, label, at, byId } = piece;
  const fileId = idOf('curve-file', label);
  return {
    file: {
      ...{ id: fileId, name: `${label}.csv`, mediaType: 'text/csv', sizeBytes: content.length, content },
      sha256: createHash('sha256').update(content).digest('hex'),
      storedBy: byId,
      storedAt: at,
    },
    curve: {
      ...{ id: idOf('curve', label), specimenId, jobId, fileId, format: { ...format } },
      ...{ rows: curve.pointCount, drawn: columnsOf(curve), revision: 1, uploadedBy: byId, uploadedAt: at },
    },
    results: reduced(curve, batch, method, piece.found).map((result) => ({
      ...{ key: result.key, value: result.value, unit: result.unit },
      basis: {
        at: result.points.map(({ index }) => valuesAt(curve, index)),
        flags: result.flags.map(({ code }) => code),
      },
    })),
  };
}

function pointsOf({ ask }: DemoBatch, method: Method, { label, found }: Piece): RecordedPoint[] {
  const value = (key: string) => found.results.find((result) => result.key === key)!.value;
  if (method.testType === 'component') {
    const [peakN, stiffnessNPerMm] = [value('peak-load'), value('stiffness')];
    return springyPart(label, { peakN, stiffnessNPerMm, speedMmPerMin: ask.speedMmPerMin ?? 10 });
  }
  const { gaugeLengthMm = 50, gripSeparationMm = 115 } = ask.geometry;
  const areaMm2 = meanOf(found, 'widthMm') * meanOf(found, 'thicknessMm');
  const figures = {
    modulusMPa: value('modulus'),
    strengthMPa: value('peak-stress'),
    breakStrain: value('strain-at-break'),
  };
  return stiffPlastic(label, { ...figures, areaMm2, gaugeLengthMm, gripSeparationMm });
}

function meanOf({ dimensions }: Measured, key: string): number {
  const readings = dimensions[key]!;
  return readings.reduce((sum, each) => sum + each, 0) / readings.length;
}

function readWhole(content: Buffer, label: string): Extract<CurveReading, { state: 'read' }> {
  const reader = createCurveReader();
  reader.push(content);
  const reading = reader.end();
  if (reading.state === 'refused')
    throw new Error(`The curve of ${label} cannot be read: ${JSON.stringify(reading.problems)}`);
  return reading;
}

function reduced(curve: Curve, { ask }: DemoBatch, method: Method, found: Measured): readonly ReducedResult[] {
  const part = method.testType === 'component';
  const section: Section = part ? 'given-area' : 'rectangle';
  // What a method keeps as its recipe was checked when the method was entered.
  const recipe = {
    ...method.reduction,
    section,
    results: ask.results as readonly ResultKey[],
  } as ReductionRecipe;
  const { gaugeLengthMm, gripSeparationMm } = ask.geometry;
  const sizes = Object.fromEntries(Object.keys(found.dimensions).map((key) => [key, meanOf(found, key)]));
  const lengths = {
    ...(gaugeLengthMm ? { gaugeLengthMm } : {}),
    ...(gripSeparationMm ? { gripDistanceMm: gripSeparationMm } : {}),
  };
  const outcome = reduceCurve(curve, recipe, part ? {} : { ...sizes, ...lengths });
  if (outcome.state === 'refused')
    throw new Error(`A curve of the demo cannot be reduced: ${JSON.stringify(outcome.reasons)}`);
  return outcome.results;
}

function columnsOf(curve: Curve): Record<string, number[]> {
  return Object.fromEntries(
    CURVE_CHANNELS.flatMap((channel) => (curve[channel] ? [[channel, Array.from(curve[channel])]] : [])),
  );
}

function valuesAt(curve: Curve, index: number): Record<string, number> {
  return Object.fromEntries(Object.entries(columnsOf(curve)).map(([channel, values]) => [channel, values[index]!]));
}
