import type { Whereabouts } from '../../flow/gridlock/whereabouts.js';
import type { Model } from '../../flow/model/model.js';
import { buildName } from '../../flow/model/orders.js';
import type { Observation } from '../../measure/observe.js';
import { count, mean, number } from '../format.js';
import type { RateJudged } from '../held/rate-held.js';
import { Deferred } from '../sample/deferred.js';
import { type Folded, occurring, type Sample } from '../sample/sample.js';
import { whoHolds } from '../standstill/who-holds.js';
import { sum } from '../statistics/sums.js';
import { shortfallClause } from './answer.js';
import { whoWaits } from './gridlock.js';

export interface Finding {
  readonly kind:
    | 'gridlock'
    | 'loop limit'
    | 'not finished'
    | 'rate not held'
    | 'calendar end'
    | 'shipped open'
    | 'precision'
    | 'warm-up';
  readonly text: string;
  readonly replications: number;
}

/** What stands in the way of the build, the gravest first. */
export function findings(sample: Sample, judged: Deferred<RateJudged>): Deferred<Finding[]> {
  const kinds = [
    gridlock(sample),
    notFinished(sample),
    notHeld(sample, judged),
    loopLimits(sample),
    shippedOpen(sample),
  ];
  return new Deferred(() => kinds.flatMap(({ value }) => value));
}

function notHeld(sample: Sample, judged: Deferred<RateJudged>): Deferred<Finding[]> {
  return new Deferred(() => {
    const { value } = judged;
    return value.verdict === 'falls short'
      ? [{ kind: 'rate not held', text: shortfallClause(sample, value), replications: missedBy(value) }]
      : [];
  });
}

/** Builds that do not keep up; without weeks to judge, those that stand still. */
const missedBy = ({ holding, gridlocks }: RateJudged): number =>
  holding === null ? gridlocks : holding.keptUp.n - holding.keptUp.count;

/** Replications that ended in some way: how many, and the first of them. */
interface Ended {
  readonly count: number;
  readonly first: Pick<Observation, 'replication' | 'endedAt' | 'standstill'> | null;
}

function endedSo(sample: Sample, how: Observation['outcome']): Folded<Ended> {
  return sample.fold<Ended>(
    { count: 0, first: null },
    (known, { outcome, replication, endedAt, standstill }) =>
      outcome === how
        ? { count: known.count + 1, first: known.first ?? { replication, endedAt, standstill } }
        : known,
  );
}

function gridlock(sample: Sample): Deferred<Finding[]> {
  const { model, clock } = sample,
    locked = endedSo(sample, 'gridlock'),
    unitRoute = model.routes.names[0],
    nameOf = (each: Whereabouts): string => stuckName(model, each);
  return new Deferred(() => {
    const { first, count: replications } = locked.value;
    if (first === null) return [];
    const text =
      `gridlock, on ${clock.date(first.endedAt) ?? 'a day not known'} in replication ` +
      `${first.replication}: ` +
      whoWaits(first.standstill, unitRoute, nameOf) +
      whoHolds(first.standstill, unitRoute, nameOf);
    return [{ kind: 'gridlock', text, replications }];
  });
}

/** Own parts are called by their unit, sub-assemblies for a stock by their own number. */
function stuckName(model: Model, { number, route }: Whereabouts): string {
  const id = model.routes.names.indexOf(route);
  return id === 0 || model.routes.own[id] === 1 ? buildName(model, number) : String(number);
}

/**
 * A run with a quantity that came to the end of the programme, or to where calendars end, before all units
 * were out.
 */
function notFinished(sample: Sample): Deferred<Finding[]> {
  const {
      model: { programme, horizon },
      scenario,
      clock,
    } = sample,
    quantity = scenario.programme.quantity ?? NaN;
  const late = endedSo(sample, 'ended'),
    inside = sample.amount(({ outcome, shipped, scrapped }) =>
      outcome === 'ended' ? quantity - shipped - scrapped : NaN,
    );
  return new Deferred(() => {
    const { first, count: replications } = late.value;
    if (first === null || Number.isNaN(quantity)) return [];
    const rest =
        `${mean(inside.value)} of ${count(quantity, 'unit')} were not out, mean of ` +
        count(replications, 'replication'),
      day = clock.date(first.endedAt) ?? 'a day not known';
    return [
      programme.end <= horizon && programme.end < Infinity
        ? {
            kind: 'not finished',
            text: `the programme ends on ${day} before it is finished: ${rest}`,
            replications,
          }
        : {
            kind: 'calendar end',
            text:
              `calendars are known to ${day} only, and the programme is not finished by then: ${rest}; ` +
              'raise the capacity or lower the quantity',
            replications,
          },
    ];
  });
}

/** Units that came to the limit of a rework loop, by the step that found and what it found. */
function loopLimits(sample: Sample): Deferred<Finding[]> {
  const { thens, steps, slots } = sample.model;
  const all = Array.from(thens.limit, (limit, then) => {
    const row = steps.findThen.indexOf(then),
      slot = steps.findSlot[row],
      step = steps.names[steps.findStart.findLastIndex((first) => first <= row)];
    const what = slot < 0 ? 'a failure' : slots.kindNames[slots.kind[slot]];
    return {
      replications: sample.count(({ limitReached }) => limitReached[then] > 0),
      cases: sample.amount(({ limitReached }) => limitReached[then]),
      found:
        `${step} found ${what} on units that it had already sent back ${count(limit, 'time')} for ` +
        'it, the most allowed',
      then: thens.scrapAtLimit[then] ? 'scrapped' : 'passed on as they were',
    };
  });
  return new Deferred(() =>
    all
      .filter(({ replications }) => replications.value > 0)
      .map(({ replications, found, cases, then }) => ({
        kind: 'loop limit',
        replications: replications.value,
        text: `${found}: ${number(cases.value.mean)} a replication, ${then}`,
      })),
  );
}

/** A noted item on a unit that leaves: there was no hold after the find. */
function shippedOpen(sample: Sample): Deferred<Finding[]> {
  const { slots, steps } = sample.model,
    noted = ({ quality: { shippedNoted } }: Observation): number => sum(shippedNoted);
  const replications = sample.count((each) => noted(each) > 0),
    items = sample.amount(noted);
  const kinds = occurring<string>(
    Array.from(slots.kind, (kind, slot) => ({
      times: sample.count(({ quality: { shippedNoted } }) => shippedNoted[slot] > 0),
      row: kind < 0 ? `failure of ${steps.names[slots.step[slot]]}` : slots.kindNames[kind],
    })),
  );
  return new Deferred(() =>
    replications.value === 0
      ? []
      : [
          {
            kind: 'shipped open',
            replications: replications.value,
            text:
              'units were shipped with items that had been found and left open: ' +
              `${number(items.value.mean)} a replication (${[...new Set(kinds.value)].join(', ')}); ` +
              'a step with hold after the find would keep them back',
          },
        ],
  );
}
