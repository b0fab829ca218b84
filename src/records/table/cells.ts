const SPACE = 32;

/** Texts that are kept, a power of 2; one more may take the place of another. */
const KEPT = 1 << 15;

/**
 * The cells of one row, as places in the bytes of a file: what is not asked for costs nothing. Texts that
 * come again and again (names of units and steps) are made once.
 */
export class Cells {
  bytes: Uint8Array = new Uint8Array(0);
  private from = new Int32Array(16);
  private to = new Int32Array(16);
  /** Of cells that were in quotes: what they say. */
  private readonly said: (string | undefined)[] = [];
  private hasSaid = false;
  private readonly keptText = new Array<string>(KEPT).fill('');
  private readonly keptBytes = new Array<Uint8Array>(KEPT).fill(new Uint8Array(0));
  private readonly decoder = new TextDecoder();
  /** How many there are. */
  count = 0;

  begin(bytes: Uint8Array): void {
    this.bytes = bytes;
    this.count = 0;
    if (!this.hasSaid) return;
    this.said.length = 0;
    this.hasSaid = false;
  }

  /** Without the spaces around it, and the carriage return of a line end. */
  add(from: number, to: number): void {
    const { bytes } = this;
    let first = from,
      end = to;
    while (first < end && (bytes[first] ?? 0) <= SPACE) first++;
    while (end > first && (bytes[end - 1] ?? 0) <= SPACE) end--;
    if (this.count === this.from.length) this.grow();
    this.from[this.count] = first;
    this.to[this.count++] = end;
  }

  /** One that was in quotes. */
  addText(text: string): void {
    this.add(0, 0);
    this.said[this.count - 1] = text;
    this.hasSaid = true;
  }

  get isBlank(): boolean {
    return this.count === 1 && this.at(0) === '';
  }

  /** '' where there is none. */
  at(column: number): string {
    if (column < 0 || column >= this.count) return '';
    return this.said[column] ?? this.decode(this.from[column] ?? 0, this.to[column] ?? 0);
  }

  decode(from: number, to: number): string {
    return from === to ? '' : this.decoder.decode(this.bytes.subarray(from, to));
  }

  /** The same, of texts that come again. */
  keptAt(column: number): string {
    if (column < 0 || column >= this.count) return '';
    if (this.hasSaid && this.said[column] !== undefined) return this.said[column];
    const { bytes } = this,
      from = this.from[column] ?? 0,
      to = this.to[column] ?? 0;
    if (from === to) return '';
    let hash = 0;
    for (let i = from; i < to; i++) hash = (Math.imul(hash, 31) + (bytes[i] ?? 0)) | 0;
    const slot = (hash ^ (hash >>> 15)) & (KEPT - 1);
    if (isSame(this.keptBytes[slot], bytes, from, to)) return this.keptText[slot] ?? '';
    const own = this.decode(from, to);
    this.keptText[slot] = own;
    this.keptBytes[slot] = bytes.slice(from, to);
    return own;
  }

  /**
   * Of a cell `2027-08-16T06:00:00` with what follows: reads it off the bytes. `read` gets them, and where the
   * cell begins and ends; undefined of one in quotes.
   */
  bytesAt<T>(column: number, read: (bytes: Uint8Array, from: number, to: number) => T): T | undefined {
    if (column < 0 || column >= this.count || this.said[column] !== undefined) return undefined;
    return read(this.bytes, this.from[column] ?? 0, this.to[column] ?? 0);
  }

  /** All of them, for the head and for messages. */
  all(): string[] {
    return Array.from({ length: this.count }, (_, column) => this.at(column));
  }

  private grow(): void {
    const from = new Int32Array(2 * this.count),
      to = new Int32Array(2 * this.count);
    from.set(this.from);
    to.set(this.to);
    this.from = from;
    this.to = to;
  }
}

function isSame(kept: Uint8Array | undefined, bytes: Uint8Array, from: number, to: number): boolean {
  if (kept?.length !== to - from) return false;
  for (let i = 0; i < kept.length; i++) if (kept[i] !== bytes[from + i]) return false;
  return true;
}
