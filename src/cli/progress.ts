import type { ToCome } from '../study/asked.js';
import { say } from './output.js';
import { atPace, howMany, Pace, timeLeft } from './pace.js';

/** How far a long command has come. */
export interface Progress {
  /** A new stage begins. */
  readonly stage: (text: string) => void;
  /** Replications done; only while they run. */
  readonly replications: (done: number, of: number) => void;
  /** How many there will be in all, as far as is known; told again whenever more is. */
  readonly forecast: (toCome: ToCome) => void;
  /** The replications have ended, or were given up. */
  readonly stop: () => void;
}

const SILENT: Progress = {
  stage: () => undefined,
  replications: () => undefined,
  forecast: () => undefined,
  stop: () => undefined,
};

/** Seconds: where there is no bar a line is said so often; what takes longer than LONG is told before. */
const BETWEEN_LINES = 30,
  LONG = 30;
/** The first replications are slower than the others: it takes more to tell how long all take. */
const FEW = 20;

/**
 * On a terminal a bar, elsewhere one line a stage and one every half minute, with `quiet` nothing. Before
 * what takes long it says how long, by the pace of the replications up to then. All of it on stderr.
 * @param now a clock in seconds
 */
export async function progressOf(
  quiet: boolean,
  now: () => number = () => performance.now() / 1000,
): Promise<Progress> {
  if (quiet) return SILENT;
  // A dumb terminal cannot draw a line over again.
  const shown = process.stderr.isTTY && process.env['TERM'] !== 'dumb' ? await bar() : lines(now),
    pace = new Pace();
  let foreseen: ToCome | undefined,
    done = 0,
    isTold = false;
  /** With `of` planned; nothing is known beyond that where nothing was foreseen. */
  const inAll = (of: number): ToCome => ({
    least: Math.max(of, foreseen?.least ?? 0),
    most: foreseen?.most === null ? null : Math.max(of, foreseen?.most ?? 0),
  });
  const soFar = (toCome: ToCome, of: number): string => {
    const { perSecond } = pace;
    // Planned is only what comes next.
    if (foreseen?.most === null && foreseen.least <= of) return `${done} replications so far`;
    const left = perSecond === undefined ? '' : `, ${timeLeft(toCome, done, perSecond)} left`;
    return `${done} of ${howMany(toCome)} replications${left}`;
  };
  const tellLong = (): void => {
    const { perSecond } = pace;
    if (isTold || foreseen === undefined || perSecond === undefined || done < FEW) return;
    const { least, most } = foreseen;
    if (((most ?? least) - done) / perSecond <= LONG) return;
    isTold = true;
    shown.say(
      `${howMany(foreseen)} replications in all, ${atPace(perSecond)}: ` +
        timeLeft(foreseen, done, perSecond),
    );
  };
  return {
    stage: (text) => {
      pace.pause();
      shown.say(text);
    },
    replications: (finished, of) => {
      done = finished;
      pace.mark(done, now());
      tellLong();
      shown.draw(done, inAll(of).least, soFar(inAll(of), of));
    },
    forecast: (toCome) => {
      foreseen = toCome;
      tellLong();
    },
    stop: shown.stop,
  };
}

/** How replications are shown while they run. */
interface Shown {
  readonly say: (line: string) => void;
  readonly draw: (done: number, of: number, text: string) => void;
  readonly stop: () => void;
}

function lines(now: () => number): Shown {
  let last = now();
  return {
    say: (line) => {
      last = now();
      say(line);
    },
    draw: (_, __, text) => {
      if (now() - last < BETWEEN_LINES) return;
      last = now();
      say(text);
    },
    stop: () => undefined,
  };
}

async function bar(): Promise<Shown> {
  const { SingleBar } = (await import('cli-progress')).default;
  const bar = new SingleBar({
    stream: process.stderr,
    format: '[{bar}] {text}',
    barCompleteChar: '=',
    barIncompleteChar: ' ',
    barsize: 30,
    hideCursor: null,
    clearOnComplete: true,
    emptyOnZero: true,
    gracefulExit: false,
  });
  const stop = (): void => {
    bar.stop();
  };
  return {
    say: (line) => {
      stop();
      say(line);
    },
    draw: (done, of, text) => {
      if (!bar.isActive) {
        bar.start(of, done, { text });
        return;
      }
      // Some studies choose replications as they go.
      bar.setTotal(of);
      bar.update(done, { text });
    },
    stop,
  };
}
