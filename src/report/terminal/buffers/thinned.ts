/**
 * Points of a curve without those that lie on the line between their shown neighbours, to within `tolerance`:
 * every knee stays. The first, the last, and those that are `kept` stay too.
 * @param points in the order of x
 */
export function thinned<Point>(
  points: readonly Point[],
  at: (point: Point) => { readonly x: number; readonly y: number },
  tolerance: number,
  kept: (point: Point) => boolean = () => false,
): Point[] {
  const shown = new Set(points.filter((point, i) => i === 0 || i === points.length - 1 || kept(point)));
  for (;;) {
    const worst = furthest(points, shown, at);
    if (worst === null || worst.off <= tolerance) return points.filter((point) => shown.has(point));
    shown.add(worst.point);
  }
}

/** The point that is not shown and lies furthest from the line between its shown neighbours. */
function furthest<Point>(
  points: readonly Point[],
  shown: ReadonlySet<Point>,
  at: (point: Point) => { readonly x: number; readonly y: number },
): { readonly point: Point; readonly off: number } | null {
  const between = points.flatMap((point, i) => {
    if (shown.has(point)) return [];
    const before = points.slice(0, i).findLast((each) => shown.has(each)),
      after = points.slice(i + 1).find((each) => shown.has(each));
    if (before === undefined || after === undefined) return [];
    const [a, here, b] = [at(before), at(point), at(after)],
      line = a.y + ((b.y - a.y) * (here.x - a.x)) / (b.x - a.x);
    return [{ point, off: Math.abs(here.y - line) }];
  });
  return between.reduce<(typeof between)[number] | null>(
    (worst, each) => (each.off > (worst?.off ?? 0) ? each : worst),
    null,
  );
}
