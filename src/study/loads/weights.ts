import { wholePower } from '../../random/power.js';
import { sum } from '../statistics/sums.js';

/** Mean weight from one point of the time counted to another, `from` <= `to`, working days. */
export type Weights = (from: number, to: number) => number;

/** A day with less working time than this part of the time counted has the weight of its moment. */
const MOMENT = 1e-9;

/**
 * Weights by which a count over a stretch of time does not depend on where in their cycles loads stand when
 * it begins and ends. The weight of a moment is the chance that a window covers it which begins at an even
 * chance within the first box, then later by a part of the next box, and so on, and is as long as the stretch
 * without all boxes. A window that begins anywhere in a whole cycle with the same chance sees each part of
 * the cycle alike: what has that period adds just its mean rate. So weights rise from 0 over the first boxes,
 * are 1, and fall to 0 over the last.
 *
 * Renewal-reward theorem: the long-run rate is the mean reward of a cycle over its mean length (Ross 1996,
 * Stochastic Processes, 2nd ed., sec. 3.6; from memory). A cycle that is met at an even chance is stationary,
 * and counts of it are its rate times the length of the window (the same, sec. 3.9; from memory). The chance
 * that a sum of uniform parts is at most x: Feller 1971, An Introduction to Probability Theory II, sec. I.9,
 * by the same argument for parts that differ (from memory).
 * @param days length of the time counted
 * @param boxes lengths, working days, together less than `days`; none: all weights are 1
 */
export function weightsOver(days: number, boxes: readonly number[]): Weights {
  const flat = days - sum(boxes);
  // Sums of each choice of the boxes and the window, with the sign of its number.
  let terms = [{ at: 0, sign: 1 }];
  for (const box of [flat, ...boxes])
    terms = terms.flatMap(({ at, sign }) => [
      { at, sign },
      { at: at + box, sign: -sign },
    ]);
  const power = boxes.length + 1,
    scale = boxes.reduce((product, box, i) => product * box * (i + 1), 1);
  const early = (x: number, of: number): number => {
    let value = 0;
    for (const { at, sign } of terms) if (x > at) value += sign * wholePower(x - at, of);
    return value / scale;
  };
  // From the nearer end, where fewer terms cancel.
  const near = (x: number): number => early(Math.min(x, days - x), power - 1),
    upTo = (x: number): number =>
      x <= days / 2 ? early(x, power) / power : flat - early(days - x, power) / power;
  return (from, to) => (to - from > MOMENT * days ? (upTo(to) - upTo(from)) / (to - from) : near(from));
}

/** More boxes than this would cost digits; shorter cycles than theirs are evened out by them. */
const MOST_BOXES = 6;

/**
 * Boxes for loads that come in cycles: as many whole cycles of each as go into half of the time counted, the
 * shortest box made longer first. More cycles than one make up for cycles that are not quite alike, for loads
 * that follow each other without a common measure, and for counting by whole days. Where there is room a week
 * is one of the cycles, since not all days of a week ship alike. null where not even one cycle of each load
 * goes in.
 * @param days length of the time counted, and of a week, working days
 */
export function wholeCycles(
  cycles: readonly number[],
  { days, week }: { readonly days: number; readonly week: number },
): number[] | null {
  const fits = (each: readonly number[]): boolean => sum(each) <= days / 2 + 1e-9;
  const ofLoads = withoutParts(cycles).slice(0, MOST_BOXES),
    withWeek = withoutParts([...ofLoads, week]);
  if (cycles.length === 0) return [];
  if (!fits(ofLoads)) return null;
  const each = fits(withWeek) ? withWeek : ofLoads,
    boxes = [...each];
  for (let left = days / 2 - sum(boxes); ; ) {
    let shortest = -1;
    for (const [i, cycle] of each.entries())
      if (cycle <= left + 1e-9 && (shortest < 0 || boxes[i] < boxes[shortest])) shortest = i;
    if (shortest < 0) return boxes;
    boxes[shortest] += each[shortest];
    left -= each[shortest];
  }
}

/**
 * Boxes that even out loads around a moment: as few whole cycles of each as make a week, working days, and a
 * week, since a load may come a day sooner or later.
 */
export const cyclesToEvenOut = (cycles: readonly number[], week: number): number[] => [
  ...withoutParts(cycles)
    .slice(0, MOST_BOXES)
    .map((cycle) => cycle * Math.max(1, Math.ceil(week / cycle - 1e-9))),
  week,
];

/** Without cycles that go into another a whole number of times: a box for the longer one is one for them. */
function withoutParts(cycles: readonly number[]): number[] {
  const longestFirst = [...cycles].sort((a, b) => b - a),
    kept: number[] = [];
  for (const cycle of longestFirst) {
    const isPart = kept.some((longer) => Math.abs(longer / cycle - Math.round(longer / cycle)) < 1e-6);
    if (!isPart) kept.push(cycle);
  }
  return kept;
}
