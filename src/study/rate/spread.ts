import { nextUniform, STATE_WORDS, seedStream, streamName } from '../../random/streams.js';
import { canShip, isWithinArithmetic, type Shipped, settledAt, shippedIn } from '../held/evidence.js';
import { keepsUp, unitsOut, wholeUnits } from '../held/keep-up.js';
import { defined } from '../lists.js';
import { proportion } from '../statistics/proportion.js';
import { sum } from '../statistics/sums.js';
import type { Ran } from './line.js';

/** Between which rates the answers of other such studies lie, units a working day; null: below the lowest. */
export interface Spread {
  readonly share: number;
  readonly low: number | null;
  readonly high: number | null;
}

export interface Grid {
  readonly last: number;
  readonly perDay: (point: number) => number;
}

export interface AsJudged {
  readonly sure: number;
  readonly level: number;
  /** Replications of a rate at most. */
  readonly most: number;
  /** What arithmetic allows, units a working day. */
  readonly ceiling: number;
  readonly seed: string;
}

/** Times that the replications are drawn again; share of other studies that the spread is to hold. */
const TIMES = 500,
  SHARE = 0.9;

/** A rate that was run, as one drawing of its replications shows it. */
interface Drawn extends Pick<Records, 'perDay' | 'n'> {
  readonly share: number;
  readonly out: Shipped;
}

/**
 * How far chance moves the answer, by the bootstrap (Efron 1979, Ann. Stat. 7, 1-26): replications are drawn
 * again with replacement, the same at every rate, and each drawing is judged as the study was: a rate goes on
 * until it is settled, so as by as many replications as there may be, and of the higher rates by those that
 * were run longest. At rates that were not run, the share that keeps up is taken between those of the rates
 * beside it. What is told is where the answer of *another* study lies, which has chance of its own beside
 * that of this one: so distances from the answer are longer by sqrt(2). To whole steps, outwards.
 * @param answer point of the grid, -1: no rate holds
 */
export function spreadOf(ran: readonly Ran[], grid: Grid, answer: number, asked: AsJudged): Spread {
  const known = ran.map((each) => recordsOf(each)),
    state = new Int32Array(STATE_WORDS),
    answers: number[] = [];
  for (let time = 1; time <= TIMES; time++) {
    seedStream(state, 0, streamName(asked.seed, time, 'rate/spread'));
    const draws = Array.from({ length: Math.max(...known.map(({ n }) => n)) }, () => nextUniform(state, 0));
    answers.push(
      answerOf(
        known.map((each) => drawn(each, draws, asked.most)),
        grid,
        defined(ran[0]),
        asked,
      ),
    );
  }
  answers.sort((a, b) => a - b);
  const beyond = (1 - SHARE) / 2,
    at = (share: number): number => defined(answers[Math.round(share * (TIMES - 1))]),
    further = (point: number): number => answer + Math.SQRT2 * (point - answer),
    rate = (point: number): number | null => (point < 0 ? null : grid.perDay(Math.min(grid.last, point)));
  return {
    share: SHARE,
    low: rate(Math.floor(further(Math.min(answer, at(beyond))))),
    high: rate(Math.ceil(further(Math.max(answer, at(1 - beyond))))),
  };
}

interface Records {
  readonly perDay: number;
  readonly n: number;
  readonly keeps: readonly boolean[];
  readonly units: readonly number[];
  readonly whole: number;
}

function recordsOf({ perDay, readings, window }: Ran): Records {
  const { counting, units: asked } = window;
  return {
    perDay,
    n: readings.length,
    keeps: readings.map((each) => counting.isWhole && keepsUp(each, { asked, counting })),
    units: readings.map(unitsOut(window.model, counting)).filter(Number.isFinite),
    whole: wholeUnits(counting),
  };
}

function drawn({ perDay, n, keeps, units, whole }: Records, draws: readonly number[], most: number): Drawn {
  const mine = draws.slice(0, n),
    of = <Of>(values: readonly Of[]): Of[] =>
      values.length === 0 ? [] : mine.map((draw) => defined(values[Math.floor(draw * values.length)]));
  return {
    perDay,
    n,
    share: sum(of(keeps).map(Number)) / n,
    out: settledAt(shippedIn(of(units), whole), most),
  };
}

/** The last point of the grid before the first that does not hold; -1: none. */
function answerOf(
  drawings: readonly Drawn[],
  { last, perDay }: Grid,
  { window: { workingDays } }: Ran,
  { sure, level, ceiling, most }: AsJudged,
): number {
  const holds = (point: number): boolean => {
    const rate = perDay(point),
      above = drawings.filter((each) => each.perDay > rate),
      longest = Math.max(...above.map(({ n }) => n)),
      evidence = above.filter(({ n }) => n === longest).map(({ out }) => out);
    return (
      proportion(shareAt(drawings, rate) * most, most, level).low >= sure &&
      canShip(rate * workingDays, evidence, isWithinArithmetic(rate, ceiling)) === 'yes'
    );
  };
  // Taken to be monotone, as by the search.
  let low = -1,
    high = last + 1;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** The share that keeps up at a rate, in a straight line from the rate below to the one above it. */
function shareAt(drawings: readonly Drawn[], perDay: number): number {
  const below = drawings.findLast((each) => each.perDay <= perDay),
    above = drawings.find((each) => each.perDay >= perDay);
  if (below === undefined || above === undefined || below === above) return defined(below ?? above).share;
  const part = (perDay - below.perDay) / (above.perDay - below.perDay);
  return below.share + part * (above.share - below.share);
}
