import { createHash } from 'node:crypto';
import { closeSync, existsSync, fstatSync, ftruncateSync, openSync, readSync, writeSync } from 'node:fs';
import { deserialize, serialize } from 'node:v8';
import { defined } from '../lists.js';

/** What a journal belongs to: whatever may change a number, by name, as text; see `identity.ts`. */
export type Identity = Readonly<Record<string, string>>;

/** The name under which an identity holds what the standard run came to, see `machine.ts`. */
export const STANDARD_RUN = 'standard run';

/** The journal of another study: the user's to solve. `changed` names what differs. */
export class JournalError extends Error {
  constructor(
    readonly path: string,
    readonly changed: readonly string[],
  ) {
    super(`${path}: expected the journal of this study, got another: ${changed.join('; ')}`);
  }
}

/** Where a record lies in the file: its first byte, and how many there are. */
interface Place {
  readonly at: number;
  readonly bytes: number;
}

/** Key of the record that tells of which results a report was made; those of replications have a blank. */
const REPORT = 'report';

const MARK = Buffer.from('rateproof journal 1\n'),
  HEAD_BYTES = 4 + 16;

/**
 * Finished replications, on disk as they end, so that a long study that was cut off goes on from there.
 *
 * The file is a line that says what it is, then records: length (4 bytes), the first 16 bytes of the SHA-256
 * of the body, body (V8's serialisation, which keeps typed arrays and NaN). The first record holds the
 * identity. A record that was cut off, and all behind it, are thrown away. In memory is only where each
 * record lies.
 */
export class Journal<Value> {
  private readonly file: number;
  private readonly places = new Map<string, Place>();

  /**
   * Opens or begins the journal at `path`, and checks every record; only `toRead` nothing is written, and
   * there must be one.
   * @throws JournalError if it belongs to something else
   */
  constructor(
    readonly path: string,
    identity: Identity,
    toRead = false,
  ) {
    this.file = openSync(path, toRead ? 'r' : existsSync(path) ? 'r+' : 'wx+');
    const { size } = fstatSync(this.file),
      mark = defined(this.bytes(0, Math.min(size, MARK.length), size));
    const isOurs = mark.equals(MARK.subarray(0, mark.length));
    let end = mark.length;
    /** What the record behind the last whole one holds, if that is whole too; then `end` is behind it. */
    const next = (): unknown => {
      const record = this.record(end, size);
      end += record?.bytes ?? 0;
      return record?.content;
    };
    const first = isOurs ? next() : undefined,
      seen = isIdentity(first) ? first : undefined;
    const changed =
      !isOurs || first !== seen
        ? ['it is no journal of this version']
        : seen === undefined
          ? []
          : differences(seen, identity);
    if (changed.length > 0) {
      this.close();
      throw new JournalError(path, changed);
    }
    for (let at = end, record = next(); isRecord(record); at = end, record = next())
      this.places.set(record[0], { at, bytes: end - at });
    if (toRead) return;
    if (end < size) ftruncateSync(this.file, end);
    if (seen !== undefined) return;
    // New, or cut off in its first record.
    this.write(MARK, 0);
    this.append(identity);
  }

  /** What was found or added, read anew each time; undefined also where it is no longer as it was written. */
  get(key: string): Value | undefined {
    const place = this.places.get(key);
    if (place === undefined) return undefined;
    const record = this.record(place.at, place.at + place.bytes)?.content as [string, Value] | undefined;
    return record?.[0] === key ? record[1] : undefined;
  }

  has(key: string): boolean {
    return this.places.has(key);
  }

  /** Replications in it, those added too. */
  get size(): number {
    return this.places.size - (this.places.has(REPORT) ? 1 : 0);
  }

  /** A report of these results is about to take its name; `sum`: their fingerprint. */
  seal(sum: string): void {
    this.places.set(REPORT, this.append([REPORT, sum]));
  }

  /** The last such sum. */
  get sealed(): unknown {
    return this.get(REPORT);
  }

  add(key: string, value: Value): void {
    this.places.set(key, this.append([key, value]));
  }

  close(): void {
    closeSync(this.file);
  }

  private append(record: unknown): Place {
    const body = serialize(record),
      head = Buffer.alloc(HEAD_BYTES);
    head.writeUInt32LE(body.length);
    digestOf(body).copy(head, 4);
    // Behind what a twin may have added meanwhile.
    return this.write(Buffer.concat([head, body]), fstatSync(this.file).size);
  }

  private write(bytes: Buffer, at: number): Place {
    // A disk that is nearly full takes a part, and says so only of the rest.
    for (let written = 0; written < bytes.length; )
      written += writeSync(this.file, bytes, written, bytes.length - written, at + written);
    return { at, bytes: bytes.length };
  }

  /** The record that begins at a byte, if it is whole and ends before `end`. */
  private record(at: number, end: number): { readonly content: unknown; readonly bytes: number } | undefined {
    const head = this.bytes(at, HEAD_BYTES, end),
      body = head && this.bytes(at + HEAD_BYTES, head.readUInt32LE(), end);
    if (head === undefined || body === undefined || !digestOf(body).equals(head.subarray(4)))
      return undefined;
    const content = contentOf(body);
    return content === undefined ? undefined : { content, bytes: HEAD_BYTES + body.length };
  }

  private bytes(from: number, length: number, end: number): Buffer | undefined {
    if (from + length > end) return undefined;
    const bytes = Buffer.alloc(length);
    return readSync(this.file, bytes, 0, length, from) === length ? bytes : undefined;
  }
}

const isIdentity = (content: unknown): content is Identity =>
  typeof content === 'object' &&
  content !== null &&
  Object.values(content).every((each) => typeof each === 'string');

/** A key with its value. */
const isRecord = (content: unknown): content is [string, unknown] =>
  Array.isArray(content) && content.length === 2 && typeof content[0] === 'string';

/** Undefined for what is not of our writing, though its digest is right. */
function contentOf(body: Buffer): unknown {
  try {
    return deserialize(body) as unknown;
  } catch {
    return undefined;
  }
}

const digestOf = (body: Buffer): Buffer => createHash('sha256').update(body).digest().subarray(0, 16);

const OTHER_BITS =
  ' (a machine that comes to other last digits: use a version of Node that docs/platforms.md names)';

/** What of `wanted` is not as it was `seen`, in words. */
export function differences(seen: Identity, wanted: Identity): string[] {
  const names = [...new Set([...Object.keys(wanted), ...Object.keys(seen)])];
  return names
    .filter((name) => seen[name] !== wanted[name])
    .map(
      (name) =>
        `${name} was ${seen[name] ?? 'not there'}, now it is ${wanted[name] ?? 'not there'}` +
        (name === STANDARD_RUN ? OTHER_BITS : ''),
    );
}
