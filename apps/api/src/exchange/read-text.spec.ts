import { readText } from './read-text.js';

const bytes = (...parts: (string | number[])[]) =>
  Buffer.concat(parts.map((part) => (typeof part === 'string' ? Buffer.from(part, 'latin1') : Buffer.from(part))));

describe('readText', () => {
  it.each([
    ['UTF-8', Buffer.from('Zugprüfmaschine 5 €')],
    ['UTF-8', Buffer.from('\uFEFFZugprüfmaschine 5 €')],
    ['UTF-16', Buffer.from('\uFEFFZugprüfmaschine 5 €', 'utf16le')],
    ['UTF-16', Buffer.from('\uFEFFZugprüfmaschine 5 €', 'utf16le').swap16()],
    // The Unicode Consortium's mapping table CP1252.TXT: 0xFC is ü, 0x80 is the euro sign.
    ['Windows-1252', bytes('Zugprüfmaschine 5 ', [0x80])],
  ])('reads %s and says so', (encoding, sent) => {
    expect(readText(sent)).toEqual({ text: 'Zugprüfmaschine 5 €', encoding });
  });

  it.each([
    ['a workbook', bytes('PK\u0003\u0004 and more'), /a workbook.*Save it as CSV/],
    ['a character that was lost before', Buffer.from('tag\nZugpr\uFFFDfmaschine'), /lost a character .* on line 2/],
    ['half a UTF-16 character', Buffer.from([0xff, 0xfe, 0x61, 0x00, 0x0a, 0x00, 0x00, 0xd8]), /on line 2/],
    ['a byte of nothing', bytes('tag\r\n', [0x81]), /a byte on line 2 that stands for no character/],
    ['zeros', bytes('tag\n\n\u0000'), /a byte on line 3/],
  ])('refuses %s', (_, sent, sentence) => {
    expect(() => readText(sent)).toThrow(sentence);
  });
});
