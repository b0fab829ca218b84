import type { Model } from '../../flow/model/model.js';
import { type CapacityTable, capacity } from '../capacity/capacity.js';
import { named } from '../lists.js';
import type { Verdict } from '../programme/rate-held.js';
import type { Changed } from '../reliefs/changes.js';
import type { Thing } from '../reliefs/thing.js';
import { type Replicator, whole } from '../run/replicator.js';
import { resolved } from '../sample/deferred.js';
import { planned } from '../sample/planned.js';
import { Sample } from '../sample/sample.js';
import { bottlenecks } from '../sections/bottlenecks.js';
import { carriers, teams } from '../sections/carriers.js';
import { lanes } from '../sections/lanes.js';
import { stations } from '../sections/stations.js';
import { feeders, supplies } from '../sections/supplies.js';
import { amount } from '../statistics/interval.js';
import { ladder } from './ladder.js';
import { keyOfThing, type Likely, likeliest, thingOf } from './likeliest.js';
import type { ConstraintResult, JudgedResult, LadderResult, Tried } from './results.js';
import { seenIn } from './seen.js';
import { constraintSentence } from './sentence.js';
import { type ShippedPerDay, tried } from './trial.js';

/** Replications of each trial at most. */
export const TRIAL_REPLICATIONS = 20;
/** A gain below this share of what is shipped does not matter; our own convention, as in `reliefs`. */
const ZONE_SHARE = 0.01;
/** So many of what units wait for are told. */
const MOST_TOLD = 10;

export interface ConstraintAsked {
  readonly base: Changed;
  /** The weeks that are judged: minutes since the start, ISO dates; null: the whole run is. */
  readonly weeks: {
    readonly fromMin: number;
    readonly toMin: number;
    readonly from: string;
    readonly to: string;
  } | null;
  readonly verdict: Verdict;
  /** Units shipped a working day in these weeks. */
  readonly shippedPerDay: ShippedPerDay;
  readonly replications: number;
  readonly level: number;
}

/**
 * What stops a build: the judged weeks of its first replications are looked at, and one more of each of the
 * likeliest culprits is tried where the rate is not held. The same for any number of threads.
 */
export async function constraint(asked: ConstraintAsked, replicator: Replicator): Promise<ConstraintResult> {
  const { base, weeks, verdict, shippedPerDay, level } = asked,
    replications = Math.min(asked.replications, TRIAL_REPLICATIONS),
    model = weeks === null ? base.model : over(base.model, weeks.fromMin, weeks.toMin),
    sample = new Sample(planned(base.scenario, model), level),
    ofBase = shippedPerDay(base),
    table = capacity(base.model, base.scenario),
    shipped: number[] = [];
  const seen = seenIn(sample),
    sections = weeks === null ? null : judgedSections(sample),
    // Which row a trial will ask for is not known yet.
    ladders = new Map(table.rows.map((row) => [row, ladder(sample, row, ofBase)]));
  await replicator.each(
    [{ key: `${base.key} watched`, model, read: whole }],
    1,
    replications,
    1,
    (observation) => {
      sample.take(observation);
      shipped.push(ofBase(observation));
    },
  );
  const waiting = seen.value === null ? [] : likeliest(sample, seen.value),
    first = table.bottleneck === null ? [] : [thingOf(table.bottleneck)],
    things = [...first, ...waiting.map(({ thing }) => thing)],
    trials =
      verdict === 'holds'
        ? []
        : await tried(
            base,
            things,
            { shippedPerDay, base: shipped, until: weeks?.toMin ?? Infinity, level },
            replicator,
          );
  const perDay = amount(shipped, level),
    zone = Math.max(1e-9, ZONE_SHARE * perDay.mean),
    culprit = culpritOf(trials, waiting, zone);
  const found: Omit<ConstraintResult, 'sentence'> = {
    outcome:
      verdict === 'holds'
        ? 'rate asked'
        : replications < 2
          ? 'not settled'
          : culprit === null
            ? verdict === 'no rate asked' && base.scenario.programme.release.kind === 'interval'
              ? 'rate asked'
              : 'none helps'
            : 'proven',
    culprit,
    replications,
    zone,
    shippedPerDay: perDay,
    tried: trials,
    waiting: waiting.slice(0, MOST_TOLD).map(({ thing, waiting: units }) => ({ thing, units })),
    ladder: ladderOf(culprit?.thing ?? null, table, ladders),
    judged:
      weeks === null || sections === null
        ? null
        : { from: weeks.from, to: weeks.to, replications, ...resolved<Sections>(sections) },
  };
  return { ...found, sentence: constraintSentence(found) };
}

/** The model, observed from one time to another. */
const over = (model: Model, warmUp: number, end: number): Model => ({
  ...model,
  programme: { ...model.programme, warmUp, end },
});

type Sections = Omit<JudgedResult, 'from' | 'to' | 'replications'>;

const judgedSections = (sample: Sample) => ({
  stations: stations(sample),
  crews: Array.from({ length: sample.model.resources.crews }, (_, id) => ({
    ...named(sample.model, 'resources', id),
    busy: sample.share(({ crewBusy }) => crewBusy[id]),
  })),
  lanes: lanes(sample),
  carriers: carriers(sample),
  teams: teams(sample),
  feeders: feeders(sample),
  supplies: supplies(sample),
  bottlenecks: bottlenecks(sample),
});

/**
 * Of the culprit, or of what holds it up; of what has no arithmetic of its own, of what limits by arithmetic.
 */
function ladderOf(
  culprit: Thing | null,
  { rows, bottleneck }: CapacityTable,
  ladders: ReadonlyMap<CapacityTable['rows'][number], { readonly value: LadderResult | null }>,
): LadderResult | null {
  const row =
    culprit === null ? undefined : rows.find((each) => keyOfThing(thingOf(each)) === keyOfThing(culprit));
  const of = row ?? bottleneck;
  return of === null ? null : (ladders.get(of)?.value ?? null);
}

/**
 * What surely helps, and most; among those that help as much, for what most units wait. An hour more helps
 * whatever works by its calendar, so hours are named only where no single thing brings half as much.
 */
function culpritOf(trials: readonly Tried[], waiting: readonly Likely[], zone: number): Tried | null {
  const helping = trials.filter(({ gain: { low, mean } }) => low !== null && low > 0 && mean > zone),
    hours = helping.find(({ thing }) => thing.kind === 'hours'),
    things = helping.filter((each) => each !== hours && each.gain.mean >= (hours?.gain.mean ?? 0) / 2),
    most = things[0]?.gain.mean ?? 0;
  const rank = ({ thing }: Tried): number =>
    waiting.findIndex((each) => keyOfThing(each.thing) === keyOfThing(thing)) >>> 0;
  const [first] = things.filter(({ gain }) => gain.mean >= most - zone).sort((a, b) => rank(a) - rank(b)) as (
    | Tried
    | undefined
  )[];
  return first ?? hours ?? null;
}
