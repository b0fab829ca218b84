import type { Readable, Writable } from 'node:stream';
import type { Question, Reply } from '../../worker.js';
import { Meter } from '../meter.js';
import { destroy } from '../pools.js';
import { threadPool } from '../threads.js';
import { FrameReader, frameOf } from './frames.js';
import { greetingLine, ownGreeting } from './greeting.js';

/** What a study asks of a worker; the model comes along where the worker may not know the variant. */
export type Asked = Omit<Question, 'meter' | 'slot'>;

/** What a worker says. */
export type Answer =
  | Reply
  /** The replication took its thread down: on another machine it may not. */
  | { readonly kind: 'died'; readonly message: string }
  /** It is alive, and so far with the replication under way. */
  | { readonly kind: 'beat'; readonly share: number };

/** Milliseconds. */
const BETWEEN_BEATS = 1000;

/**
 * A worker of a study elsewhere: greets, answers each question, and ends when the input does. Replications
 * are run in a thread, so that this one sees the end of the input at once, and is heard of all the time.
 */
export async function serve(input: Readable, output: Writable): Promise<void> {
  const pool = threadPool(1),
    meter = new Meter(),
    reader = new FrameReader();
  const over = new AbortController();
  const say = (answer: Answer): void => {
    if (!over.signal.aborted) output.write(frameOf(answer));
  };
  const answer = async (question: Asked): Promise<void> => {
    const slot = meter.take();
    try {
      say((await pool.run({ ...question, meter: meter.shared, slot })) as Reply);
    } catch (error) {
      say({ kind: 'died', message: error instanceof Error ? error.message : String(error) });
    } finally {
      meter.give(slot);
    }
  };
  output.on('error', () => {
    // Whoever asked is gone.
    over.abort();
    input.destroy();
  });
  output.write(greetingLine(ownGreeting()));
  const beats = setInterval(() => {
    say({ kind: 'beat', share: meter.inside });
  }, BETWEEN_BEATS);
  try {
    for await (const piece of input)
      for (const question of reader.push(piece as Buffer)) void answer(question as Asked);
  } catch (error) {
    if (!over.signal.aborted) throw error;
  } finally {
    over.abort();
    clearInterval(beats);
    await destroy(pool);
  }
}
