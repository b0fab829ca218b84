import { stationary } from './exact-line.js';

/**
 * A booth that always has a unit, a lane out with one truck for one unit and a bank of one space, a bay, and
 * a lane home of the same kind for those sent back, who wait ahead of the booth and go first. All times are
 * exponential, hours.
 */
export interface TwoPlants {
  readonly paint: number;
  readonly out: number;
  readonly test: number;
  readonly home: number;
  /** Chance to be sent back. */
  readonly back: number;
}

/** Units on the lanes, one of them in the truck; `again` wait ahead of the booth. */
interface State {
  booth: 'works' | 'blocked';
  out: number;
  truck: 'drives' | 'waits';
  bay: 'empty' | 'works' | 'blocked';
  home: number;
  again: number;
}

/** A truck and its bank. */
const MOST = 2;

/**
 * Units an hour, units ahead of and in the booth and in the bank behind it, and the share of time in which the
 * truck out waits for room, by the Markov chain. No chance in it; blocked units keep the states few.
 */
export function twoPlants({ paint, out, test, home, back }: TwoPlants) {
  const index = new Map<string, number>(),
    states: State[] = [],
    moves: { from: number; to: number; rate: number }[] = [];
  const stateOf = (state: State): number => {
    const key = JSON.stringify(state),
      known = index.get(key);
    if (known !== undefined) return known;
    index.set(key, states.length);
    return states.push(state) - 1;
  };
  stateOf({ booth: 'works', out: 0, truck: 'drives', bay: 'empty', home: 0, again: 0 });
  for (let s = 0; s < states.length; s++) {
    const on = (hours: number, change: (state: State) => void): void => {
      const next = { ...states[s] };
      change(next);
      moves.push({ from: s, to: stateOf(next), rate: 1 / hours });
    };
    const now = states[s];
    if (now.booth === 'works') on(paint, paintedAt);
    if (now.out > 0 && now.truck === 'drives') on(out, arrivedAt);
    if (now.home > 0) on(home, homeAt);
    if (now.bay !== 'works') continue;
    on(test / (1 - back), leftBay);
    on(test / back, sentBack);
  }
  const share = stationary(states.length, moves);
  const meanOf = (value: (state: State) => number): number =>
    states.reduce((sum, state, s) => sum + share[s] * value(state), 0);
  return {
    throughput: meanOf(({ bay }) => (bay === 'works' ? (1 - back) / test : 0)),
    atBooth: meanOf(({ again, out: on }) => 1 + again + Math.max(0, on - 1)),
    truckWaits: meanOf(({ out: on, truck }) => Number(on > 0 && truck === 'waits')),
  };
}

function paintedAt(state: State): void {
  if (state.out === MOST) {
    state.booth = 'blocked';
    return;
  }
  if (state.out++ === 0) state.truck = 'drives';
  nextToBooth(state);
}

function nextToBooth(state: State): void {
  state.booth = 'works';
  // Else a new unit comes in.
  if (state.again > 0) state.again--;
}

function arrivedAt(state: State): void {
  if (state.bay === 'empty') unload(state);
  else state.truck = 'waits';
}

/** The next in the bank is loaded, and the booth has room. */
function unload(state: State): void {
  state.bay = 'works';
  state.truck = 'drives';
  state.out--;
  if (state.booth === 'works') return;
  state.out++;
  nextToBooth(state);
}

function leftBay(state: State): void {
  state.bay = 'empty';
  if (state.out > 0 && state.truck === 'waits') unload(state);
}

function sentBack(state: State): void {
  if (state.home === MOST) {
    state.bay = 'blocked';
    return;
  }
  state.home++;
  leftBay(state);
}

function homeAt(state: State): void {
  state.again++;
  state.home--;
  if (state.bay === 'blocked') sentBack(state);
}
