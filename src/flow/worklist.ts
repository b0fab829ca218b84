/** How many ids wait on all the lists that share it. */
export class Attention {
  waiting = 0;
}

/** Ids waiting to be looked at, last in first out, each at most once at a time. */
export class Worklist {
  private readonly ids: Int32Array;
  private readonly listed: Uint8Array;
  private count = 0;

  constructor(size: number, private readonly attention: Attention) {
    this.ids = new Int32Array(Math.max(1, size));
    this.listed = new Uint8Array(Math.max(1, size));
  }

  add(id: number): void {
    if (this.listed[id] === 1) return;
    this.listed[id] = 1;
    this.ids[this.count++] = id;
    this.attention.waiting++;
  }

  /** -1 when nothing waits. */
  take(): number {
    if (this.count === 0) return -1;
    const id = this.ids[--this.count];
    this.listed[id] = 0;
    this.attention.waiting--;
    return id;
  }
}
