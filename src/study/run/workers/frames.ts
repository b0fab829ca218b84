import { createHash } from 'node:crypto';
import { Deserializer, Serializer } from 'node:v8';

/**
 * Messages between a study and a worker, over pipes that know only bytes. A frame is a byte that begins no
 * text, the length of the body (4 bytes, little-endian), the first 16 bytes of the body's SHA-256, the body,
 * and a line feed, at which whoever hands on whole lines lets go. The body is V8's own form of a value, the
 * one in which threads send theirs: nothing is rounded, and typed arrays, -0, NaN and infinities come as they
 * went. Both ends must write the same version of that form, see `greeting.ts`.
 */
const MARK = 0xff,
  HEAD_BYTES = 1 + 4 + 16,
  END = 0x0a;

/** What came is no frame, or was changed on its way. `got`: the bytes, as text. */
export class GarbledError extends Error {
  constructor(readonly got: string) {
    super(`expected a message, got ${JSON.stringify(got)}`);
  }
}

/** A message as it is sent. */
export function frameOf(message: unknown): Buffer {
  const serializer = new Serializer();
  serializer.writeHeader();
  serializer.writeValue(message);
  const body = serializer.releaseBuffer(),
    frame = Buffer.allocUnsafe(HEAD_BYTES + body.length + 1);
  frame[0] = MARK;
  frame.writeUInt32LE(body.length, 1);
  digestOf(body).copy(frame, 5);
  body.copy(frame, HEAD_BYTES);
  frame[frame.length - 1] = END;
  return frame;
}

/** Puts frames together from the pieces in which they come. */
export class FrameReader {
  private pieces: Buffer[] = [];
  private held = 0;
  /** Bytes to the end of what is read now: a head, then the whole frame. */
  private wanted = HEAD_BYTES;

  /**
   * The messages that end in this piece, in their order.
   * @throws GarbledError for anything else; what comes after it cannot be read either
   */
  *push(piece: Buffer): Generator {
    if (piece.length > 0) this.pieces.push(piece);
    this.held += piece.length;
    this.expect(this.held === 0 || this.pieces[0]?.[0] === MARK);
    while (this.held >= this.wanted) {
      const bytes = this.whole();
      this.expect(bytes[0] === MARK);
      if (this.wanted === HEAD_BYTES) {
        this.wanted = HEAD_BYTES + bytes.readUInt32LE(1) + 1;
        continue;
      }
      const body = bytes.subarray(HEAD_BYTES, this.wanted - 1);
      this.expect(bytes[this.wanted - 1] === END && digestOf(body).equals(bytes.subarray(5, HEAD_BYTES)));
      const rest = bytes.subarray(this.wanted);
      this.pieces = rest.length > 0 ? [rest] : [];
      this.held = rest.length;
      this.wanted = HEAD_BYTES;
      yield messageOf(body);
    }
  }

  private whole(): Buffer {
    const [first = Buffer.alloc(0)] = this.pieces,
      bytes = this.pieces.length > 1 ? Buffer.concat(this.pieces, this.held) : first;
    this.pieces = [bytes];
    return bytes;
  }

  private expect(isRight: boolean): void {
    if (!isRight) throw new GarbledError(this.whole().subarray(0, MOST_TOLD).toString());
  }
}

/** Bytes that are told of what is no frame. */
const MOST_TOLD = 80;

function messageOf(body: Buffer): unknown {
  const deserializer = new Deserializer(body);
  try {
    deserializer.readHeader();
    return deserializer.readValue() as unknown;
  } catch (error) {
    throw new GarbledError(String(error));
  }
}

const digestOf = (body: Buffer): Buffer => createHash('sha256').update(body).digest().subarray(0, 16);
