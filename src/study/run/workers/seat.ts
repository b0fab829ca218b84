import { Child } from './child.js';
import type { Greeting } from './greeting.js';
import type { Job } from './jobs.js';
import type { Answer } from './serve.js';

/** What a seat has of its pool. */
export interface Around {
  readonly greeting: Greeting;
  /** Seconds in which a worker at work must be heard. */
  readonly patience: number;
  /** It may take a job, or be started. */
  readonly ready: () => void;
  /** A worker has failed, with the job that it had. */
  readonly failed: (seat: Seat, why: string, job: Job | null) => void;
  /** The engine's answer that is none; `died`: the thread did. */
  readonly refused: (job: Job, answer: Extract<Answer, { message: string }>) => void;
  readonly wrote: (seat: Seat, line: string) => void;
  /** A process began, or is gone. */
  readonly onProcess: (pid: number, isThere: boolean) => void;
}

/** Seconds until another is started, by how many failed in a row; behind the last a seat is given up. */
const WAITS = [0.5, 2, 8, 30];
/** Lines that are told of what one process writes to its standard error. */
const MOST_LINES = 20;

/** One of a study's workers: the process that it is now, replaced when it fails. */
export class Seat {
  state: 'empty' | 'starting' | 'free' | 'busy' | 'waiting' | 'given up' = 'empty';
  /** Those in a row, with no answer between. */
  failures = 0;
  /** What its last process said before it failed. */
  said: string[] = [];
  private child: Child | null = null;
  private readonly ended = new Set<Promise<void>>();
  private job: Job | null = null;
  /** Variants that this process was sent. */
  private readonly known = new Set<string>();
  private silent = 0;
  private wait: NodeJS.Timeout | undefined;

  constructor(
    readonly name: string,
    readonly words: readonly string[],
    private readonly around: Around,
  ) {}

  start(): void {
    const { greeting, ready, wrote, onProcess } = this.around;
    this.state = 'starting';
    this.known.clear();
    this.said = [];
    let lines = 0;
    const child = new Child(this.words, greeting, {
      greeted: () => {
        this.state = 'free';
        ready();
      },
      answered: (answer) => {
        this.hear(answer);
      },
      wrote: (line) => {
        this.said = [...this.said, line].slice(-MOST_LINES);
        if (++lines <= MOST_LINES)
          wrote(this, lines < MOST_LINES ? line : 'what it says besides is left out');
      },
      failed: (why) => {
        this.fail(why);
      },
    });
    this.child = child;
    if (child.pid !== undefined) onProcess(child.pid, true);
  }

  give(job: Job): void {
    this.state = 'busy';
    this.job = job;
    this.silent = 0;
    this.ask(job, !this.known.has(job.key));
  }

  /** Once a second, by a clock that stands still where this process does. */
  tick(): void {
    if (this.state !== 'busy' || ++this.silent <= this.around.patience) return;
    this.fail(`was not heard of for ${this.around.patience} s`);
  }

  /** It is started no more; resolves when its processes are gone. */
  async end(): Promise<void> {
    clearTimeout(this.wait);
    this.state = 'given up';
    this.leave();
    await Promise.all(this.ended);
  }

  private ask({ key, variant, seed, replication }: Job, isNew: boolean): void {
    this.known.add(key);
    const { model, closely } = variant;
    this.child?.ask({ key, seed, replication, ...(isNew ? { model, closely } : {}) });
  }

  private hear(answer: Answer): void {
    const { job } = this;
    this.silent = 0;
    if (job === null) return;
    if (answer.kind === 'beat') job.tell(answer.share);
    else if (answer.kind === 'unknown') this.ask(job, true);
    else {
      this.failures = 0;
      this.job = null;
      this.state = 'free';
      if (answer.kind === 'observation') job.resolve(answer.observation);
      else this.around.refused(job, answer);
      this.around.ready();
    }
  }

  private fail(why: string): void {
    const { job } = this,
      wait = WAITS[this.failures++];
    this.job = null;
    this.leave();
    this.state = wait === undefined ? 'given up' : 'waiting';
    if (wait !== undefined)
      this.wait = setTimeout(() => {
        this.state = 'empty';
        this.around.ready();
      }, 1000 * wait);
    this.around.failed(this, why, job);
  }

  private leave(): void {
    const { child } = this;
    if (child === null) return;
    this.child = null;
    const ended = child.end().then(() => {
      this.ended.delete(ended);
      if (child.pid !== undefined) this.around.onProcess(child.pid, false);
    });
    this.ended.add(ended);
  }
}
