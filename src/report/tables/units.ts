import type { Results, UnitResult } from '../../study/simulate/results.js';
import { asEstimate, intervalName, short } from '../../study/format.js';
import type { PageTable } from './overall.js';

const MOST = 40;

/**
 * Dates of single units, where the planner names them or gives them due dates: the likeliest to be late, else
 * the last in build order.
 */
export function unitDates({ units, level, due }: Results): PageTable {
  const isNamed = units.some(({ number, build }) => build !== String(number));
  const late = (unit: UnitResult): number => unit.late?.share ?? -1;
  const chosen =
    due !== null
      ? units.toSorted((a, b) => late(b) - late(a) || a.number - b.number).slice(0, MOST)
      : isNamed
        ? units.slice(-MOST)
        : [];
  const interval = `in brackets: ${intervalName(level)}`,
    which = due !== null ? 'the likeliest to be late first' : 'the last in build order';
  return {
    id: 'units',
    title: 'Units',
    note:
      `${chosen.length} of ${units.length} units, ${which}; all are in units.csv. Dates over ` +
      `replications; ${interval}.`,
    head: [
      'Build',
      ...(due === null ? [] : ['Due', 'Late, % of replications']),
      ...(units[0]?.shipped ?? []).map(({ p }) => `Shipped, P${p * 100}`),
    ],
    rows: chosen.map((unit) => [
      unit.build,
      ...(due === null ? [] : [unit.due ?? '', unit.late === null ? '' : short(asEstimate(unit.late), 100)]),
      ...unit.shipped.map(({ date, low, high }) =>
        date === null ? 'not known' : low === null || high === null ? date : `${date} (${low} to ${high})`,
      ),
    ]),
  };
}
