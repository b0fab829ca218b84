import type { ForecastResults } from '../../../study/forecast/forecast.js';
import { count, exact } from '../../../study/format.js';
import { filled } from '../../columns.js';
import { forecastFirst } from '../../first/records/forecast.js';
import { behindText, forecastInFull, lateText, likelyLate } from '../../first/records/forecast-told.js';
import { assumptions } from '../../tables/assumptions.js';
import { noteOf, origin, type PageContent } from '../page.js';
import { valuesTold } from '../rests.js';
import { ordersTable, standingTable } from './forecast-tables.js';
import { logSentences, oddRowsTable } from './log-tables.js';

const FINDINGS = 10;

/** One page: which orders will be late, by how much, how sure; then all orders, and where units stand. */
export function forecastPage(results: ForecastResults): PageContent {
  const { scenario, at, log, replications, notes, units } = results,
    late = likelyLate(results);
  return {
    scenario: scenario.name,
    first: forecastFirst(results),
    losses: [],
    inFull: forecastInFull(results),
    findings: [
      ...late
        .slice(0, FINDINGS)
        .map(
          (order) =>
            `${order.unit}: due ${order.due ?? ''}, late in ${lateText(order, replications)} builds, by ` +
            `${behindText(order)} in half of these.`,
        ),
      ...(late.length > FINDINGS
        ? [`And ${exact(late.length - FINDINGS)} more: see the table of orders.`]
        : []),
    ],
    costsAndDates: [],
    values: valuesTold(results.assumptions),
    assumptions: [
      ...noteOf(scenario),
      ...logSentences(log),
      ...notes,
      'The floor is taken as its log shows it at the moment; what is still to come in follows the programme.',
      'Odds say how far chance inside the model moves the dates. They say nothing of wrong inputs: hold ' +
        'the model against the log first.',
      'What delays an order was not tried: where it stands is no cause.',
    ],
    facts: origin(
      results,
      [
        ['Moment', at],
        [
          'Units',
          `${exact(units.standing)} on the floor, ${exact(units.shipped)} shipped, ` +
            `${exact(units.toCome)} to come in`,
        ],
        ['Replications', `${count(replications, 'build')} of the rest of the programme`],
      ],
      [['Log', log.file]],
    ),
    tables: filled([ordersTable(results), standingTable(results), assumptions(results), oddRowsTable(log)]),
    more: 'All of these numbers are in results.json, orders.csv and days.csv beside this page.',
  };
}
