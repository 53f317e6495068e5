import { decodeWindows1252 } from './windows-1252.js';
import type { TextEncoding } from './curve-format.js';

/**
 * The encoding of a text, judged by its byte order mark, by the zero bytes of UTF-16, or by whether it is valid UTF-8.
 *
 * @param head the first bytes of the file; it may end in the middle of a character
 */
export function detectEncoding(head: Uint8Array): TextEncoding {
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le';
  if (head[0] === 0xfe && head[1] === 0xff) return 'utf-16be';
  return utf16ByZeros(head) ?? (isUtf8(head) ? 'utf-8' : 'windows-1252');
}

/** Text of digits in UTF-16 has a zero in every second byte. */
function utf16ByZeros(head: Uint8Array): TextEncoding | null {
  const pairs = Math.min(head.length, 2000) >> 1;
  let zerosFirst = 0;
  let zerosSecond = 0;
  for (let pair = 0; pair < pairs; pair++) {
    if (head[2 * pair] === 0) zerosFirst++;
    if (head[2 * pair + 1] === 0) zerosSecond++;
  }
  if (zerosSecond > 0.8 * pairs && zerosFirst === 0) return 'utf-16le';
  return zerosFirst > 0.8 * pairs && zerosSecond === 0 ? 'utf-16be' : null;
}

function isUtf8(head: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return true;
  } catch {
    return false;
  }
}

/** Text of a few bytes; what is no character of the encoding becomes U+FFFD. */
export function decodeText(bytes: Uint8Array, encoding: TextEncoding): string {
  return encoding === 'windows-1252' ? decodeWindows1252(bytes) : new TextDecoder(encoding).decode(bytes);
}

/** Share of control bytes above which a file is taken for something other than text. */
const MOST_CONTROL_SHARE = 0.01;

/** Whether single-byte text (or UTF-8) is plain enough to be a curve file. */
export function looksLikeText(head: Uint8Array): boolean {
  let controls = 0;
  for (const byte of head) {
    if (byte < 9 || (byte > 13 && byte < 32) || byte === 127) controls++;
  }
  return controls <= MOST_CONTROL_SHARE * head.length;
}
