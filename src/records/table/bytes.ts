import { Unreadable } from '../unreadable.js';

/** How the bytes of a file were read. */
export type Encoding = 'UTF-8' | 'UTF-16LE' | 'UTF-16BE' | 'Windows-1252';

const LINE_FEED = 10;

/**
 * Bytes to text, part by part. A byte-order mark is taken off and says what the bytes are; without one they
 * are UTF-8, or from the first line on that is not, Windows-1252 (as Windows saves text in western Europe and
 * America). Parts end with a line, so that no character is cut.
 */
export class Decoder {
  encoding: Encoding = 'UTF-8';
  private decoder: TextDecoder | undefined;
  private rest = new Uint8Array(0);
  private isFirst = true;

  push(bytes: Uint8Array): string {
    let all = joined(this.rest, bytes);
    if (this.isFirst) {
      // A mark has three bytes at most.
      if (all.length < 3) {
        this.rest = all;
        return '';
      }
      all = this.begin(all);
    }
    if (this.encoding === 'UTF-16LE' || this.encoding === 'UTF-16BE') {
      this.rest = new Uint8Array(0);
      return this.decode(all, true);
    }
    const end = all.lastIndexOf(LINE_FEED) + 1;
    this.rest = all.slice(end);
    return this.decode(all.subarray(0, end), false);
  }

  end(): string {
    const last = this.isFirst && this.rest.length > 0 ? this.begin(this.rest) : this.rest;
    return this.decode(last, false);
  }

  private begin(bytes: Uint8Array): Uint8Array {
    this.isFirst = false;
    const [a, b, c] = bytes;
    if (a === 0xef && b === 0xbb && c === 0xbf) return bytes.subarray(3);
    if (a === 0x50 && b === 0x4b)
      throw new Unreadable('expected a table of text, got a packed file', 'a workbook has the ending .xlsx');
    // Without a mark: every other byte of plain words is 0.
    if ((a === 0xff && b === 0xfe) || b === 0) this.encoding = 'UTF-16LE';
    else if ((a === 0xfe && b === 0xff) || a === 0) this.encoding = 'UTF-16BE';
    // The decoder takes the mark off.
    return bytes;
  }

  private decode(bytes: Uint8Array, stream: boolean): string {
    this.decoder ??= new TextDecoder(this.encoding.toLowerCase(), {
      fatal: this.encoding === 'UTF-8',
      // A mark inside the file is a character; that at its start was taken off.
      ignoreBOM: this.encoding === 'UTF-8',
    });
    try {
      return this.decoder.decode(bytes, { stream });
    } catch {
      this.encoding = 'Windows-1252';
      this.decoder = new TextDecoder('windows-1252');
      return this.decoder.decode(bytes);
    }
  }
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  if (a.length === 0) return b;
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}
