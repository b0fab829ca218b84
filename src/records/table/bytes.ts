import { Unreadable } from '../unreadable.js';

/** How the bytes of a file were read. */
export type Encoding = 'UTF-8' | 'UTF-16LE' | 'UTF-16BE' | 'Windows-1252';

const LINE_FEED = 10,
  NONE = new Uint8Array(0);

/**
 * Bytes of a file to bytes in UTF-8, whole lines at a time. A byte-order mark is taken off and says what the
 * bytes are; without one they are UTF-8, or from the first lines on that are not, Windows-1252 (as Windows
 * saves text in western Europe and America).
 */
export class Decoder {
  encoding: Encoding = 'UTF-8';
  private decoder: InstanceType<typeof TextDecoder> | undefined;
  private rest: Uint8Array = NONE;
  private isFirst = true;

  /** Whole lines. */
  push(bytes: Uint8Array): Uint8Array {
    let all = joined(this.rest, bytes);
    this.rest = NONE;
    if (this.isFirst) {
      // A mark has three bytes at most.
      if (all.length < 3) {
        this.rest = all;
        return NONE;
      }
      all = this.begin(all);
    }
    if (this.decoder !== undefined)
      return new TextEncoder().encode(this.decoder.decode(all, { stream: true }));
    const end = all.lastIndexOf(LINE_FEED) + 1;
    this.rest = all.slice(end);
    return this.checked(all.subarray(0, end));
  }

  /** What is left: the last line, if no line end is behind it. */
  end(): Uint8Array {
    const last = this.isFirst && this.rest.length > 0 ? this.begin(this.rest) : this.rest;
    return this.checked(last);
  }

  private begin(bytes: Uint8Array): Uint8Array {
    this.isFirst = false;
    const [a, b, c] = bytes;
    if (a === 0xef && b === 0xbb && c === 0xbf) return bytes.subarray(3);
    if (a === 0x50 && b === 0x4b)
      throw new Unreadable(
        'expected a table of text, got a packed file',
        'a workbook (.xlsx) is to be saved as CSV',
      );
    // Without a mark: every other byte of plain words is 0.
    if ((a === 0xff && b === 0xfe) || b === 0) this.encoding = 'UTF-16LE';
    else if ((a === 0xfe && b === 0xff) || a === 0) this.encoding = 'UTF-16BE';
    else return bytes;
    // It takes the mark off.
    this.decoder = new TextDecoder(this.encoding.toLowerCase());
    return bytes;
  }

  /** As UTF-8. Most logs have plain letters only, of which nothing has to be asked. */
  private checked(bytes: Uint8Array): Uint8Array {
    if (isPlain(bytes)) return bytes;
    if (this.encoding === 'UTF-8') {
      try {
        new TextDecoder('utf-8', { fatal: true }).decode(bytes);
        return bytes;
      } catch {
        this.encoding = 'Windows-1252';
      }
    }
    return this.encoding === 'Windows-1252' ? new TextEncoder().encode(windows1252(bytes)) : bytes;
  }
}

/** Characters of the bytes from 0x80 to 0x9f (WHATWG Encoding Standard, index windows-1252). */
const HIGH =
  '\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f' +
  '\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178';

/** By a table of our own: the decoder of Node 20 takes it for Latin-1. */
function windows1252(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes)
    text += byte >= 0x80 && byte < 0xa0 ? HIGH.charAt(byte - 0x80) : String.fromCharCode(byte);
  return text;
}

function isPlain(bytes: Uint8Array): boolean {
  let all = 0;
  for (let i = 0; i < bytes.length; i++) all |= bytes[i] ?? 0;
  return all < 0x80;
}

export function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  if (a.length === 0) return b;
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}
