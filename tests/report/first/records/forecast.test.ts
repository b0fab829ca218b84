import { beforeAll, describe, expect, it } from 'vitest';
import { linesOf } from '../../../../src/report/first/first.js';
import { forecastFirst } from '../../../../src/report/first/records/forecast.js';
import { forecastTable } from '../../../../src/report/terminal/records/forecast.js';
import type { ForecastResults, OrderAhead } from '../../../../src/study/forecast/forecast.js';
import { ahead } from '../../samples/records.js';

let due: ForecastResults, open: ForecastResults;
beforeAll(async () => {
  due = await ahead('30 h');
  open = await ahead('');
});

const order = (
  unit: string,
  late: number | null,
  daysLate: number | null = null,
  at: string | null = null,
): OrderAhead => ({
  ...{ unit, at, late, daysLate },
  due: late === null ? null : '2027-03-10',
  half: '2027-03-11',
  fourInFive: '2027-03-12',
});
/** Orders are made up: what is said of them must follow from them alone. */
const of = (...orders: readonly OrderAhead[]): ForecastResults => ({ ...due, replications: 10, orders });

describe('the first screen of forecast', () => {
  it('counts an order as likely late if it is late in more than half of the builds', () => {
    const answer = (...late: readonly number[]): string =>
      forecastFirst(of(...late.map((each, i) => order(`A${i}`, each, 2)))).answer;
    expect(answer(10, 6, 5, 0)).toBe('2 of 4 orders with a due day will likely be late.');
    expect(answer(5, 0)).toBe('None of 2 orders with a due day is likely late.');
    expect(answer(9)).toBe('The one order with a due day is likely late.');
    expect(answer(1)).toBe('The one order with a due day is likely in time.');
    expect(answer(...Array<number>(30).fill(10)).split(' ').length).toBeLessThanOrEqual(12);
  });

  it('names them with their days, where they stand, and no cause', () => {
    const first = forecastFirst(
      of(
        order('A1', 10, 4, 'paint'),
        order('A2', 9, 1, 'paint'),
        order('A3', 8, 2),
        order('A4', 7, 2),
        order('B', 0),
      ),
    );
    expect(first.stops.brief).toBe('Orders A1 (4 days), A2 (1 day), A3 (2 days), 1 more.');
    expect(first.toDo).toEqual({
      brief: '2 at paint and 2 not released.',
      more: 'Of the orders that are likely late. What delays them was not tried.',
    });
    expect(linesOf(first).map(({ name }) => name)).toEqual([
      'How sure',
      'Which ones',
      'Where',
      'By when',
      'Weakest guess',
    ]);
  });

  it('says which is nearest to being late where none is likely, and of one never out that it is not', () => {
    expect(forecastFirst(of(order('A', 3, 1), order('B', 0))).stops.brief).toBe(
      'Nearest to it: order A, late in 3 of 10 builds.',
    );
    expect(forecastFirst(of(order('A', 0), order('B', 0))).stops.brief).toBe(
      'No order is late in any build.',
    );
    expect(forecastFirst(of(order('A', 9, null), order('B', 0))).stops.brief).toBe(
      'Order A (not out in the run).',
    );
  });

  it('tells dates alone where nothing is due, in its answer, and no line twice', () => {
    const first = forecastFirst(open);
    expect(first.question).toBe('When will the orders be out, as the floor stands on 8 March 2027?');
    expect(first.answer).toMatch(/^Last unit by \d+ March 2027, four times in five\.$/);
    expect(linesOf(first).map(({ name }) => name)).toEqual(['How sure', 'Where', 'Weakest guess']);
    expect(forecastFirst({ ...open, lastUnit: { half: null, fourInFive: null } }).answer).toBe(
      'Not all orders are out in the run.',
    );
  });

  it('has as many late at once as its builds have, and says them four times in five', () => {
    const { lateOrders, orders, replications } = due,
      mean = orders.reduce((sum, { late }) => sum + (late ?? 0), 0) / replications;
    // The median of a count is within its standard deviation of its mean, and this one varies little.
    expect(Math.abs((lateOrders?.half ?? NaN) - mean)).toBeLessThanOrEqual(5);
    expect(lateOrders!.fourInFive).toBeGreaterThanOrEqual(lateOrders!.half);
    expect(forecastFirst(due).sure.brief).toBe(
      `No more than ${lateOrders!.fourInFive} late, four times in five (10 simulated builds).`,
    );
    expect(forecastFirst({ ...due, lateOrders: { half: 0, fourInFive: 0 } }).sure.brief).toBe(
      'None late, four times in five (10 simulated builds).',
    );
  });

  it('begins at the time of day that is asked for', async () => {
    const first = forecastFirst(await ahead('30 h', {}, 10));
    expect(first.question).toBe('Which orders will be late, as the floor stands on 8 March 2027 at 10:00?');
    expect(first.next.command).toContain('--at 2027-03-08T10:00 ');
    expect(forecastFirst(due).question).toMatch(/8 March 2027\?$/);
  });

  it('stands on the terminal in the same words', () => {
    const text = forecastTable(due, 2000);
    for (const { name, brief } of linesOf(forecastFirst(due))) expect(text).toContain(`${name}: ${brief}`);
    const many = {
      ...due,
      orders: Array.from({ length: 60 }, (_, i) => ({ ...due.orders[0], unit: `N${i}` })),
    };
    expect(forecastTable(many, 2000)).toContain('\n20 orders more in the report');
    expect(forecastTable(many, 2000)).not.toContain('\nN40 ');
  });
});
