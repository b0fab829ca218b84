import { createHash } from 'node:crypto';
import { closeSync, existsSync, fstatSync, ftruncateSync, openSync, readSync, writeSync } from 'node:fs';
import { deserialize, serialize } from 'node:v8';

/** What a journal belongs to: whatever may change a number, by name, as text; see `identity.ts`. */
export type Identity = Readonly<Record<string, string>>;

/** The journal of another study: the user's to solve. `changed` names what differs. */
export class JournalError extends Error {
  constructor(readonly path: string, readonly changed: readonly string[]) {
    super(`expected ${path} to be the journal of this very study, but it is not: ${changed.join('; ')}`);
  }
}

const MARK = Buffer.from('rateproof journal 1\n'), HEAD_BYTES = 4 + 16;

/**
 * Finished replications, on disk as they end, so that a long study that was cut off goes on from there.
 *
 * The file is a line that says what it is, then records: length (4 bytes), the first 16 bytes of the SHA-256 of the body, body
 * (V8's serialisation, which keeps typed arrays and NaN). The first record holds the identity. A record that was cut off, and all
 * behind it, are thrown away.
 */
export class Journal<Value> {
  private readonly file: number;
  /** Bytes of the file that are whole. */
  private end = 0;
  private readonly known = new Map<string, Value>();
  private count: number;

  /**
   * Opens or begins the journal at `path`; only `toRead` nothing is written, and there must be one.
   * @throws JournalError if it belongs to something else
   */
  constructor(readonly path: string, identity: Identity, toRead = false) {
    this.file = openSync(path, toRead ? 'r' : existsSync(path) ? 'r+' : 'wx+');
    const { size } = fstatSync(this.file), mark = this.bytes(0, Math.min(size, MARK.length), size)!;
    const records = mark.equals(MARK.subarray(0, mark.length)) ? this.read(size) : null;
    const seen = records?.[0] as Identity | undefined;
    const changed = records === null ? ['it is no journal of this version'] : seen === undefined ? [] : differences(seen, identity);
    if (changed.length > 0) { this.close(); throw new JournalError(path, changed); }
    for (const [key, value] of (records!.slice(1) as [string, Value][])) this.known.set(key, value);
    this.count = this.known.size;
    if (toRead) return;
    ftruncateSync(this.file, this.end);
    if (seen !== undefined) return;
    // New, or cut off in its first record.
    this.write(MARK, 0);
    this.append(identity);
  }

  get(key: string): Value | undefined {
    return this.known.get(key);
  }

  /** Replications in it, those added too. */
  get size(): number {
    return this.count;
  }

  add(key: string, value: Value): void {
    this.append([key, value]);
    this.count++;
  }

  /** What was read is no longer needed. */
  forget(key: string): void {
    this.known.delete(key);
  }

  close(): void {
    closeSync(this.file);
  }

  private append(record: unknown): void {
    const body = serialize(record), head = Buffer.alloc(HEAD_BYTES);
    head.writeUInt32LE(body.length);
    digestOf(body).copy(head, 4);
    this.write(Buffer.concat([head, body]), this.end);
  }

  private write(bytes: Buffer, at: number): void {
    writeSync(this.file, bytes, 0, bytes.length, at);
    this.end = at + bytes.length;
  }

  /** The whole records, up to `end`. */
  private read(size: number): unknown[] {
    const records: unknown[] = [];
    for (this.end = Math.min(size, MARK.length); ;) {
      const head = this.bytes(this.end, HEAD_BYTES, size);
      const body = head === undefined ? undefined : this.bytes(this.end + HEAD_BYTES, head.readUInt32LE(), size);
      if (head === undefined || body === undefined || !digestOf(body).equals(head.subarray(4))) return records;
      records.push(deserialize(body));
      this.end += HEAD_BYTES + body.length;
    }
  }

  private bytes(from: number, length: number, size: number): Buffer | undefined {
    if (from + length > size) return undefined;
    const bytes = Buffer.alloc(length);
    readSync(this.file, bytes, 0, length, from);
    return bytes;
  }
}

const digestOf = (body: Buffer): Buffer => createHash('sha256').update(body).digest().subarray(0, 16);

/** What of `wanted` is not as it was `seen`, in words. */
export function differences(seen: Identity, wanted: Identity): string[] {
  const names = [...new Set([...Object.keys(wanted), ...Object.keys(seen)])];
  return names.filter((name) => seen[name] !== wanted[name]).map((name) => `${name} was ${seen[name] ?? 'not there'}, now it is ${wanted[name] ?? 'not there'}`);
}
