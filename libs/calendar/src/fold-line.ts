const MOST_OCTETS = 75;

/**
 * Folds a content line so that no line is longer than 75 octets of UTF-8, its break not counted (RFC 5545 3.1). A
 * character is never cut in two; a following line begins with one space, which counts.
 */
export function foldLine(line: string): string {
  const lines = [''];
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character);
    if (octets + size > MOST_OCTETS) {
      lines.push(' ');
      octets = 1;
    }
    lines[lines.length - 1] += character;
    octets += size;
  }
  return lines.join('\r\n');
}

function octetsOf(character: string): number {
  const point = character.codePointAt(0)!;
  if (point < 0x80) return 1;
  if (point < 0x800) return 2;
  return point < 0x10000 ? 3 : 4;
}
