import type { ToCome } from '../../study/asked.js';
import { atPace, howMany, inWords, Pace, timeLeft } from './pace.js';
import type { Progress } from './said.js';
import type { Shown } from './shown.js';

/** Progress, looked at every now and then as well: what is under way goes on between two messages. */
export interface Watched extends Progress {
  readonly tick: () => void;
  /** Seconds until the replications that are known to come are done; undefined where nothing tells it. */
  readonly secondsLeft: () => number | undefined;
}

/** Seconds: what takes longer is told before. */
const LONG = 30;
/** The first replications are slower than the others: it takes more to tell how long all take. */
const FEW = 20;
/** Seconds after which what is done is named, where nothing else is shown. */
const A_WHILE = 2;

/**
 * Stages, a bar or a line every half minute, and, before what takes long, how long, by the pace of the
 * replications up to then.
 * @param now a clock in seconds
 * @param inside how many replications the parts done of those under way make up
 */
export function progressOn(shown: Shown, now: () => number, inside: () => number = () => 0): Watched {
  const pace = new Pace();
  let foreseen: ToCome | undefined,
    /** Replications that have ended, how many are planned, and whether they run now. */
    ended = 0,
    planned = 0,
    isRunning = false,
    doing: { readonly text: string; readonly soFar: string; readonly since: number } | null = null,
    isTold = false;
  /** What is planned; nothing is known beyond that where nothing was foreseen. */
  const inAll = (): ToCome => ({
    least: Math.max(planned, foreseen?.least ?? 0),
    most: foreseen?.most === null ? null : Math.max(planned, foreseen?.most ?? 0),
  });
  const soFar = (done: number): string => {
    const toCome = inAll(),
      { perSecond } = pace,
      count = pace.isSlow ? done.toFixed(1) : Math.floor(done);
    // Planned is only what comes next.
    if (foreseen?.most === null && foreseen.least <= planned) return `${count} replications so far`;
    const left = perSecond === undefined ? '' : `, ${timeLeft(toCome, done, perSecond)} left`;
    return `${count} of ${howMany(toCome)} ${replications(toCome)}${left}`;
  };
  const tellLong = (done: number, toCome: ToCome | undefined): void => {
    const { perSecond } = pace;
    if (isTold || toCome === undefined || perSecond === undefined) return;
    if (done < FEW && !pace.isSlow) return;
    const { least, most } = toCome;
    if (((most ?? least) - done) / perSecond <= LONG) return;
    isTold = true;
    shown.say(
      `${howMany(toCome)} ${replications(toCome)} in all, ${atPace(perSecond)}: ` +
        timeLeft(toCome, done, perSecond),
    );
  };
  const doneNow = (): number => ended + (isRunning ? inside() : 0);
  const mark = (): void => {
    const done = doneNow();
    pace.mark(done, now());
    // What was foreseen may be long; what is planned next only where one alone takes long.
    tellLong(done, foreseen ?? (pace.isSlow ? inAll() : undefined));
    shown.draw(done, inAll().least, soFar(done));
  };
  return {
    stage: (text) => {
      pace.pause();
      isRunning = false;
      doing = { text, soFar: '', since: now() };
      shown.say(text);
    },
    busy: (text, soFar = '') => {
      doing = { text, soFar, since: doing?.text === text ? doing.since : now() };
    },
    replications: (done, of) => {
      [ended, planned, isRunning] = [done, of, true];
      mark();
    },
    forecast: (toCome) => {
      foreseen = toCome;
      tellLong(doneNow(), toCome);
    },
    stop: () => {
      isRunning = false;
      shown.stop();
    },
    tick: () => {
      if (isRunning) mark();
      else if (doing !== null && now() - doing.since > A_WHILE)
        shown.wait(`${doing.text}${doing.soFar}, ${secondsIn(now() - doing.since)}`);
    },
    secondsLeft: () => {
      const { perSecond } = pace;
      return !isRunning || perSecond === undefined ? undefined : (inAll().least - doneNow()) / perSecond;
    },
  };
}

const replications = ({ least, most }: ToCome): string =>
  least === 1 && most === 1 ? 'replication' : 'replications';

const secondsIn = (seconds: number): string => (seconds < 60 ? `${Math.floor(seconds)} s` : inWords(seconds));
