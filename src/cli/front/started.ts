import { setTimeout } from 'node:timers/promises';
import { signalGroup } from '../../study/run/workers/process-group.js';

/** Milliseconds: for processes to end when they are asked to, and between two looks at them. */
const PATIENCE = 1500,
  BETWEEN_LOOKS = 20;

/** Processes that the work has started, each with a group of its own: whatever ends this one ends them. */
export class Started {
  private readonly pids = new Set<number>();

  constructor() {
    process.on('exit', () => {
      for (const pid of this.pids) signalGroup(pid, 'SIGKILL');
    });
  }

  hear({ pid, isThere }: { readonly pid: number; readonly isThere: boolean }): void {
    if (isThere) this.pids.add(pid);
    else this.pids.delete(pid);
  }

  /** Asks them to end; resolves when they are gone, or will not go. */
  async end(): Promise<void> {
    for (const pid of this.pids) signalGroup(pid, 'SIGTERM');
    for (let waited = 0; this.pids.size > 0 && waited < PATIENCE; waited += BETWEEN_LOOKS)
      await setTimeout(BETWEEN_LOOKS);
  }
}
