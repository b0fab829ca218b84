import type { Observation } from '../../measure/observe.js';
import type { Assumption, Scenario } from '../../scenario/types/scenario.js';
import { LEVEL, type StudyOptions, VALUES, wholeNumber } from '../asked.js';
import { Beside } from '../felt/beside.js';
import { count } from '../format.js';
import { headOf } from '../head.js';
import { judgeRate } from '../held/rate-held.js';
import { defined } from '../lists.js';
import { daysInOne, inUnit } from '../planners-unit.js';
import { wantedOf } from '../priced/wanted.js';
import { fingerprint } from '../run/identity.js';
import { Replicator, whole } from '../run/replicator.js';
import { planned } from '../sample/planned.js';
import { familyLevel } from '../statistics/difference.js';
import { sumOf } from '../statistics/sums.js';
import { plannersUnit } from '../unit-of.js';
import { baseResult } from './base.js';
import { type Changed, changedTo, compiled, withHighestRate } from './changes.js';
import { groupsOf, ranks, tornado } from './effects.js';
import { byGain, seenBy } from './final.js';
import { Forecast } from './forecast.js';
import { FIRST_LOOK } from './groups/bifurcation.js';
import { inGroups } from './groups/in-groups.js';
import { playFinal } from './play-final.js';
import type { ReliefsResults } from './results.js';
import { type Compared, looksOf, screened, toCompare } from './runs.js';
import { reliefsSentence } from './sentence.js';
import { hasSameLoads, shippedADay } from './shipped.js';
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
/** Replications of the base ahead of all else: they tell which weeks are judged, and what is loaded. */
const FIRST_OF_BASE = 10;
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
    first = Math.min(FIRST_OF_BASE, most),
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
      baseRead = toRead(base),
      beside = new Beside<Compared>(baseRead, [...reliefs, ...assumed].map(toRead));
    beside.take(firstSeen);
    await beside.run(replicator, most);
    const ofBase = beside.own;
    const each = familyLevel(level, SHARES),
      ofTheBase = baseResult(plan, judged, ofBase, { level, each, unit }),
      zone = Math.max(1e-9, ZONE_SHARE * ofTheBase.base.throughput.mean);
    // Told only now: by the base it is seen how long a replication takes.
    const forecast = new Forecast(
      // Of reliefs by groups of which is known only then how many there are: one of each at least.
      [0, defined(looks[0]) * assumed.length],
      most,
      [reliefs.length, assumed.length],
      KEEP + 2,
      options.onForecast,
    );
    const triedReliefs = await inGroups({
      ...{ base, reliefs: reliefs.map(toRead), beside, toRead, replicator },
      ...{ keep: KEEP, zone, level: each, most },
      mayJoin: ({ model }) => hasSameLoads(base.model, model),
      told: (screening) => {
        forecast.seen(0, screening);
      },
    });
    const triedEnds = await screened(
      assumed.map((member) => beside.with(toRead(member))),
      ofBase,
      looks,
      { zone, level: each },
      replicator,
      (screening) => {
        forecast.seen(1, screening);
      },
    );
    const levels = {
        reliefs: familyLevel(each, 2 * reliefs.length),
        assumptions: familyLevel(each, assumed.length),
      },
      ends = seenBy(ofBase, triedEnds, levels.assumptions),
      final = await playFinal({
        ...{
          base: baseRead,
          ofBase,
          ends,
          reliefs: byGain(seenBy(ofBase, triedReliefs.alone, levels.reliefs)),
        },
        ...{ level: each, eachLevel: levels.reliefs, zone, keep: KEEP, replications: most },
        ...{ replicator, forecast },
        inGroups: sumOf(triedReliefs.groups, ({ members }) => members.length),
      });
    const results: Omit<ReliefsResults, 'answer'> = {
      ...headOf('reliefs', { ...options, scenario, level }),
      replications: most,
      firstReplications: Math.min(FIRST_LOOK, most),
      eachLevel: { ...levels, final: final.level },
      zone,
      keep: KEEP,
      ...ofTheBase,
      rate: { set: rate === undefined ? null : inUnit(rate, unit), ...ofTheBase.rate },
      reliefs: ranks(final.reliefs),
      groups: groupsOf(ofBase, triedReliefs.groups, levels.reliefs),
      harm: {
        tested: triedReliefs.harm.tested,
        found: triedReliefs.harm.found.map((all) => all.map(({ of }) => of.text)),
      },
      best: final.best,
      assumptions: tornado(ends.map(({ member: { of }, effect }) => ({ ...of, effect }))),
      measureNext: final.measureNext,
      values: {
        most: mostValues,
        left: values.left.map(({ path, words, basis, value }) => ({ path, words, basis, value })),
      },
      skipped: [...skipped, ...values.skipped],
      runs: {
        run:
          most +
          triedReliefs.run +
          sumOf(triedEnds, ({ member, row }) => row.length - beside.knownIn(member, row.length)) +
          final.run,
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
