/** Minutes that something lasted: until it ended, or as long as it was watched. */
export interface Span {
  /** Above 0. */
  readonly minutes: number;
  /** False: still going on when the watch ended (censored on the right). */
  readonly ended: boolean;
}

/** One station or place, the time it was watched, and when it stood still; minutes from any one moment. */
export interface Watch {
  readonly from: number;
  readonly to: number;
  /** In any order. `to`: Infinity where it still stood at the end of the log. */
  readonly stops: readonly { readonly from: number; readonly to: number }[];
  /** True: the watch begins with a repair or a new machine, so the first time to failure is a whole one. */
  readonly fresh?: boolean;
}

/** Minutes that count between two moments: of the clock, of a calendar, or of operation. */
export type Between = (from: number, to: number) => number;

export const byTheClock: Between = (from, to) => to - from;

/** What a stop log tells of the time to failure and the time to repair. */
export interface Spans {
  /** From a repair to the next failure; the last may be cut by the end of the watch. */
  readonly up: readonly Span[];
  /** Repairs; the last may be cut. */
  readonly down: readonly Span[];
  /** Minutes up in all, those before the first failure included. */
  readonly running: number;
  /** Stops that began while it was watched. */
  readonly failures: number;
  /** Times to a first failure from an unknown beginning: in `running`, not in `up`. */
  readonly headless: number;
  /** Stops that overlap or touch another and were taken as one with it. */
  readonly joined: number;
  /** Stops that had begun before the watch: no repair time, no failure. */
  readonly before: number;
  /** Stops outside the watch, or that end before they begin. */
  readonly outside: number;
  /** Repairs and times to failure without a minute that counts: failures, but no times. */
  readonly empty: number;
}

/**
 * Spans of several watches in one: of places that are alike, or of one.
 * @param upMinutes how the time to failure counts, `operating time` or `calendar time`
 * @param downMinutes how repairs count: by the clock, or in the hours when repairs are worked on
 */
export function spansOf(
  watches: readonly Watch[],
  upMinutes: Between = byTheClock,
  downMinutes: Between = byTheClock,
): Spans {
  const up: Span[] = [],
    down: Span[] = [];
  let [running, failures, headless, joined, before, outside, empty] = [0, 0, 0, 0, 0, 0, 0];
  const push = (spans: Span[], minutes: number, ended: boolean): void => {
    if (minutes > 0) spans.push({ minutes, ended });
    else if (ended) empty++;
  };
  for (const watch of watches) {
    if (!(watch.to > watch.from))
      throw new RangeError(`stops: expected a watch that ends after ${watch.from}, got ${watch.to}`);
    const inside = watch.stops.filter(({ from, to }) => to >= from && to > watch.from && from < watch.to),
      stops = joinedStops(inside);
    outside += watch.stops.length - inside.length;
    joined += inside.length - stops.length;
    let [since, whole] = [watch.from, watch.fresh === true];
    for (const { from, to } of stops) {
      if (from < watch.from) before++;
      else {
        const minutes = upMinutes(since, from);
        running += minutes;
        failures++;
        if (whole) push(up, minutes, true);
        else headless++;
        push(down, downMinutes(from, Math.min(to, watch.to)), to <= watch.to);
      }
      [since, whole] = [to, true];
    }
    if (since < watch.to) {
      const minutes = upMinutes(since, watch.to);
      running += minutes;
      if (whole) push(up, minutes, false);
    }
  }
  return { up, down, running, failures, headless, joined, before, outside, empty };
}

/** In order of time; those that overlap or touch are one. */
function joinedStops(stops: Watch['stops']): { from: number; to: number }[] {
  const joined: { from: number; to: number }[] = [];
  for (const { from, to } of [...stops].sort((a, b) => a.from - b.from || a.to - b.to)) {
    const last = joined.at(-1);
    if (last !== undefined && from <= last.to) last.to = Math.max(last.to, to);
    else joined.push({ from, to });
  }
  return joined;
}
