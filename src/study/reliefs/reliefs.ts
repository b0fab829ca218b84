import type { Observation } from '../../measure/observe.js';
import { digest } from '../../scenario/digest.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { Varied } from '../../scenario/vary.js';
import { LEVEL, type StudyOptions, wholeNumber } from '../asked.js';
import { headOf } from '../head.js';
import { daysInOne, inUnit, plannersUnit } from '../planners-unit.js';
import { judgeRate } from '../programme/rate-held.js';
import { shippedPerDay } from '../programme/series.js';
import { fingerprint } from '../run/identity.js';
import { Replicator, whole } from '../run/replicator.js';
import { planned } from '../sample/planned.js';
import { familyLevel } from '../statistics/difference.js';
import { amount } from '../statistics/interval.js';
import { sumOf } from '../statistics/sums.js';
import { type Changed, changedTo, compiled, withHighestRate } from './changes.js';
import { effectOf, gainPerCost, ranks, tornado } from './effects.js';
import { fewerFailures, moreHours, morePeople } from './people.js';
import { morePlaces, moreSpaces } from './places.js';
import type { Relief } from './relief.js';
import { type ReliefsResults, reliefsSentence } from './results.js';
import { type Compared, type Screened, screened, toCompare } from './runs.js';
import { betterSteps } from './steps.js';
import { moreTransport } from './transport.js';

export interface ReliefsOptions extends StudyOptions {
  /** The scenario's guesses and estimates, varied. */
  readonly varied: readonly Varied[];
  /** Highest rate of the plan, units a working day; undefined: as the scenario has it. */
  readonly rate?: number | undefined;
  /** Most that one change is given, at least 2. */
  readonly replications: number;
}

/** What a journal has to know of varied assumptions: the scenarios that are run. */
export const variedFingerprint = (varied: readonly Varied[]): string =>
  fingerprint(
    varied.map(({ assumption: { path }, low, high }) => [
      path,
      ...[low, high].map((end) => end && digest(end.scenario)),
    ]),
  );

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
  const { rate, replications: most, level = LEVEL } = options;
  wholeNumber('replications', most, 2);
  const atRate = (scenario: Scenario): Scenario =>
    rate === undefined ? scenario : withHighestRate(scenario, rate);
  const scenario = atRate(options.scenario),
    base = changedTo(scenario);
  const { changes: reliefs, skipped } = compiled(
    base,
    reliefsOf(scenario).map((of) => ({ of, what: of.text, scenario: () => of.change(scenario) })),
  );
  const { changes: assumed, skipped: notVaried } = compiled(
    base,
    options.varied.flatMap((varied) =>
      (['low', 'high'] as const).map((side) => ({
        of: { varied, side },
        what: `${varied.assumption.words}, ${side} end`,
        scenario: () => varied[side] && atRate(varied[side].scenario),
      })),
    ),
  );

  const looks = looksOf(most),
    first = Math.min(...looks),
    expected = most + first * (reliefs.length + assumed.length);
  const replicator = new Replicator({
    ...options,
    onReplication: (done, of) => options.onReplication?.(done, Math.max(of, expected)),
  });
  try {
    const firstSeen = await replicator.row({ key: 'base', model: base.model, read: whole }, 1, first),
      plan = planned(scenario, base.model),
      judged = judgeRate(plan, firstSeen, level);
    const unit = plannersUnit(scenario),
      perDay = judged.window !== null ? judged.heldIn : shippedPerDay(plan.calendar),
      days = daysInOne(unit, judged.window),
      throughput = (seen: Observation): number => days * perDay(seen),
      toRead = <Member extends Changed>(member: Member) => toCompare(member, throughput),
      baseRead = toRead(base);
    const ofBase = [...firstSeen.map(baseRead.read), ...(await replicator.row(baseRead, first + 1, most))];
    const meanOf = (what: keyof Compared) =>
      amount(
        ofBase.map((each) => each[what]),
        level,
      );
    const across = meanOf('throughput'),
      costs = meanOf('cost'),
      zone = Math.max(1e-9, ZONE_SHARE * across.mean);
    const tried = <Member extends Changed>(group: readonly Member[], keep: number) =>
      screened(group.map(toRead<Member>), ofBase, looks, { keep, zone, level }, replicator);
    const triedReliefs = await tried(reliefs, KEEP),
      triedEnds = await tried(assumed, 0);
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
      assumptions: tornado(options.varied, ends),
      skipped: [...skipped, ...notVaried],
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

/** Replications after which is looked: 10, 20, 30, 40. */
export function looksOf(most: number): number[] {
  const looks = [];
  for (let last = FIRST; last < most; last += BETWEEN) looks.push(last);
  return [...looks, most];
}

const levelOf = (all: readonly Screened<unknown>[], level: number): number =>
  familyLevel(level, all.filter(({ out }) => out === null).length);

/** All reliefs of a scenario, in a fixed order. */
export function reliefsOf(scenario: Scenario): Relief[] {
  return [morePeople, morePlaces, moreSpaces, moreTransport, betterSteps, moreHours, fewerFailures].flatMap(
    (of) => of(scenario),
  );
}
