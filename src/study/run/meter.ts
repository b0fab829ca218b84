import type { Tell } from '../../flow/share-done.js';

/** Replications under way at one time, with room: those of 256 threads. */
const SLOTS = 2048;

/**
 * How far the replications under way are, in memory that all threads share: whoever shows it need not wait
 * for a thread that is busy with one. A slot belongs to one replication at a time.
 */
export class Meter {
  private readonly shares: Float64Array;
  private readonly free: number[] = [];
  private taken = 0;

  constructor(readonly shared = new SharedArrayBuffer(SLOTS * Float64Array.BYTES_PER_ELEMENT)) {
    this.shares = new Float64Array(shared);
  }

  /** A slot for a replication that begins. */
  take(): number {
    return this.free.pop() ?? this.taken++;
  }

  /** It has ended. */
  give(slot: number | undefined): void {
    if (slot === undefined) return;
    this.shares[slot] = 0;
    this.free.push(slot);
  }

  /** What puts the share done into a slot; a slot that there is no room for is not shown. */
  teller(slot: number | undefined): Tell | undefined {
    const { shares } = this;
    return slot === undefined
      ? undefined
      : (share) => {
          shares[slot] = share;
        };
  }

  /** Replications under way, as far as they are done: 1.2 where one is at 0.7 and one at 0.5. */
  get inside(): number {
    let sum = 0;
    for (const share of this.shares) sum += share;
    return sum;
  }
}
