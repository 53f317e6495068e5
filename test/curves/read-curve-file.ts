import { readFileSync } from 'node:fs';
import { HEAD_BYTES, createCurveReader, proposeFormat } from '#libs/reduction/src/index.js';
import type { Curve, CurveFormat, CurveReading } from '#libs/reduction/src/index.js';

/** Reads a file in chunks of an odd size, so that every spec also checks that the cuts do not matter. */
export function readingOf(file: string | URL, format?: CurveFormat): CurveReading {
  return readingOfBytes(readFileSync(file), format, 4099);
}

export function readingOfBytes(bytes: Uint8Array, format?: CurveFormat, chunkSize = bytes.length || 1): CurveReading {
  const reader = createCurveReader(format ? { format } : {});
  for (let at = 0; at < bytes.length; at += chunkSize) reader.push(bytes.subarray(at, at + chunkSize));
  return reader.end();
}

/** The curve of a file that must be readable once a person has confirmed what was proposed for it. */
export function curveOf(file: string | URL): Curve {
  return confirmedReading(file).curve;
}

/** Reads a file by the format that is proposed for it, as if a person had confirmed that. */
export function confirmedReading(file: string | URL): Extract<CurveReading, { state: 'read' }> {
  const proposal = proposeFormat(readFileSync(file).subarray(0, HEAD_BYTES), false);
  return readOrFail(readingOf(file, proposal?.format));
}

export function readOrFail(reading: CurveReading): Extract<CurveReading, { state: 'read' }> {
  if (reading.state === 'read') return reading;
  throw new Error(`The file was refused: ${JSON.stringify(reading.problems)}`);
}
