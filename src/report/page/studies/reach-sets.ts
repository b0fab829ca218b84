import { intervalName } from '../../../study/format.js';
import { each, unitsEach } from '../../../study/planners-unit.js';
import type { FrontierResult, PossibleResult, ReachResults } from '../../../study/reach/results.js';
import { isPriced, setText } from '../../../study/reach/sentence.js';
import { type Column, columns, type PageTable } from '../../columns.js';
import { onEveryShift } from '../../constraint.js';
import { worthText } from '../../first/reach/money.js';
import { outBy, setOrAsIs, timesIn, timesMade } from '../../first/reach/told.js';
import { counted, day, estimated } from '../../sheets/cells.js';
import { amount, costCell } from './reach-steps.js';

/** The most that was found for each sum of money, or number of changes. */
export function mostTable(results: ReachResults): PageTable {
  const { frontier, currency, level, rateUnit } = results,
    isByMoney = isPriced(results);
  const unit: Column<FrontierResult>[] = [['A unit costs', costCell]],
    out: Column<FrontierResult>[] = [
      ['Last unit, half of the builds', (set) => day(outBy(set, 0.5))],
      ['Last unit, four of five', (set) => day(outBy(set, 0.8))],
    ];
  return {
    id: 'most',
    title: isByMoney ? 'The most for each sum of money' : 'The most for each number of changes',
    note:
      `Sets that ship more than all that were found for less; ${unitsEach(rateUnit)}, in brackets ` +
      `${intervalName(level)}. Found by steps from cheap to dear: nothing proves that no set does better, ` +
      'but for what is said of the set of the answer.',
    ...columns(frontier, [
      isByMoney
        ? [`Money once, ${currency}`, (set) => amount(set.money)]
        : ['Changes', ({ made }) => counted(timesIn(made))],
      ['Set', ({ made }) => setOrAsIs(made)],
      ['Of the answer', ({ isChosen }) => (isChosen ? 'yes' : '')],
      [`Ships ${each(rateUnit)}`, ({ throughput }) => estimated(throughput, rateUnit.workingDays)],
      ...(frontier.some(({ costPerUnit }) => costPerUnit !== null) ? unit : []),
      ...(frontier.some(({ lastUnit }) => lastUnit.length > 0) ? out : []),
    ]),
  };
}

/** What the scenario says could be changed. */
export function changesTable(results: ReachResults): PageTable {
  const { possible, currency } = results;
  const prices: Column<PossibleResult>[] = [
    [`Price, ${currency}`, ({ price }) => amount(price)],
    [`A day, ${currency}`, (change) => amount(change.day)],
  ];
  return {
    id: 'changes',
    title: 'Changes that could be made',
    note:
      'As the scenario names them under costs. Made: how often it is in the set of the answer. At most: as ' +
      'often as it may be made; without a limit up to 8 times were tried, a bundle once.',
    ...columns(possible, [
      ['Change', 'name'],
      ['What it is', ({ what }) => onEveryShift(what)],
      ['Made', ({ name }) => counted(timesMade(name, results))],
      ...(isPriced(results) ? prices : []),
      ['Ready after', ({ readyAfter }) => readyAfter ?? 'at once'],
      ['At most', ({ atMost }) => (atMost === null ? '' : counted(atMost))],
      ['Not with', ({ excludes }) => excludes.join(', ')],
      ['Not without', ({ requires }) => requires.join(', ')],
    ]),
  };
}

/** What changes without a price would be worth. */
export function unpricedTable(results: ReachResults): PageTable {
  return {
    id: 'unpriced',
    title: 'What a price is worth asking for',
    note:
      'With changes whose price is not given a cheaper set would do. Worth up to: what they may cost for ' +
      'that set to be no dearer than that of the answer; a hint, not decided by fresh replications.',
    ...columns(results.unpriced, [
      ['Without a price', ({ names }) => setText(names.map((name) => ({ name, times: 1 })))],
      ['Set that would do', ({ made }) => setText(made)],
      [`All else in it, ${results.currency}`, (each) => amount(each.money)],
      [`Worth up to, ${results.currency}`, ({ worth }) => (worth === null ? '' : amount(worth))],
      ['In words', (each) => worthText(each, results)],
    ]),
  };
}
