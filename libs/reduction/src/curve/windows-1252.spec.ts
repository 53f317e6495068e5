import { decodeWindows1252 } from './windows-1252.js';

describe('decodeWindows1252', () => {
  it('reads every byte as Python’s codec cp1252 does, and leaves the five that it refuses', () => {
    const all = decodeWindows1252(Uint8Array.from({ length: 256 }, (_, byte) => byte));
    // python3 -c "print(''.join(bytes([b]).decode('cp1252','ignore') for b in range(128, 192)))"
    const python = '€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ\u00A0¡¢£¤¥¦§¨©ª«¬\u00AD®¯°±²³´µ¶·¸¹º»¼½¾¿';
    expect(all.slice(128, 192).replace(/[\u0081\u008D\u008F\u0090\u009D]/g, '')).toBe(python);
    expect(all.slice(0, 128)).toBe(String.fromCharCode(...Array(128).keys()));
    expect(all.slice(192)).toBe(String.fromCharCode(...Array.from({ length: 64 }, (_, nr) => 192 + nr)));
  });
});
