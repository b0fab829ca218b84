import { stationary } from './exact-line.js';

/** A small Markov chain: whole numbers that say how things stand, and what may come next at which rate. */
export type State = readonly number[];
type Next = (state: State) => readonly (readonly [to: State, rate: number])[];

/**
 * Mean values of a chain in the long run. No chance in it.
 * @param settle does at once, in a state that something has come to, all that follows from it
 */
export function chain(
  start: State,
  next: Next,
  settle: (state: number[]) => void,
): (value: (state: State) => number) => number {
  const index = new Map<string, number>(),
    states: State[] = [],
    moves: { from: number; to: number; rate: number }[] = [];
  const stateOf = (come: State): number => {
    const state = [...come];
    settle(state);
    const key = state.join(),
      known = index.get(key);
    if (known !== undefined) return known;
    index.set(key, states.length);
    return states.push(state) - 1;
  };
  stateOf(start);
  for (let s = 0; s < states.length; s++)
    for (const [to, rate] of next(states[s])) moves.push({ from: s, to: stateOf(to), rate });
  const share = stationary(states.length, moves);
  return (value) => states.reduce((sum, state, s) => sum + share[s] * value(state), 0);
}

/** The state with one of its numbers set. */
const set = (state: State, at: number, value: number): number[] => state.with(at, value);

/** Rates an hour. One loom bench with a target of two, a dashboard in two steps, a saturated line. */
export interface KitRates {
  readonly loom: number;
  readonly step: number;
  readonly fit: number;
}

/**
 * A dashboard takes a loom at each of its two steps, and one is wanted in stock. With a full kit it begins
 * with both. State: looms in stock; the dashboard waits for looms 0, is at its first step 1, between them 2,
 * at the second 3, in stock 4; the line fits 1 or waits 0.
 */
export function twoSteps({ loom, step, fit }: KitRates, fullKit: boolean) {
  const mean = chain(
    [0, 0, 0],
    ([looms, dash, line]) => {
      const state = [looms, dash, line];
      return [
        ...(looms < 2 ? [[set(state, 0, looms + 1), loom] as const] : []),
        ...(dash === 1 || dash === 3 ? [[set(state, 1, dash + 1), step] as const] : []),
        ...(line === 1 ? [[set(state, 2, 0), fit] as const] : []),
      ];
    },
    (state) => {
      const [first, second] = fullKit ? [2, 0] : [1, 1];
      for (;;) {
        if (state[1] === 4 && state[2] === 0) [state[1], state[2]] = [0, 1];
        else if (state[1] === 0 && state[0] >= first) [state[0], state[1]] = [state[0] - first, 1];
        else if (state[1] === 2 && state[0] >= second) [state[0], state[1]] = [state[0] - second, 3];
        else return;
      }
    },
  );
  return {
    throughput: fit * mean(([, , line]) => line),
    lineShort: mean(([, , line]) => 1 - line),
    /** At the bench of the second step: it waits there for a loom. */
    secondShort: mean(([, dash]) => Number(dash === 2)),
    firstWorks: mean(([, dash]) => Number(dash === 1)),
  };
}

/**
 * One bench builds looms and dashboards of two looms each, all in one step, with a full kit. A kit is taken
 * only from a full stock, so the bench goes round: dashboard 1, loom 2, loom 3, nothing to do 0. Then: a
 * dashboard in stock or not; the line fits 1 or waits 0.
 */
export function oneBench({ loom, step, fit }: KitRates) {
  const mean = chain(
    [2, 0, 0],
    ([bench, stock, line]) => [
      ...(bench === 1 ? [[[2, 1, line], step] as const] : []),
      ...(bench > 1 ? [[[(bench + 1) % 4, stock, line], loom] as const] : []),
      ...(line === 1 ? [[[bench, stock, 0], fit] as const] : []),
    ],
    (state) => {
      if (state[1] === 1 && state[2] === 0) [state[1], state[2]] = [0, 1];
      if (state[0] === 0 && state[1] === 0) state[0] = 1;
    },
  );
  return {
    throughput: fit * mean(([, , line]) => line),
    lineShort: mean(([, , line]) => 1 - line),
    benchIdle: mean(([bench]) => Number(bench === 0)),
  };
}

export interface BayRates {
  readonly come: number;
  readonly bay: number;
  readonly loom: number;
  /** Of units that take a loom at the bay. */
  readonly red: number;
}

/**
 * Red units wait for their loom in the one space ahead of the bay, or blocked behind it, and white ones pass.
 * State: the place that units come from is at work 0, blocked by a red unit 1, by a white one 2; the space is
 * empty 0, red 1, white 2; the bay works 1; a loom is there 1.
 */
export function passingBay({ come, bay, loom, red }: BayRates) {
  const mean = chain(
    [0, 0, 0, 0],
    ([from, space, works, looms]) => [
      ...(from === 0 ? [[[1, space, works, looms], come * red] as const] : []),
      ...(from === 0 ? [[[2, space, works, looms], come * (1 - red)] as const] : []),
      ...(works === 1 ? [[[from, space, 0, looms], bay] as const] : []),
      ...(looms === 0 ? [[[from, space, works, 1], loom] as const] : []),
    ],
    (state) => {
      // The space goes ahead of the place behind it.
      for (const spot of [1, 0]) {
        if (state[2] === 1 || state[spot] === 0 || (state[spot] === 1 && state[3] === 0)) continue;
        if (state[spot] === 1) state[3] = 0;
        state[spot] = 0;
        state[2] = 1;
      }
      if (state[1] === 0) [state[0], state[1]] = [0, state[0]];
    },
  );
  return {
    throughput: bay * mean(([, , works]) => works),
    short: mean(([from, space, works]) => Number(works === 0 && (from > 0 || space > 0))),
    starved: mean(([from, space, works]) => Number(works === 0 && from === 0 && space === 0)),
  };
}
