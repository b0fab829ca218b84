import { capital, count, exact, number } from '../../../study/format.js';
import type { ValidateResults } from '../../../study/validate/results.js';
import { filled } from '../../columns.js';
import { validateFirst } from '../../first/records/validate.js';
import { lastDay, useLines } from '../../first/records/validate-told.js';
import { noteOf, origin, type PageContent } from '../page.js';
import { logSentences, oddRowsTable } from './log-tables.js';
import { causesTable, measuresTable, usesTable, waitingTable } from './validate-tables.js';

/** One page: whether the model would have foretold the log, what explains a gap, what it may be used for. */
export function validatePage(results: ValidateResults): PageContent {
  const { scenario, sentence, causes, cause, log, period, units, replications, notes, level } = results;
  return {
    scenario: scenario.name,
    first: validateFirst(results),
    losses: [],
    inFull: `${sentence} ${cause}`,
    findings: [
      ...useLines(results).map((each) => `${capital(each)}.`),
      ...causes.map(
        ({ words, follows }) => `${capital(words)}${follows ? ', which may follow from another' : ''}.`,
      ),
    ],
    costsAndDates: [],
    values: [],
    assumptions: [
      ...noteOf(scenario),
      ...logSentences(log),
      ...notes,
      `The same figures are worked out of the log and of ${count(replications, 'simulated log')} of the ` +
        'same days, with the same entries, the same calendars and the same units on the floor at the start.',
      `All measures are judged together: a model that is right is called wrong in no more than ` +
        `${number(100 * (1 - level))} of 100 such comparisons (Holm 1979, Scandinavian Journal of ` +
        'Statistics 6, 65-70; from memory).',
      'A cause is told among the inputs that the log shows: minutes of steps, what inspections find, and ' +
        'people at work. What the log does not show is not among them.',
    ],
    facts: origin(
      results,
      [
        ['Period', `${period.from} to ${lastDay(results)}, ${count(period.days, 'day')}`],
        [
          'Units',
          `${exact(units.standing)} on the floor at the start, ${exact(units.entered)} came in, ` +
            `${exact(units.shipped)} were shipped`,
        ],
        ['Replications', `${count(replications, 'simulated build')} of the period`],
        ['Level', `${number(100 * level)} %, all measures together`],
      ],
      [['Log', log.file]],
    ),
    tables: filled([
      usesTable(results),
      causesTable(results),
      measuresTable(results),
      waitingTable(results),
      oddRowsTable(log),
    ]),
    more: 'All of these numbers are in results.json, measures.csv and days.csv beside this page.',
  };
}
