import { describe, expect, it } from 'vitest';
import { pageTables } from '../../../src/report/page/tables.js';
import { textOf } from '../../../src/report/sheets/cells.js';
import { compile } from '../../../src/scenario/compile.js';
import { minutes, scenario, site, station, step } from '../../scenario/compile-scenario.js';
import { observation } from '../made-observation.js';
import { summarise } from '../summarise.js';

/** Invented observations of two replications, summed up by hand. */
describe('supplies in the results', () => {
  const packs = scenario({
    sites: { yard: site({ line: station() }) },
    supplies: {
      packs: {
        site: 'yard',
        atStart: 2,
        order: { kind: 'reorder', level: 1, safetyStock: 0, lot: 4, leadTime: minutes(60) },
        late: undefined,
      },
    },
    route: [step('fit', 'line', { work: minutes(10), parts: { packs: 1 } })],
  });
  const seen = (stock: number, waits: number, waitMinutes: number) => (replication: number) =>
    observation(packs, replication, {
      stockMean: Float64Array.of(stock),
      stockOut: Float64Array.of(0.25),
      supplies: {
        onOrder: Float64Array.of(3),
        least: Float64Array.of(1),
        lots: Float64Array.of(20),
        lateLots: Float64Array.of(2),
        received: Float64Array.of(40),
        used: Float64Array.of(40),
        waits: Float64Array.of(waits),
        waitMinutes: Float64Array.of(waitMinutes),
      },
    });
  const results = summarise({
    scenario: packs,
    model: compile(packs),
    observations: [seen(2, 3, 720)(1), seen(4, 0, 0)(2)],
    file: 'packs.yaml',
    seed: 'hand',
    level: 0.95,
  });

  it('are means over replications; the wait is that of those who waited', () => {
    expect(results.supplies).toMatchObject([
      {
        name: 'packs',
        site: 'yard',
        by: 'reorder',
        stock: { mean: 3, n: 2 },
        out: { mean: 0.25 },
        least: { mean: 1 },
        onOrder: { mean: 3 },
        lots: { mean: 20 },
        lateLots: { mean: 2 },
        waits: { mean: 1.5 },
        // 720 min over 3 waits; the replication in which nobody waited has no mean.
        waitHours: { mean: 4, n: 1 },
      },
    ]);
  });

  it('have a table on the page', () => {
    const table = pageTables(results).find(({ id }) => id === 'supplies')!;
    expect(table.rows).toHaveLength(1);
    expect(table.rows[0]).toHaveLength(table.head.length);
    expect(table.rows[0].slice(0, 3)).toEqual(['packs', 'yard', 'reorder']);
    expect(textOf(table.rows[0][5])).toBe('25 (always)');
  });
});
