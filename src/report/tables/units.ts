import { asEstimate, count, intervalName } from '../../study/format.js';
import type { UnitResult } from '../../study/programme/dates.js';
import type { Results } from '../../study/simulate/results.js';
import { type PageTable } from '../columns.js';
import { type Cell, day, dayPart, percent } from '../sheets/cells.js';

const MOST = 40;

/**
 * Dates of single units, where the planner names them or gives them due dates: the likeliest to be late, else
 * the last in build order.
 */
export function units({ units: all, level, due }: Results): PageTable {
  const isNamed = all.some(({ number, build }) => build !== String(number));
  const late = (unit: UnitResult): number => unit.late?.share ?? -1;
  const chosen =
    due !== null
      ? all.toSorted((a, b) => late(b) - late(a) || a.number - b.number).slice(0, MOST)
      : isNamed
        ? all.slice(-MOST)
        : [];
  const which = due !== null ? 'the likeliest to be late first' : 'the last in build order';
  return {
    id: 'units',
    title: 'Units',
    note:
      `${chosen.length} of ${count(all.length, 'unit')}, ${which}; all are in units.csv. Dates over ` +
      `replications; in brackets: ${intervalName(level)}.`,
    head: [
      'Build',
      ...(due === null ? [] : ['Due', 'Late, % of replications']),
      ...(all[0]?.shipped ?? []).map(({ p }) => `Shipped, P${p * 100}`),
    ],
    rows: chosen.map((unit) => [
      unit.build,
      ...(due === null ? [] : [day(unit.due), unit.late === null ? '' : percent(asEstimate(unit.late))]),
      ...unit.shipped.map(shippedCell),
    ]),
  };
}

const shippedCell = ({ date, low, high }: UnitResult['shipped'][number]): Cell =>
  date === null
    ? 'not known'
    : {
        text: low === null || high === null ? date : `${date} (${low} to ${high})`,
        parts: [dayPart('', date), dayPart('low', low), dayPart('high', high)],
      };
