import type { Entry, RouteMap, SideLine, Spot, Stop, Trip } from '../../study/route/types.js';

/**
 * The routes in one order: the unit's way, each feeder ahead of the stop that takes its parts, own parts
 * behind the stop at which they come off. Side lines run beside the way on tracks 1, 2, ..
 */
export interface Strip {
  readonly cells: readonly Cell[];
  readonly sides: readonly Side[];
}

/** An entry of a line in its place. `side` is the index of its side line; -1: the unit's way. */
export interface Cell {
  readonly side: number;
  readonly entry: number;
  readonly track: number;
  readonly what: Entry;
}

/** A side line from cell to cell, both on the lines that it leaves and joins (own parts) or its own. */
export interface Side {
  readonly line: SideLine;
  readonly track: number;
  /** Cells of its own, in their order; a line without any is not drawn. */
  readonly cells: readonly number[];
  /** Cell at which it leaves; -1: it begins at its own first. */
  readonly leaves: number;
  /** Cell that it joins first; -1: none. */
  readonly joins: number;
}

interface Loose {
  readonly side: number;
  readonly entry: number;
  readonly what: Entry;
}

export function stripOf({ main, sides }: RouteMap): Strip {
  const loose: Loose[] = [],
    placed = new Set<number>(),
    nameOf = (side: number): string | null => sides[side]?.name ?? null;
  const isAt = (spot: Spot | null | undefined, side: number, entry: number): boolean =>
    spot?.side === nameOf(side) && spot.entry === entry;
  const place = (side: number, entries: readonly Entry[]): void => {
    entries.forEach((what, entry) => {
      placeThose((line) => line.kind === 'stock' && isAt(line.joins[0], side, entry));
      loose.push({ side, entry, what });
      placeThose((line) => line.kind === 'own' && isAt(line.leaves, side, entry));
    });
  };
  const placeThose = (is: (line: SideLine) => boolean): void => {
    sides.forEach((line, i) => {
      if (placed.has(i) || !is(line)) return;
      placed.add(i);
      place(i, line.entries);
    });
  };
  place(-1, main.entries);
  placeThose(() => true);
  const cellAt = (spot: Spot | null | undefined): number =>
    spot === null || spot === undefined ? -1 : loose.findIndex(({ side, entry }) => isAt(spot, side, entry));
  const ends = sides.map((line, i) => ({
      line,
      cells: [...loose.keys()].filter((cell) => loose[cell]?.side === i),
      leaves: cellAt(line.leaves),
      joins: cellAt(line.joins[0]),
    })),
    tracks = tracksOf(ends);
  return {
    cells: loose.map((each) => ({ ...each, track: tracks[each.side] ?? 0 })),
    sides: ends.map((each, i) => ({ ...each, track: tracks[i] ?? 1 })),
  };
}

type Ends = Omit<Side, 'track'>;

/**
 * A track for each side line, further out than that of the line it joins and free over all of its length.
 * Short ones are laid first, so that what runs long runs outside.
 */
function tracksOf(sides: readonly Ends[]): number[] {
  const tracks: number[] = sides.map(() => 0),
    spans = sides.map(({ cells, leaves, joins }, i): [number, number] => {
      const inner = sides.flatMap((each, j) => (isWithin(sides, j, i) ? each.cells : [])),
        all = [...cells, ...inner, ...[leaves, joins].filter((cell) => cell >= 0)];
      return [Math.min(...all), Math.max(...all)];
    });
  const parentOf = (i: number): number => hostOf(sides, i);
  const lay = (i: number): void => {
    const [first, last] = spans[i] ?? [0, 0],
      host = parentOf(i);
    let track = (host < 0 ? 0 : (tracks[host] ?? 0)) + 1;
    const isTaken = (): boolean =>
      sides.some((_, j) => {
        const [from, to] = spans[j] ?? [0, 0];
        return j !== i && tracks[j] === track && from <= last && to >= first;
      });
    while (isTaken()) track++;
    tracks[i] = track;
    byLength(sides.keys(), spans)
      .filter((j) => parentOf(j) === i && tracks[j] === 0)
      .forEach(lay);
  };
  byLength(sides.keys(), spans)
    .filter((i) => parentOf(i) < 0)
    .forEach(lay);
  return tracks;
}

const byLength = (sides: Iterable<number>, spans: readonly (readonly [number, number])[]): number[] => {
  const length = (i: number): number => (spans[i]?.[1] ?? 0) - (spans[i]?.[0] ?? 0);
  return [...sides].sort((a, b) => length(a) - length(b) || a - b);
};

/** The side line that takes the parts of another first; -1: the unit's way, or none. */
const hostOf = (sides: readonly Ends[], i: number): number => {
  const spot = sides[i]?.line.joins[0];
  return spot === undefined ? -1 : sides.findIndex(({ line }) => line.name === spot.side);
};

/** Whether side line `j` ends in side line `i`, by others or at once. */
function isWithin(sides: readonly Ends[], j: number, i: number): boolean {
  for (let host = hostOf(sides, j), left = sides.length; host >= 0 && left > 0; left--) {
    if (host === i) return true;
    host = hostOf(sides, host);
  }
  return false;
}

export const isStop = (what: Entry): what is Stop => what.kind === 'stop';
export const isTrip = (what: Entry): what is Trip => what.kind === 'trip';

/** Whether the side line of these parts joins at a cell, so that it need not be written there. */
export const joinsSpot = ({ sides }: Strip, part: string, cell: number): boolean =>
  sides.some(({ line, joins, cells }) => line.name === part && joins === cell && cells.length > 0);
