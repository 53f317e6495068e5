import { fieldProblem, InvalidInput, LabError } from '#libs/errors/src/index.js';
import type { LabRequest } from '../platform/signed-in.js';

/**
 * Reads a body that is no JSON, byte for byte. It is read here, and not before, so that nobody can send one who may not.
 *
 * @throws LabError `file/too-large`; InvalidInput when there is nothing in it
 */
export async function readBody(request: LabRequest, limitBytes: number): Promise<Buffer> {
  const parts: Buffer[] = [];
  let bytes = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    bytes += part.length;
    if (bytes > limitBytes) throw tooLarge(limitBytes);
    parts.push(part);
  }
  if (bytes > 0) return Buffer.concat(parts);
  throw new InvalidInput([
    fieldProblem({ field: 'body', found: null, allowed: 'the bytes of a file, not as JSON', unit: '' }),
  ]);
}

function tooLarge(limitBytes: number): LabError {
  const mb = limitBytes / 1024 / 1024;
  return new LabError('file/too-large', `The file is larger than ${mb} MB, which is the most that is taken.`, {
    limitBytes,
  });
}
