import { LabError } from '#libs/errors/src/index.js';
import { createCurveReader, sayProblem } from '#libs/reduction/src/index.js';
import type { CurveFormat, CurveReading } from '#libs/reduction/src/index.js';

const CHUNK_BYTES = 1024 * 1024;
const NAMED = 3;

/**
 * Reads a curve file whole, or not at all.
 *
 * @param told hears the share that is read, 0 to 1
 * @throws LabError `curve/refused` with lines and reasons
 */
export async function readCurveFile(
  name: string,
  content: Uint8Array,
  format: CurveFormat,
  told: (share: number) => Promise<void>,
): Promise<Extract<CurveReading, { state: 'read' }>> {
  const reader = createCurveReader({ format });
  for (let at = 0; at < content.length && !reader.isRefused; at += CHUNK_BYTES) {
    reader.push(content.subarray(at, at + CHUNK_BYTES));
    await told(Math.min(1, (at + CHUNK_BYTES) / content.length));
  }
  const reading = reader.end();
  if (reading.state === 'read') return reading;
  const { problems, problemCount } = reading;
  const more = problemCount > NAMED ? ` ${problemCount - NAMED} more.` : '';
  throw new LabError(
    'curve/refused',
    `${name} was not taken. ${problems.slice(0, NAMED).map(sayProblem).join(' ')}${more}`,
    { problems, problemCount },
  );
}
