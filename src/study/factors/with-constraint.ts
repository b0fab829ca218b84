import { type OutlookOptions, outlook } from '../compare/outlook.js';
import { defined } from '../lists.js';
import { toldCombination } from './best.js';
import type { FactorsAsked, FactorsInWeeks, FactorsResults } from './results.js';

/** The results with what stops the combination told, and the guess that the scenario hangs on most. */
export async function withConstraint(
  { results, judged }: FactorsInWeeks,
  { scenario, data, combinations }: FactorsAsked,
  options: OutlookOptions,
): Promise<FactorsResults> {
  const c = toldCombination(results),
    told = defined(results.combinations[c]);
  const found = await outlook(
    {
      ...{ results, judged, scenario, data },
      told: {
        name: told.isBase ? null : told.name,
        scenario: told.isBase ? scenario : defined(combinations[c]).scenario,
        shipped: defined(told.compared.find(({ measure }) => measure === 'throughput')).value,
        askedPerDay: told.askedPerDay,
      },
    },
    options,
  );
  return { ...results, ...found };
}
