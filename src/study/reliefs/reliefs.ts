import type { Observation } from '../../measure/observe.js';
import type { Assumption, Scenario } from '../../scenario/types/scenario.js';
import type { ToVary } from '../../scenario/vary.js';
import { LEVEL, type StudyOptions, VALUES, wholeNumber } from '../asked.js';
import { count } from '../format.js';
import { headOf } from '../head.js';
import { countingResult } from '../loads/words.js';
import { daysInOne, inUnit, plannersUnit } from '../planners-unit.js';
import { judgeRate } from '../programme/rate-held.js';
import { fingerprint } from '../run/identity.js';
import { Replicator, whole } from '../run/replicator.js';
import { planned } from '../sample/planned.js';
import { familyLevel } from '../statistics/difference.js';
import { amount } from '../statistics/skewed-interval.js';
import { sumOf } from '../statistics/sums.js';
import { bearings } from './bearing.js';
import { type Changed, changedTo, compiled, withHighestRate } from './changes.js';
import { effectOf, gainPerCost, ranks, tornado } from './effects.js';
import { Forecast } from './forecast.js';
import { reliefsOf } from './kinds/kinds.js';
import { loadsOf } from './loads.js';
import { type ReliefsResults, reliefsSentence } from './results.js';
import { type Compared, type Screened, screened, toCompare } from './runs.js';
import { shippedADay } from './shipped.js';
import { aboutShop, NO_VALUES, valuesVaried } from './values.js';

export interface ReliefsOptions extends StudyOptions {
  /** The scenario's guesses and estimates; left out: none is varied. */
  readonly toVary?: ToVary | undefined;
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

/** Replications before the first look, and between looks. */
const FIRST = 10,
  BETWEEN = 10;
/** So many best reliefs the screen promises to keep. */
const KEEP = 5;
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
    { toVary = NO_VALUES, values: mostValues = VALUES } = options;
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
    const wanted = reliefsOf(scenario);
    onStage?.(`preparing ${preparation(wanted.length, aboutShop(toVary.assumptions).length, mostValues)}`);
    const { changes: reliefs, skipped } = await compiled(
        base,
        wanted.map((of) => ({ of, what: of.text, scenario: () => of.change(scenario) })),
        signal,
      ),
      values = await valuesVaried(toVary, {
        most: mostValues,
        base,
        bearing: () => bearings(scenario, base.model, loadsOf(scenario, base.model, firstSeen)),
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
    const forecast = new Forecast(first, most, [reliefs.length, assumed.length], options.onForecast);
    const meanOf = (what: keyof Compared) =>
      amount(
        ofBase.map((each) => each[what]),
        level,
      );
    const across = meanOf('throughput'),
      costs = meanOf('cost'),
      zone = Math.max(1e-9, ZONE_SHARE * across.mean);
    const tried = <Member extends Changed>(group: readonly Member[], keep: number, id: number) =>
      screened(group.map(toRead<Member>), ofBase, looks, { keep, zone, level }, replicator, (screening) => {
        forecast.seen(id, screening);
      });
    const triedReliefs = await tried(reliefs, KEEP, 0),
      triedEnds = await tried(assumed, 0, 1);
    const eachLevel = {
      reliefs: levelOf(triedReliefs, level),
      assumptions: levelOf(triedEnds, level),
    };
    const ranked = ranks(
      triedReliefs.map(({ member: { of }, row, out }) => {
        const effect = effectOf(ofBase, row, out, eachLevel.reliefs);
        return {
          rank: 0,
          kind: of.kind,
          text: of.text,
          of: of.of,
          ...effect,
          gainPerCost: gainPerCost(ofBase, row, effect),
          rankPerCost: null,
        };
      }),
    );
    const ends = triedEnds.map(({ member: { of }, row, out }) => ({
      ...of,
      effect: effectOf(ofBase, row, out, eachLevel.assumptions),
    }));
    const results: Omit<ReliefsResults, 'answer'> = {
      ...headOf('reliefs', { ...options, scenario, level }),
      replications: most,
      firstReplications: first,
      eachLevel,
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
        verdict: judged.verdict,
        gridlocks: judged.gridlocks,
      },
      reliefs: ranked,
      assumptions: tornado(ends),
      values: {
        most: mostValues,
        left: values.left.map(({ path, words, basis, value }) => ({ path, words, basis, value })),
      },
      skipped: [...skipped, ...values.skipped],
      runs: {
        run: most + sumOf([...triedReliefs, ...triedEnds], ({ row }) => row.length),
        withoutScreen: most * (1 + reliefs.length + assumed.length),
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

/** Replications after which is looked: 10, 20, 30, 40. */
export function looksOf(most: number): number[] {
  const looks = [];
  for (let last = FIRST; last < most; last += BETWEEN) looks.push(last);
  return [...looks, most];
}

const levelOf = (all: readonly Screened<unknown>[], level: number): number =>
  familyLevel(level, all.filter(({ out }) => out === null).length);
