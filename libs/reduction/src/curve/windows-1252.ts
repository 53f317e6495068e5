/** The characters of bytes 0x80 to 0x9F, in order (Unicode Consortium, mapping table CP1252.TXT); `·` where there is none. */
const FROM_0X80 = '€·‚ƒ„…†‡ˆ‰Š‹Œ·Ž··‘’“”•–—˜™š›œ·žŸ';

const C1 = /[\u0080-\u009F]/g;

/**
 * Reads bytes as Windows-1252; the five that stand for no character stay the control characters U+0081, 8D, 8F, 90 and 9D. By
 * our own table, since some releases of Node read this encoding as ISO 8859-1, where a euro sign is a control character.
 */
export function decodeWindows1252(bytes: Uint8Array): string {
  return new TextDecoder('latin1').decode(bytes).replace(C1, (control) => {
    const character = FROM_0X80[control.charCodeAt(0) - 0x80]!;
    return character === '·' ? control : character;
  });
}
