export type Point = readonly [number, number];
interface Corner {
  readonly at: Point;
  readonly value: number;
}

/**
 * Where a function of two numbers is greatest, by the simplex of Nelder & Mead 1965 (The Computer Journal
 * 7(4), 308-313; reflection 1, expansion 2, contraction and shrinking 1/2): from each start, then once more
 * about the best, since a simplex can fall flat. -Infinity is a value that it goes away from.
 * @param step of the first simplex, in both directions
 * @param within a climb ends where its corners' values differ by less than this
 * @param most steps of a climb
 */
export function highest(
  f: (at: Point) => number,
  starts: readonly Point[],
  { step = 1, within = 1e-10, most = 200 } = {},
): Corner {
  const best = starts
    .map((start) => climb(f, start, step, within, most))
    .reduce((a, b) => (b.value > a.value ? b : a));
  return climb(f, best.at, step / 8, within, most);
}

function climb(f: (at: Point) => number, start: Point, step: number, within: number, most: number): Corner {
  const corner = (x: number, y: number): Corner => ({ at: [x, y], value: f([x, y]) });
  let [best, middle, worst] = inOrder([
    corner(...start),
    corner(start[0] + step, start[1]),
    corner(start[0], start[1] + step),
  ]);
  for (let k = 0; k < most && best.value - worst.value > within; k++) {
    const x = (best.at[0] + middle.at[0]) / 2,
      y = (best.at[1] + middle.at[1]) / 2,
      along = (by: number): Corner => corner(x + by * (worst.at[0] - x), y + by * (worst.at[1] - y)),
      mirrored = along(-1);
    if (mirrored.value > best.value) {
      const further = along(-2);
      worst = further.value > mirrored.value ? further : mirrored;
    } else if (mirrored.value > middle.value) worst = mirrored;
    else {
      const nearer = along(mirrored.value > worst.value ? -0.5 : 0.5);
      if (nearer.value > Math.max(worst.value, mirrored.value)) worst = nearer;
      else {
        const [u, v] = best.at;
        middle = corner((middle.at[0] + u) / 2, (middle.at[1] + v) / 2);
        worst = corner((worst.at[0] + u) / 2, (worst.at[1] + v) / 2);
      }
    }
    [best, middle, worst] = inOrder([best, middle, worst]);
  }
  return best;
}

const inOrder = (corners: readonly [Corner, Corner, Corner]): [Corner, Corner, Corner] =>
  corners.toSorted((a, b) => b.value - a.value) as [Corner, Corner, Corner];
