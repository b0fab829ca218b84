import { bounds, count, exact, mean, number, shortForms } from '../../study/format.js';
import { unitsEach } from '../../study/planners-unit.js';
import type { DateQuantile } from '../../study/programme/dates.js';
import type { Results } from '../../study/simulate/results.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { toldConstraint } from '../constraint.js';
import { simulateFirst } from '../first/simulate.js';
import { inputsRows } from '../page/inputs.js';
import { assumptionLine } from '../tables/assumptions.js';
import { constraintLines, usedLines } from './constraint.js';
import { betweenHead, firstPieces, plainly, shareOf } from './first.js';
import { joined } from './lines.js';
import { type Column, table } from './table.js';

const MOST_ACTIVITIES = 8;
type Row = [what: string, value: string, interval: string];

/**
 * The results in short, as aligned plain text of at most `width` columns without a line end at the end: the
 * answer, then one figure a line with its interval, then the findings.
 */
export function resultsTable(results: Results, width?: number): string {
  const columns: Column[] = [
    { head: 'measure' },
    { head: 'mean', align: 'right' },
    { head: results.replications < 2 ? 'interval' : betweenHead(results.level) },
  ];
  const stopped = toldConstraint(results);
  const rows: Row[] = [
    ...rate(results),
    ['units inside, all sites and lanes', mean(results.wip.total), bounds(results.wip.total)],
    ...results.wip.places.map((place) =>
      indented(row(place.kind === 'lane' ? `${place.name} (lane)` : place.name, place.mean)),
    ),
    row('lead time of half of the units, days', results.leadTime.p50),
    row('lead time of nine in ten units, days', results.leadTime.p90),
    ...under(
      'right first time at inspections, %',
      results.inspections.map((each) => row(each.name, each.ftt, 100)),
    ),
    ...(results.rty === null ? [] : [row('right first time over the whole route, %', results.rty, 100)]),
    ...cost(results),
    ...results.lastUnit.map(lastUnit),
    ...dueRows(results),
    ...warmUpRows(results),
    ...precisionRows(results),
    ...under('with measured inputs drawn anew', inputsRows(results)),
    ...journeyRows(results),
  ];
  return joined(
    [
      ...firstPieces(
        simulateFirst(results),
        results.answer.sentence,
        results.standstill === null ? [] : [results.standstill.note],
      ),
      `${count(results.replications, 'build')} tried, seed ${results.seed}`,
      ...assumptionLine(results.assumptions),
      '',
      table(rows, columns),
      ...notes(results.lastUnit),
      ...shortForms(rows.map(([, , interval]) => interval).join('\n')),
      ...(stopped === null ? [] : constraintLines(stopped)),
      ...usedLines(results.constraint?.judged ?? null, results.bottlenecks, results),
      ...results.recoveries.flatMap(({ sentence }) => ['', plainly(sentence)]),
      ...(results.findings.length === 0
        ? []
        : [
            '',
            ...results.findings.map(
              (finding) =>
                `finding: ${plainly(finding.text)} (${exact(finding.replications)} of ` +
                `${count(results.replications, 'build')})`,
            ),
          ]),
    ],
    width,
  );
}

function rate({ answer, throughput, rateUnit }: Results): Row[] {
  const units = unitsEach(rateUnit),
    { asked, held } = answer;
  return [
    ...(asked === null ? [] : [[`rate asked, ${units}`, number(asked), 'plan'] satisfies Row]),
    ...(held === null ? [] : [row(`rate held, ${units}`, held)]),
    row(`shipped over the whole run, ${units}`, throughput.perDay, rateUnit.workingDays),
  ];
}

function warmUpRows({ warmUp }: Results): Row[] {
  return warmUp?.isFound === true
    ? [['warm-up found by MSER-5, hours', number(warmUp.givenHours), `over ${warmUp.replications} runs`]]
    : [];
}

function precisionRows({ precision }: Results): Row[] {
  if (precision === null) return [];
  return under(
    `precision, % of the mean, ${number(100 * precision.asked)} asked`,
    precision.measures.map(({ name, relativeHalfWidth, reached }) => [
      name,
      relativeHalfWidth === null ? 'unknown' : number(100 * relativeHalfWidth),
      reached ? 'reached' : 'not reached',
    ]),
  );
}

function row(what: string, estimate: Estimate, scale = 1): Row {
  return [what, mean(estimate, scale), bounds(estimate, scale)];
}

/** Rows under a heading of their own; nothing where there are none. */
function under(heading: string, rows: readonly Row[]): Row[] {
  return rows.length === 0 ? [] : [[heading, '', ''], ...rows.map(indented)];
}

function indented([what, value, interval]: Row): Row {
  return [`  ${what}`, value, interval];
}

function cost({ costs }: Results): Row[] {
  if (costs === null) return [];
  return [
    row(`cost of a unit shipped, ${costs.currency}`, costs.perUnit),
    indented(row('of which rework', costs.rework.costPerUnit)),
  ];
}

function lastUnit({ p, date, low, high }: DateQuantile): Row {
  return [
    `last unit out, ${shareOf(p, 'builds')}`,
    date ?? 'not known',
    low === null || high === null ? 'no interval' : `${low} to ${high}`,
  ];
}

function dueRows({ due }: Results): Row[] {
  if (due === null) return [];
  return [
    row('units late, % of those due', due.late, 100),
    ...(due.daysLate.n === 0 ? [] : [row('mean days late, late units only', due.daysLate)]),
  ];
}

/** Only of a unit that was asked for; the page and the JSON tell the other. */
function journeyRows({ journey }: Results): Row[] {
  if (journey === null || journey.chosen !== 'by name') return [];
  const place = `replication ${journey.replication}`,
    rest = Math.max(0, journey.totals.length - MOST_ACTIVITIES);
  return [
    [
      `unit ${journey.build}, days from entry to ` +
        (journey.shipped === null ? 'the end of the run' : 'shipping'),
      number(journey.leadDays),
      place,
    ],
    ...journey.totals
      .slice(0, MOST_ACTIVITIES)
      .map(({ what, days }) => indented([what, number(days), place])),
    ...(rest === 0 ? [] : [indented([`and ${rest} more, with --json or --out`, '', ''])]),
  ];
}

function notes(quantiles: readonly DateQuantile[]): string[] {
  return quantiles
    .filter((each) => each.why !== null)
    .map(
      (each) => `last unit out, ${shareOf(each.p, 'builds')}: ${(each.why ?? '').replace(/ for P\d+/, '')}`,
    );
}
