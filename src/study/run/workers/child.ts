import { type ChildProcess, spawn } from 'node:child_process';
import type { Readable } from 'node:stream';
import { FrameReader, frameOf, GarbledError } from './frames.js';
import { differencesOf, type Greeting, greetingIn, mayGreet } from './greeting.js';
import { signalGroup } from './process-group.js';
import type { Answer, Asked } from './serve.js';

/** What is heard of a worker. */
export interface Hears {
  /** It is a worker of this very program. */
  readonly greeted: () => void;
  readonly answered: (answer: Answer) => void;
  /** A line that it, or what started it, wrote to its standard error. */
  readonly wrote: (line: string) => void;
  /** Once, with the reason; it is ended, and nothing comes after it. */
  readonly failed: (why: string) => void;
}

/** Milliseconds: to end by itself, to end when it is asked to, and for what an ended one still has to say. */
const BY_ITSELF = 500,
  WHEN_ASKED = 2000,
  LAST_WORDS = 250;
const NOTHING = Buffer.alloc(0);
/** Letters of a line that are told. */
const LONGEST_LINE = 200;

/** A process that is a worker. It has a process group of its own: no Ctrl-C of a terminal reaches it. */
export class Child {
  /** Without streams where it could not be started. */
  private readonly process: ChildProcess;
  private readonly reader = new FrameReader();
  /** What came before the end of the greeting; null: it has greeted. */
  private begin: Buffer | null = NOTHING;
  private isOver = false;
  private readonly gone: Promise<void>;

  constructor(
    words: readonly string[],
    private readonly greeting: Greeting,
    private readonly hears: Hears,
  ) {
    const [command = '', ...rest] = words,
      isUnix = process.platform !== 'win32';
    this.process = spawn(command, rest, { stdio: 'pipe', detached: isUnix, windowsHide: true });
    const { stdin, stdout, stderr } = this.process;
    // Its end tells it as well.
    stdin?.on('error', () => undefined);
    stdout?.on('data', (piece: Buffer) => {
      this.hear(piece);
    });
    linesOf(stderr, (line) => {
      if (!this.isOver) hears.wrote(line);
    });
    this.gone = new Promise((resolve) => {
      const over = (why: string): void => {
        this.fail(why);
        resolve();
      };
      this.process.on('error', (error: NodeJS.ErrnoException) => {
        if (this.process.pid === undefined) over(`cannot be started: ${reasonOf(error)}`);
      });
      this.process.on('exit', (code, signal) => {
        const why = signal === null ? `ended with exit code ${code ?? 0}` : `was ended by ${signal}`;
        // Behind what it wrote, unless another process keeps that open.
        const late = setTimeout(over, LAST_WORDS, why);
        this.process.on('close', () => {
          clearTimeout(late);
          over(why);
        });
      });
    });
  }

  /** Undefined where it could not be started. */
  get pid(): number | undefined {
    return this.process.pid;
  }

  ask(question: Asked): void {
    this.process.stdin?.write(frameOf(question));
  }

  /** Nothing more is wanted of it: resolves when it is gone, which it is told by the end of its input. */
  async end(): Promise<void> {
    this.isOver = true;
    this.process.stdin?.destroy();
    const asked = setTimeout(() => {
        this.signal('SIGTERM');
      }, BY_ITSELF),
      killed = setTimeout(() => {
        this.signal('SIGKILL');
      }, BY_ITSELF + WHEN_ASKED);
    await this.gone;
    clearTimeout(asked);
    clearTimeout(killed);
    // What it may have started, and left.
    this.signal('SIGKILL');
    this.process.stdout?.destroy();
    this.process.stderr?.destroy();
  }

  private signal(signal: NodeJS.Signals): void {
    if (this.pid !== undefined) signalGroup(this.pid, signal);
  }

  private hear(piece: Buffer): void {
    if (this.isOver) return;
    try {
      const frames = this.begin === null ? piece : this.greet(Buffer.concat([this.begin, piece]));
      for (const answer of this.reader.push(frames)) this.hears.answered(answer as Answer);
    } catch (error) {
      if (!(error instanceof GarbledError)) throw error;
      this.fail(`wrote to its standard output what is no answer: ${JSON.stringify(error.got)}`);
    }
  }

  /** Hears the greeting and gives back what stands behind it. */
  private greet(begin: Buffer): Buffer {
    this.begin = begin;
    const end = begin.indexOf('\n'),
      line = begin.toString('utf8', 0, end < 0 ? begin.length : end);
    if (end < 0 && mayGreet(line)) return NOTHING;
    const why = this.otherwise(line);
    if (why !== undefined) {
      this.fail(why);
      return NOTHING;
    }
    this.begin = null;
    this.hears.greeted();
    return begin.subarray(end + 1);
  }

  /** Why this is no greeting of a worker of this very program. */
  private otherwise(line: string): string | undefined {
    const greeting = greetingIn(line);
    if (greeting === undefined)
      return `did not greet as a worker does, but wrote ${JSON.stringify(line.slice(0, LONGEST_LINE))}`;
    const other = differencesOf(greeting, this.greeting);
    return other.length === 0 ? undefined : `is of another program: ${other.join('; ')}`;
  }

  private fail(why: string): void {
    if (this.isOver) return;
    this.isOver = true;
    this.hears.failed(why);
  }
}

const reasonOf = ({ code, message }: NodeJS.ErrnoException): string =>
  code === 'ENOENT' ? 'there is no such command' : code === 'EACCES' ? 'no permission to run it' : message;

function linesOf(stream: Readable | null, tell: (line: string) => void): void {
  let begun = '';
  const say = (line: string): void => {
    if (line.trim() !== '') tell(line.trimEnd().slice(0, LONGEST_LINE));
  };
  stream?.setEncoding('utf8').on('data', (text: string) => {
    const lines = (begun + text).split(/\r\n|\r|\n/);
    begun = (lines.pop() ?? '').slice(0, LONGEST_LINE);
    for (const line of lines) say(line);
  });
  stream?.on('end', () => {
    say(begun);
  });
}
