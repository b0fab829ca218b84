import { dayNumber } from '../../scenario/calendar/date.js';
import { namedChanges } from '../../scenario/changes/possible.js';
import { askedRate } from '../../scenario/programme/rates.js';
import { midnightOf, runSpan } from '../../scenario/programme/span.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { LEVEL, wholeNumber } from '../asked.js';
import { PossibleChanges } from '../priced/sets.js';
import { noRateReason } from '../rate/at-rate.js';
import { asking } from '../rate/last-unit.js';
import { type Changed, changedTo, orWhy } from '../reliefs/changes.js';
import { fingerprint } from '../run/identity.js';
import { Replicator } from '../run/replicator.js';
import { choose } from './choose.js';
import { ReachForecast } from './forecast.js';
import type { ReachOptions } from './options.js';
import type { ReachResults } from './results.js';
import { Choices, type Counts } from './search/choices.js';
import { climb } from './search/frontier.js';
import { LOOKS, Pool } from './search/pool.js';
import { settingOf } from './search/setting.js';
import { summary } from './summary.js';
import { Terms } from './terms.js';
import { Teller } from './told.js';
import { type WithUnpriced, withUnpriced } from './unpriced.js';
import { MOST_TIMES, verified } from './verify.js';

/** A set is decided by so many times the replications of what is told, and by so many at least. */
const TO_DECIDE = 4,
  LEAST_TO_DECIDE = 100;

/** What a journal has to know of the changes that are searched: prices too, since the way depends on them. */
export const changesFingerprint = (scenario: Scenario): string => fingerprint(namedChanges(scenario));

/**
 * The cheapest set of possible changes that reaches a rate, or has the last unit out by a day, and the way
 * there. Sets are searched in the first replications, the last few decided by the next, and all that is told
 * of builds comes from those behind. Same scenario, options and seed: same results, for any number of
 * threads.
 * @throws RangeError `costs.changes: expected ..` or `programme: expected ..` where nothing can be searched
 */
export async function reachStudy(options: ReachOptions): Promise<ReachResults> {
  const { goal, ordered, by, budget, atMost, replications, level = LEVEL } = options,
    { onStage = () => undefined } = options;
  wholeNumber('replications', replications, 2);
  const atRate = (each: Scenario): Scenario =>
      goal.kind === 'date' || goal.perDay === askedRate(each).highest || noRateReason(each) !== null
        ? each
        : asking(each, goal.perDay),
    scenario = atRate(options.scenario),
    possible = new PossibleChanges(scenario, options.data, atRate),
    limits = { budget: budget ?? Infinity, changes: atMost ?? Infinity },
    all = new Choices(possible, possible.all, limits),
    isPriced = all.all.some(({ price }) => price !== undefined),
    // Without any price the fewest changes are the cheapest.
    choices = isPriced ? new Choices(possible, all.all, limits, ({ price }) => price !== undefined) : all,
    forecast = new ReachForecast(replications, options.onForecast),
    search = new Replicator({
      ...options,
      onReplication: (done, of) => {
        forecast.done = done;
        options.onReplication?.(done, of);
      },
    });
  if (all.all.length === 0)
    throw new RangeError(
      'costs.changes: expected changes that could be made, got none; name some, with their prices',
    );
  try {
    const from = by === undefined ? undefined : midnightOf(dayNumber(by), runSpan(scenario)),
      most = Math.max(LEAST_TO_DECIDE, TO_DECIDE * replications),
      deciding = search.behind(Math.max(...LOOKS)),
      telling = deciding.behind(most),
      teller = new Teller(telling),
      made = (counts: readonly number[]) => possible.made(all.set(counts), ordered),
      full = fullOf(scenario, all, made),
      setting = await settingOf(goal, full, { from, level }, search),
      pool = new Pool(made, setting, search);
    onStage(`trying sets of ${all.all.length === 1 ? 'one change' : `${all.all.length} changes`}`);
    await climb(choices, pool, setting[0].goal.zone);
    forecast.climbed();
    const chosen = await choose(choices, pool, {
      ...{ setting, most, level, onStage },
      fresh: deciding,
      verify: async (changed) => verified(changed, { goal, replications, level, from }, teller, telling),
    });
    const unpriced: WithUnpriced | null =
      isPriced && chosen.outcome !== 'holds already' && all.all.some(({ price }) => price === undefined)
        ? await withUnpriced(all, pool, chosen.outcome === 'reached' ? chosen.counts : null)
        : null;
    return await summary({
      ...{ options: { ...options, scenario, level }, choices, pool, chosen, unpriced },
      ...{ goal: setting[0].goal, forecast, teller },
      terms: new Terms(scenario, possible, all, ordered ?? null),
      // Behind all by which a build may be told.
      stopping: telling.behind(MOST_TIMES * replications),
      atRate,
      phases:
        scenario !== options.scenario && scenario.programme.release.kind === 'rate'
          ? scenario.programme.release.phases
          : null,
      skipped: all.all.flatMap(({ name }, i) => {
        const why = pool.whyNot(all.with(all.none, i, 1));
        return why === null ? [] : [{ what: name, why }];
      }),
    });
  } finally {
    await search.close();
  }
}

/** The build with every change made that can be made; as it is where they clash. */
function fullOf(scenario: Scenario, { most, none }: Choices, made: (counts: Counts) => Scenario): Changed {
  const buildOf = (counts: Counts): Changed | string => orWhy(() => changedTo(made(counts))),
    able = most.map((times, i) =>
      typeof buildOf(none.map((_, other) => (other === i ? times : 0))) === 'string' ? 0 : times,
    ),
    full = buildOf(able);
  return typeof full === 'string' ? changedTo(scenario) : full;
}
