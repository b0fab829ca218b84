import { ranOutOfMemory } from '../out-of-memory.js';
import { MOST_DEATHS, type Runner, type RunnerOptions } from '../runner.js';
import { ownGreeting } from './greeting.js';
import { type Job, runnerOf } from './jobs.js';
import { Seat } from './seat.js';
import { WorkersError } from './workers-error.js';

export interface ProcessesOptions {
  /** The words of each way to start a worker; the workers are shared out over them in turn. */
  readonly commands: readonly (readonly string[])[];
  readonly workers: number;
  /** Is told what goes wrong, and is made good. */
  readonly say: (line: string) => void;
  /** A process began, or is gone. */
  readonly onProcess?: (pid: number, isThere: boolean) => void;
  /** Seconds in which a worker at work must be heard. */
  readonly patience?: number;
}

/** Seconds: a worker at work beats each second; a machine may be very busy. */
const PATIENCE = 60,
  /** Without any worker, something is said of it. */
  UNTIL_SAID = 30;
/** Starts that fail before the first worker greets: the command is wrong. */
const MOST_STARTS = 3;
/** Lines told in all. */
const MOST_TOLD = 200;

/**
 * Workers that are processes, started by commands, wherever these start them. They are started when there is
 * work, and kept from one runner to the next. One that fails is replaced, and its replication run again:
 * since a replication is the same wherever it is run, no result hangs on who failed, nor on when that was
 * seen.
 */
export class Processes {
  private readonly seats: readonly Seat[];
  private readonly queue: Job[] = [];
  private readonly ticks: NodeJS.Timeout;
  private runners = 0;
  private told = 0;
  /** Those without a worker, though there is work. */
  private seconds = 0;
  private hasGreeted = false;
  private failedStarts = 0;
  private error: Error | undefined;

  constructor(private readonly options: ProcessesOptions) {
    const { commands, workers, patience = PATIENCE, onProcess = () => undefined } = options;
    const around = {
      greeting: ownGreeting(),
      patience,
      ready: () => {
        this.next();
      },
      failed: this.failed.bind(this),
      refused: this.refused.bind(this),
      wrote: ({ name }: Seat, line: string) => {
        this.say(`${name}: ${line}`);
      },
      onProcess,
    };
    this.seats = Array.from({ length: workers }, (_, i) => {
      const words = commands[i % commands.length] ?? [],
        where = commands.length > 1 ? ` (${words.slice(0, 2).join(' ')})` : '';
      return new Seat(`worker ${i + 1}${where}`, words, around);
    });
    this.ticks = setInterval(() => {
      this.tick();
    }, 1000);
  }

  /** Runs replications of one replicator. */
  readonly runner = (options: RunnerOptions): Runner =>
    runnerOf(++this.runners, options, (job) => {
      this.queue.push(job);
      this.next();
    });

  /** No process is left. */
  async close(): Promise<void> {
    clearInterval(this.ticks);
    this.stop(new Error('processes: expected to be asked before they were closed, got a question after'));
    await Promise.all(this.seats.map((seat) => seat.end()));
  }

  /** Gives out what waits, and starts workers for what is left of it. */
  private next(): void {
    const { queue, seats, error } = this;
    const wanted = queue.filter((job) => job.isWanted());
    queue.splice(0, queue.length, ...wanted);
    if (error !== undefined) {
      for (const job of wanted) job.reject(error);
      return;
    }
    this.hasGreeted ||= seats.some(({ state }) => state === 'free');
    for (const seat of seats)
      if (seat.state === 'free') {
        const job = queue.shift();
        if (job === undefined) return;
        seat.give(job);
      }
    const starting = seats.filter(({ state }) => state === 'starting').length,
      missing = Math.max(0, queue.length - starting);
    for (const seat of seats.filter(({ state }) => state === 'empty').slice(0, missing)) seat.start();
  }

  private failed(seat: Seat, why: string, job: Job | null): void {
    const isGivenUp = seat.state === 'given up';
    this.say(
      `${seat.name} ${why}${job === null ? '' : '; its replication is run again'}` +
        (isGivenUp ? `; it is given up after ${seat.failures} failures in a row` : ''),
    );
    if (job !== null) this.again(job, `the last one ${why}`, seat.said);
    if (!this.hasGreeted) this.failedStarts++;
    const isWrong = this.failedStarts >= MOST_STARTS && this.seats.every(({ state }) => state !== 'starting');
    if ((isWrong && !this.hasGreeted) || this.seats.every(({ state }) => state === 'given up'))
      this.stop(
        new WorkersError(
          `--through: expected workers that answer, got none: the last one ${why}; it was started by ` +
            seat.words.join(' '),
          seat.said,
        ),
      );
    else this.next();
  }

  private refused(job: Job, { kind, message }: { readonly kind: string; readonly message: string }): void {
    const error = new Error(message);
    // A fault of the engine would come again, and so would the want of memory.
    if (kind === 'fault' || ranOutOfMemory(error)) job.reject(error);
    else this.again(job, `the last one said: ${message}`, []);
  }

  /** Runs a replication again that was lost with its worker. */
  private again(job: Job, why: string, said: readonly string[]): void {
    if (++job.deaths < MOST_DEATHS) this.queue.unshift(job);
    else
      job.reject(
        new WorkersError(
          `expected workers to live through replication ${job.replication}, got ${MOST_DEATHS} in turn ` +
            `that did not: ${why}`,
          said,
        ),
      );
  }

  private stop(error: Error): void {
    this.error ??= error;
    this.next();
  }

  private tick(): void {
    for (const seat of this.seats) seat.tick();
    const isAny =
      this.queue.length === 0 || this.seats.some(({ state }) => state === 'free' || state === 'busy');
    this.seconds = isAny ? 0 : this.seconds + 1;
    if (this.seconds === UNTIL_SAID)
      this.say(`no worker has greeted in ${UNTIL_SAID} s; waiting, as a batch system may have no room yet`);
  }

  private say(line: string): void {
    if (++this.told <= MOST_TOLD)
      this.options.say(this.told < MOST_TOLD ? line : 'what is said of workers besides is left out');
  }
}
