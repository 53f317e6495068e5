const LF = 10;
const CR = 13;

/** Takes bytes[start, end), one line without its end, with its number counted from 1. */
export type TakeLine = (bytes: Uint8Array, start: number, end: number, line: number) => void;

/**
 * Cuts a stream of bytes into lines without copying them; only a line that lies across two chunks is copied.
 * Lines end with LF or CR LF, or with CR alone where `lineEnd` says so.
 */
export class LineSplitter {
  lineCount = 0;
  private carried: Uint8Array;
  private carriedLength = 0;

  constructor(
    private readonly take: TakeLine,
    private readonly refuseLong: (line: number) => void,
    private readonly maxLineBytes: number,
    private readonly lineEnd: number,
  ) {
    this.carried = new Uint8Array(1024);
  }

  push(chunk: Uint8Array): void {
    let start = 0;
    for (let end = chunk.indexOf(this.lineEnd); end >= 0; end = chunk.indexOf(this.lineEnd, start)) {
      if (this.carriedLength > 0) this.finishCarried(chunk.subarray(start, end));
      else this.line(chunk, start, end);
      start = end + 1;
    }
    if (start < chunk.length) this.carry(chunk.subarray(start));
  }

  /** Takes the last line where it has no end. @returns whether it had one */
  finish(): boolean {
    if (this.carriedLength === 0) return true;
    this.finishCarried(new Uint8Array(0));
    return false;
  }

  private finishCarried(rest: Uint8Array): void {
    if (!this.carry(rest)) return;
    const length = this.carriedLength;
    this.carriedLength = 0;
    this.line(this.carried, 0, length);
  }

  private carry(bytes: Uint8Array): boolean {
    const length = this.carriedLength + bytes.length;
    if (length > this.maxLineBytes) {
      this.refuseLong(this.lineCount + 1);
      return false;
    }
    if (length > this.carried.length) this.grow(length);
    this.carried.set(bytes, this.carriedLength);
    this.carriedLength = length;
    return true;
  }

  private grow(length: number): void {
    const larger = new Uint8Array(Math.min(this.maxLineBytes, 2 * length));
    larger.set(this.carried.subarray(0, this.carriedLength));
    this.carried = larger;
  }

  private line(bytes: Uint8Array, start: number, end: number): void {
    const last = end > start && bytes[end - 1] === CR ? end - 1 : end;
    this.lineCount++;
    if (last - start > this.maxLineBytes) this.refuseLong(this.lineCount);
    else this.take(bytes, start, last, this.lineCount);
  }
}

/** CR where a text has only that, else LF. */
export function lineEndOf(head: Uint8Array): number {
  return head.includes(CR) && !head.includes(LF) ? CR : LF;
}
