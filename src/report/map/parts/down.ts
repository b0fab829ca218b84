import type { Drawn, Group } from '../shapes.js';
import type { Arc } from '../signs/backs.js';
import type { Section, World } from '../world.js';
import { balanced } from './breaks.js';
import { crossing } from './crossing.js';
import { lanePiece, plantPiece } from './piece-down.js';
import { columnOf, GUTTER, type Page, piecesOf, type Row, rowsOf } from './rows-down.js';

/** The strip down the page, in as many columns as the form has, from `top` on. */
export function down(world: World, sections: readonly Section[], arcs: readonly Arc[], top: number): Drawn {
  const page: Page = { world, sections, arcs },
    rows = rowsOf(sections),
    starts = columnStarts(page, rows),
    groups: Group[] = [];
  let height = 0;
  starts.forEach((start, i) => {
    const own = rows.slice(start, starts[i + 1]),
      column = columnOf(world, arcs, own),
      x = world.form.margin + i * (column.inner + GUTTER);
    let y = top;
    for (const piece of piecesOf(world, column, sections, arcs, own)) {
      const drawn = (piece.rows[0]?.row.kind === 'lane' ? lanePiece : plantPiece)(page, column, piece, x, y);
      groups.push(...drawn.groups);
      y += drawn.height;
    }
    height = Math.max(height, y - top);
  });
  return { groups, height };
}

/**
 * Where columns begin. Labels are as wide as their column leaves them, so heights are known only of columns
 * that are cut: they are cut again by these, and the shortest page is taken.
 */
function columnStarts(page: Page, rows: readonly Row[]): number[] {
  const { world, sections, arcs } = page,
    count = Math.max(1, world.form.columns),
    costs = costsOf(page, rows);
  let starts = [0],
    best = { starts, height: Infinity };
  for (let round = 0; round < ROUNDS; round++) {
    const heights = starts.map((start, i) => {
        const own = rows.slice(start, starts[i + 1]);
        return piecesOf(world, columnOf(world, arcs, own), sections, arcs, own).flatMap((piece) =>
          piece.rows.map(({ height }) => height),
        );
      }),
      height = Math.max(...heights.map((each) => each.reduce((sum, one) => sum + one, 0)));
    if (starts.length === count && height < best.height) best = { starts, height };
    starts = balanced(heights.flat(), costs, count);
  }
  return best.height < Infinity ? best.starts : starts;
}
const ROUNDS = 5;

/** Of a cut ahead of each row. A head stays with what follows it. */
const costsOf = ({ world, arcs }: Page, rows: readonly Row[]): number[] =>
  rows.map((row, i) => {
    if (row.kind === 'head') return 0;
    if (rows[i - 1]?.kind === 'head') return Infinity;
    return row.kind === 'lane' ? 0.2 : crossing(world, arcs, row.cell);
  });
