import type { Observation } from '../../measure/observe.js';
import { keyOfThing, type Thing } from '../../scenario/reliefs/thing.js';
import { type CapacityRow, type CapacityTable, capacity } from '../capacity/capacity.js';
import { named } from '../lists.js';
import type { Replicator } from '../run/replicator.js';
import { type Pending, resolved } from '../sample/deferred.js';
import { type Planned, planned } from '../sample/planned.js';
import { Sample } from '../sample/sample.js';
import { bottlenecks } from '../sections/bottlenecks.js';
import { carriers, teams } from '../sections/carriers.js';
import { equipment } from '../sections/equipment.js';
import { lanes } from '../sections/lanes.js';
import { stations } from '../sections/stations.js';
import { feeders, supplies } from '../sections/supplies.js';
import { amount } from '../statistics/skewed-interval.js';
import { ladder } from './ladder.js';
import { type Likely, likeliest } from './likeliest.js';
import type { ConstraintResult, JudgedResult, Tried } from './results.js';
import { seenIn } from './seen.js';
import { constraintSentence, helps } from './sentence.js';
import { tried } from './trial.js';
import type { ConstraintAsked, Watched } from './watch.js';

/** So many of what units wait for are told. */
const MOST_TOLD = 10;

/**
 * What stops a build: the judged weeks of its first replications are looked at, and one more of each of the
 * likeliest culprits is tried where the rate is not held. The same for any number of threads.
 */
export async function constraint(watched: Watched, replicator: Replicator): Promise<ConstraintResult> {
  const { asked, observations, shipped, zone, model, until } = watched,
    { base, weeks, verdict, shippedPerDay, level } = asked,
    plan = planned(base.scenario, model),
    table = capacity(base.model, base.scenario),
    waiting = likeliest(plan, seenIn(observations));
  const trials =
    verdict === 'holds'
      ? []
      : await tried(
          base,
          [...(table.bottleneck === null ? [] : [table.bottleneck]), ...waiting.map(({ thing }) => thing)],
          { shippedPerDay, base: watched, until, level, zone },
          replicator,
        );
  if (trials.length === 0) await watched.upTo(watched.most);
  const replications = observations.length,
    perDay = amount(shipped, level),
    culprit = culpritOf(trials, waiting, zone),
    row = rowOf(culprit?.thing ?? null, table);
  const found: Omit<ConstraintResult, 'sentence'> = {
    outcome: outcomeOf(asked, replications, culprit),
    culprit,
    replications,
    zone,
    shippedPerDay: perDay,
    tried: trials,
    waiting: waiting.slice(0, MOST_TOLD),
    ladder: row === null ? null : ladder(plan, row, observations, shipped, level),
    judged:
      weeks === null
        ? null
        : { from: weeks.from, to: weeks.to, replications, ...judgedSections(plan, observations, level) },
  };
  return { ...found, sentence: constraintSentence(found) };
}

function outcomeOf(
  { verdict, base }: ConstraintAsked,
  replications: number,
  culprit: Tried | null,
): ConstraintResult['outcome'] {
  if (verdict === 'holds') return 'rate asked';
  if (replications < 2) return 'not settled';
  if (culprit !== null) return 'proven';
  return verdict === 'no rate asked' && base.scenario.programme.release.kind === 'interval'
    ? 'rate asked'
    : 'none helps';
}

type Sections = Omit<JudgedResult, 'from' | 'to' | 'replications'>;

function judgedSections(plan: Planned, observations: readonly Observation[], level: number): Sections {
  const sample = new Sample(plan, level),
    sections: Pending<Sections> = {
      stations: stations(sample),
      crews: Array.from({ length: sample.model.resources.crews }, (_, id) => ({
        ...named(sample.model, 'resources', id),
        busy: sample.share(({ crewBusy }) => crewBusy[id]),
      })),
      equipment: equipment(sample),
      lanes: lanes(sample),
      carriers: carriers(sample),
      teams: teams(sample),
      feeders: feeders(sample),
      supplies: supplies(sample),
      bottlenecks: bottlenecks(sample),
    };
  for (const each of observations) sample.take(each);
  return resolved<Sections>(sections);
}

/** The row of the culprit or, where that has no arithmetic of its own, of what limits by arithmetic. */
function rowOf(culprit: Thing | null, { rows, bottleneck }: CapacityTable): CapacityRow | null {
  const ofCulprit =
    culprit === null ? undefined : rows.find((each) => keyOfThing(each) === keyOfThing(culprit));
  return ofCulprit ?? bottleneck;
}

/**
 * What surely helps, and most; among those that help as much, for what most units wait. An hour more helps
 * whatever works by its calendar, so hours are named only where no single thing brings half as much.
 */
function culpritOf(trials: readonly Tried[], waiting: readonly Likely[], zone: number): Tried | null {
  const helping = trials.filter((each) => helps(each, zone)),
    hours = helping.find(({ thing }) => thing.kind === 'hours'),
    things = helping.filter((each) => each !== hours && each.gain.mean >= (hours?.gain.mean ?? 0) / 2),
    most = things.at(0)?.gain.mean ?? 0,
    asGood = new Map(
      things.filter(({ gain }) => gain.mean >= most - zone).map((each) => [keyOfThing(each.thing), each]),
    );
  const likeliestKey = waiting.map(({ thing }) => keyOfThing(thing)).find((key) => asGood.has(key));
  return asGood.get(likeliestKey ?? '') ?? things.at(0) ?? hours ?? null;
}
