/**
 * A crew that makes `day` teams for twelve hours and `night` teams for the other twelve; units come at `rate`
 * an hour and keep a team for an exponential time of mean `stay` hours. Means over the day of the periodic solution of
 * Kolmogorov's forward equations (Kolmogorov 1931; from memory), by Runge-Kutta steps of the fourth order.
 */
export interface TwoShifts {
  readonly day: number;
  readonly night: number;
  readonly rate: number;
  readonly stay: number;
}
export interface TwoShiftMeans {
  /** Units without a team; teams with a unit; those of them with people. */
  readonly waiting: number;
  readonly held: number;
  readonly staffed: number;
}

/** Units waiting, teams claimed by day, by night; where teams are handed over all count as claimed by day. */
type State = readonly [waiting: number, byDay: number, byNight: number];
interface Hours {
  readonly claims: (state: State) => State;
  readonly staffed: (state: State) => number;
  readonly done: (state: State) => State;
}

/** Most units that wait: more are as good as never there at the rates of the checks. */
const MOST = 60,
  STEP = 1 / 20,
  DAYS = 40;

/** `hand over: next shift`: a shift of fewer teams leaves those claimed last without people. */
export function handedOver({ day, night, ...load }: TwoShifts): TwoShiftMeans {
  const hours = (teams: number): Hours => ({
    claims: ([waiting, held]) => {
      const more = Math.max(0, Math.min(waiting, teams - held));
      return [waiting - more, held + more, 0];
    },
    staffed: ([, held]) => Math.min(held, teams),
    done: ([waiting, held]) => [waiting, held - 1, 0],
  });
  return periodic([hours(day), hours(night)], load, [Math.max(day, night), 0]);
}

/** `hand over: wait`: each shift has teams of its own, which stand in the other one. */
export function ofTheirShift({ day, night, ...load }: TwoShifts): TwoShiftMeans {
  const byDay: Hours = {
    claims: ([waiting, held, other]) => {
      const more = Math.min(waiting, day - held);
      return [waiting - more, held + more, other];
    },
    staffed: ([, held]) => held,
    done: ([waiting, held, other]) => [waiting, held - 1, other],
  };
  const byNight: Hours = {
    claims: ([waiting, other, held]) => {
      const more = Math.min(waiting, night - held);
      return [waiting - more, other, held + more];
    },
    staffed: ([, , held]) => held,
    done: ([waiting, other, held]) => [waiting, other, held - 1],
  };
  return periodic([byDay, byNight], load, [day, night]);
}

function periodic(
  shifts: readonly Hours[],
  { rate, stay }: Pick<TwoShifts, 'rate' | 'stay'>,
  [first, second]: [number, number],
): TwoShiftMeans {
  const states: State[] = [];
  for (let w = 0; w <= MOST; w++)
    for (let d = 0; d <= first; d++) for (let n = 0; n <= second; n++) states.push([w, d, n]);
  const at = ([w, d, n]: State): number => (w * (first + 1) + d) * (second + 1) + n;
  const tables = shifts.map(({ claims, staffed, done }) => ({
    begin: states.map((state) => at(claims(state))),
    staffed: states.map(staffed),
    comes: states.map(([w, d, n]) => (w === MOST ? at([w, d, n]) : at(claims([w + 1, d, n])))),
    ends: states.map((state) => (staffed(state) > 0 ? at(claims(done(state))) : at(state))),
  }));
  let chances: number[] = states.map((_, i) => (i === 0 ? 1 : 0));
  const sums = { waiting: 0, held: 0, staffed: 0 };
  for (let day = 0; day < DAYS; day++)
    for (const { begin, staffed, comes, ends } of tables) {
      const begun = new Array<number>(states.length).fill(0);
      for (const [i, p] of chances.entries()) begun[begin[i]] += p;
      chances = begun;
      const slope = (of: readonly number[]): number[] => {
        const change = new Array<number>(of.length).fill(0);
        for (const [i, p] of of.entries()) {
          change[i] -= (rate + staffed[i] / stay) * p;
          change[comes[i]] += rate * p;
          change[ends[i]] += (staffed[i] / stay) * p;
        }
        return change;
      };
      const along = (k: readonly number[], h: number): number[] => chances.map((p, i) => p + h * k[i]);
      const look = (weight: number): void => {
        if (day < DAYS - 1) return;
        for (const [i, p] of chances.entries()) {
          sums.waiting += weight * p * states[i][0];
          sums.held += weight * p * (states[i][1] + states[i][2]);
          sums.staffed += weight * p * staffed[i];
        }
      };
      for (let step = 0; step < 12 / STEP; step++) {
        look(STEP / 48);
        const a = slope(chances),
          b = slope(along(a, STEP / 2)),
          c = slope(along(b, STEP / 2)),
          d = slope(along(c, STEP));
        chances = chances.map((p, i) => p + (STEP / 6) * (a[i] + 2 * b[i] + 2 * c[i] + d[i]));
        look(STEP / 48);
      }
    }
  return sums;
}
