import { fieldProblem, InvalidInput } from '#libs/errors/src/index.js';
import { decodeWindows1252 } from '#libs/reduction/src/index.js';
import type { TextEncoding } from '#libs/contract/src/index.js';

export interface ReadText {
  text: string;
  encoding: TextEncoding;
}

/**
 * Reads the bytes of a text file: by its byte order mark, else as UTF-8 when every byte fits, else as Windows-1252, the way of
 * spreadsheets in Western Europe and America.
 *
 * @throws {InvalidInput} for a file that is no text, or in which a character was lost before it came here
 */
export function readText(bytes: Uint8Array): ReadText {
  if (ZIP.every((byte, at) => bytes[at] === byte))
    throw refused('a workbook', 'Save it as CSV from the spreadsheet program.');
  const read = decoded(bytes);
  const lost = lineOf(read.text, '\uFFFD');
  if (lost)
    throw refused(
      `a text that has lost a character (\uFFFD) on line ${lost}`,
      'Save it anew from the program that it comes from.',
    );
  const strange = lineOf(read.text, CONTROL);
  if (strange)
    throw refused(`a text with a byte on line ${strange} that stands for no character`, 'Save it as CSV in UTF-8.');
  return read;
}

/** How a workbook of any common spreadsheet program begins (ZIP file format specification 4.3.7). */
const ZIP = [0x50, 0x4b, 0x03, 0x04];

/** Control characters but tab and line ends; bytes that Windows-1252 does not define are read as some of them. */
const CONTROL = /(?![\t\n\r])\p{Cc}/u;

function decoded(bytes: Uint8Array): ReadText {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return { text: new TextDecoder('utf-16le').decode(bytes), encoding: 'UTF-16' };
  if (first === 0xfe && second === 0xff) return { text: new TextDecoder('utf-16be').decode(bytes), encoding: 'UTF-16' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'UTF-8' };
  } catch {
    return { text: decodeWindows1252(bytes), encoding: 'Windows-1252' };
  }
}

function lineOf(text: string, wanted: string | RegExp): number | null {
  const at = text.search(wanted);
  return at < 0 ? null : text.slice(0, at).split(/\r\n|\r|\n/).length;
}

function refused(found: string, what: string): InvalidInput {
  return new InvalidInput([fieldProblem({ field: 'body', found, allowed: 'a text file (CSV)', unit: '' }, what)]);
}
