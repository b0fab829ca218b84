import { defined } from '../lists.js';
import { boundsOf } from '../statistics/estimate.js';
import type { CompareAsked } from './design.js';
import { type OutlookOptions, outlook, type ToldBuild } from './outlook.js';
import type { ComparedInWeeks, ComparedMeasure, CompareResults } from './results.js';

/**
 * The results with what stops the what-if that ships most, or the scenario as it is where none surely ships
 * more, and with the guess that what the scenario ships hangs on most.
 */
export async function withConstraint(
  { results, judged }: ComparedInWeeks,
  asked: CompareAsked,
  options: OutlookOptions,
): Promise<CompareResults> {
  const told = toldOf(results, asked),
    { constraint, weakest } = await outlook(
      { results, judged, scenario: asked.scenario, data: asked.data, told },
      options,
    );
  return { ...results, constraint: { of: told.name, ...constraint }, weakest };
}

/** The what-if that ships most, of those that surely ship more than the scenario; else that. */
function toldOf({ base, whatIfs }: CompareResults, { scenario, whatIfs: asked }: CompareAsked): ToldBuild {
  const throughputs = whatIfs.map((each) => ({ ...each, ...throughputOf(each.compared) })),
    [most] = throughputs
      .filter(({ difference }) => boundsOf(difference).low > 0)
      .sort((a, b) => b.value.mean - a.value.mean);
  return most === undefined
    ? {
        ...{ name: null, scenario, askedPerDay: base.askedPerDay },
        shipped: defined(base.values.find(({ measure }) => measure === 'throughput')).value,
      }
    : {
        ...{ name: most.name, askedPerDay: most.askedPerDay, shipped: most.value },
        scenario: defined(asked.find(({ name }) => name === most.name)).scenario,
      };
}

const throughputOf = (compared: readonly ComparedMeasure[]): ComparedMeasure =>
  defined(compared.find(({ measure }) => measure === 'throughput'));
