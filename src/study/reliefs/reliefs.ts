import type { Observation } from '../../measure/observe.js';
import type { Assumption, Scenario } from '../../scenario/types/scenario.js';
import { LEVEL, type StudyOptions, VALUES, wholeNumber } from '../asked.js';
import { count } from '../format.js';
import { headOf } from '../head.js';
import { judgeRate } from '../held/rate-held.js';
import { countingResult } from '../loads/words.js';
import { daysInOne, inUnit } from '../planners-unit.js';
import { wantedOf } from '../priced/wanted.js';
import { lastUnitDates, plannedEnd } from '../programme/dates.js';
import { fingerprint } from '../run/identity.js';
import { Replicator, whole } from '../run/replicator.js';
import { planned } from '../sample/planned.js';
import { familyLevel } from '../statistics/difference.js';
import { amount } from '../statistics/skewed-interval.js';
import { sumOf } from '../statistics/sums.js';
import { plannersUnit } from '../unit-of.js';
import { type Changed, changedTo, compiled, withHighestRate } from './changes.js';
import { ranks, tornado } from './effects.js';
import { byGain, seenBy } from './final.js';
import { Forecast } from './forecast.js';
import { playFinal } from './play-final.js';
import type { ReliefsResults } from './results.js';
import { looksOf, screened, toCompare } from './runs.js';
import { reliefsSentence } from './sentence.js';
import { shippedADay } from './shipped.js';
import { bearings, byLoad } from './values/bearing.js';
import { loadsOf } from './values/loads.js';
import { aboutShop, valuesOf, valuesVaried } from './values/values.js';

export interface ReliefsOptions extends StudyOptions {
  /** So many of them are varied at most. */
  readonly values?: number | undefined;
  /** Highest rate of the plan, units a working day; undefined: as the scenario has it. */
  readonly rate?: number | undefined;
  /** Most that one change is given, at least 2. */
  readonly replications: number;
}

/** What a journal has to know of guesses and estimates: the scenarios of their ends follow from these. */
export const assumptionsFingerprint = (assumptions: readonly Assumption[]): string =>
  fingerprint(assumptions.map(({ path, basis, raw, inGeneral }) => [path, basis, raw, inGeneral ?? false]));

/** So many best reliefs the screen promises to keep; they go into the final. */
const KEEP = 5;
/** What the answer rests on, each with its share of what may go wrong: base, screen, gains, final, values. */
const SHARES = 5;
/**
 * A gain below this share of the base's throughput does not matter: half of what a rate may miss and still
 * count as held. Our own convention.
 */
const ZONE_SHARE = 0.01;

/**
 * Sets every relief and every varied assumption against the scenario as it is. Same scenario, seed and
 * replications: same results, to the last bit.
 */
export async function reliefsStudy(options: ReliefsOptions): Promise<ReliefsResults> {
  const { rate, replications: most, level = LEVEL, signal, onStage } = options,
    { values: mostValues = VALUES } = options,
    toVary = valuesOf(options);
  wholeNumber('replications', most, 2);
  wholeNumber('values', mostValues, 0);
  const atRate = (scenario: Scenario): Scenario =>
    rate === undefined ? scenario : withHighestRate(scenario, rate);
  const scenario = atRate(options.scenario),
    base = changedTo(scenario);

  const looks = looksOf(most),
    first = Math.min(...looks),
    replicator = new Replicator(options);
  try {
    options.onForecast?.({ least: most, most: null });
    const firstSeen = await replicator.row({ key: 'base', model: base.model, read: whole }, 1, first),
      plan = planned(scenario, base.model),
      judged = judgeRate(plan, firstSeen, level);
    const wanted = wantedOf(scenario, options.data, atRate);
    onStage?.(`preparing ${preparation(wanted.length, aboutShop(toVary.assumptions).length, mostValues)}`);
    const { changes: reliefs, skipped } = await compiled(
        base,
        wanted.map((of) => ({ of, what: of.text, scenario: () => of.change(scenario) })),
        signal,
      ),
      values = await valuesVaried(toVary, {
        most: mostValues,
        base,
        bearing: () => bearings(scenario, base.model, byLoad(loadsOf(scenario, base.model, firstSeen))),
        atRate,
        signal,
      }),
      assumed = values.changes;
    const unit = plannersUnit(scenario),
      perDay = shippedADay(plan, judged),
      days = daysInOne(unit, judged.window),
      throughput = (member: Changed) => {
        const shipped = perDay(member);
        return (seen: Observation): number => days * shipped(seen);
      },
      toRead = <Member extends Changed>(member: Member) => toCompare(member, throughput(member)),
      baseRead = toRead(base);
    const ofBase = [...firstSeen.map(baseRead.read), ...(await replicator.row(baseRead, first + 1, most))];
    // Told only now: by the base it is seen how long a replication takes.
    const forecast = new Forecast(
      first,
      most,
      [reliefs.length, assumed.length],
      KEEP + 2,
      options.onForecast,
    );
    const each = familyLevel(level, SHARES),
      meanOf = (what: 'throughput' | 'cost') =>
        amount(
          ofBase.map((one) => one[what]),
          each,
        );
    const across = meanOf('throughput'),
      costs = meanOf('cost'),
      zone = Math.max(1e-9, ZONE_SHARE * across.mean);
    const tried = <Member extends Changed>(group: readonly Member[], keep: number, id: number) =>
      screened(
        group.map(toRead<Member>),
        ofBase,
        looks,
        { keep, zone, level: each },
        replicator,
        (screening) => {
          forecast.seen(id, screening);
        },
      );
    const triedReliefs = await tried(reliefs, KEEP, 0),
      triedEnds = await tried(assumed, 0, 1);
    const levels = {
        reliefs: familyLevel(each, 2 * reliefs.length),
        assumptions: familyLevel(each, assumed.length),
      },
      ends = seenBy(ofBase, triedEnds, levels.assumptions),
      final = await playFinal({
        ...{ base: baseRead, ofBase, ends, reliefs: byGain(seenBy(ofBase, triedReliefs, levels.reliefs)) },
        ...{ level: each, eachLevel: levels.reliefs, zone, keep: KEEP, replications: most },
        ...{ replicator, forecast },
      });
    const results: Omit<ReliefsResults, 'answer'> = {
      ...headOf('reliefs', { ...options, scenario, level }),
      replications: most,
      firstReplications: first,
      eachLevel: { ...levels, final: final.level },
      zone,
      keep: KEEP,
      counted: {
        over: judged.window === null ? 'whole run' : 'judged window',
        from: judged.window?.from ?? null,
        to: judged.window?.to ?? null,
        counting: judged.counting === null ? null : countingResult(judged.counting),
      },
      rate: {
        set: rate === undefined ? null : inUnit(rate, unit),
        asked: judged.askedPerDay === null ? null : inUnit(judged.askedPerDay, unit),
        askedPerDay: judged.askedPerDay,
      },
      base: {
        throughput: across,
        costPerUnit: costs.n === 0 ? null : costs,
        currency: scenario.costs?.currency ?? null,
        plannedEnd: plannedEnd(plan),
        lastUnit: lastUnitDates(
          scenario,
          ofBase.map((one) => one.lastUnit),
          plan.clock,
          level,
        ),
        keptUp: judged.holding?.keptUp ?? null,
        gridlocks: judged.gridlocks,
      },
      reliefs: ranks(final.reliefs),
      best: final.best,
      assumptions: tornado(ends.map(({ member: { of }, effect }) => ({ ...of, effect }))),
      measureNext: final.measureNext,
      values: {
        most: mostValues,
        left: values.left.map(({ path, words, basis, value }) => ({ path, words, basis, value })),
      },
      skipped: [...skipped, ...values.skipped],
      runs: {
        run: most + sumOf([...triedReliefs, ...triedEnds], ({ row }) => row.length) + final.run,
        withoutScreen: most * (1 + reliefs.length + assumed.length) + final.run,
      },
    };
    return { ...results, answer: { sentence: reliefsSentence(results) } };
  } finally {
    await replicator.close();
  }
}

function preparation(reliefs: number, values: number, most: number): string {
  const tried = count(reliefs, 'relief');
  if (values === 0 || most === 0) return tried;
  return values <= most
    ? `${tried} and ${values === 1 ? '1 guess or estimate' : `${values} guesses and estimates`}, low and high`
    : `${tried} and the ${most} of ${values} guesses and estimates that may bear most, low and high`;
}
