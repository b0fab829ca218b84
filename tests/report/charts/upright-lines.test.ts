import { describe, expect, it } from 'vitest';
import { nameSpots, topWithNames } from '../../../src/report/charts/upright-lines.js';

const LEFT = 100,
  RIGHT = 900;
interface Line {
  readonly at: number;
  readonly width: number;
}

/** Lines that run through a name: every line begins at the row of its own name and ends at the axis. */
function crossed(lines: readonly Line[]): string[] {
  const spots = nameSpots(lines, LEFT, RIGHT);
  return spots.flatMap((name, i) =>
    lines.flatMap(({ at }, j) =>
      spots[j].row <= name.row && at > name.x - 3 && at < name.x + lines[i].width + 3
        ? [`line ${j} through name ${i}`]
        : [],
    ),
  );
}

describe('names of upright lines', () => {
  it.each<[string, Line[]]>([
    [
      'far apart',
      [
        { at: 200, width: 80 },
        { at: 500, width: 80 },
        { at: 800, width: 80 },
      ],
    ],
    [
      'close together at the right',
      [
        { at: 300, width: 80 },
        { at: 850, width: 250 },
        { at: 852, width: 250 },
      ],
    ],
    [
      'close together at the left',
      [
        { at: 105, width: 80 },
        { at: 106, width: 250 },
        { at: 106, width: 250 },
      ],
    ],
    [
      'at one place in the middle',
      [
        { at: 500, width: 300 },
        { at: 500, width: 300 },
      ],
    ],
    [
      'at the edges',
      [
        { at: LEFT, width: 200 },
        { at: RIGHT, width: 200 },
      ],
    ],
  ])('have no line through them and stay in the plot: %s', (_, lines) => {
    expect(crossed(lines)).toEqual([]);
    const spots = nameSpots(lines, LEFT, RIGHT);
    spots.forEach(({ x }, i) => {
      expect(x).toBeGreaterThanOrEqual(LEFT);
      expect(x + lines[i].width).toBeLessThanOrEqual(RIGHT);
    });
    expect(new Set(spots.map(({ row }) => row)).size).toBe(lines.length);
  });

  it('stay in the plot even where a line cannot be spared', () => {
    const wide = nameSpots([{ at: 500, width: 700 }], LEFT, RIGHT);
    expect(wide).toMatchObject([{ x: 200, row: 0 }]);
  });

  it('stand above the highest value: three rows of 20 pixels in a plot of 400', () => {
    expect(topWithNames(340, 3, 460)).toBeCloseTo(400, 9);
  });
});
