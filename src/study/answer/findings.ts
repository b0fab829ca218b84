import type { Stuck } from '../../flow/gridlock.js';
import type { Model } from '../../flow/model/model.js';
import { buildName } from '../../flow/model/orders.js';
import type { Observation } from '../../measure/observe.js';
import { count, mean, number } from '../format.js';
import { Later } from '../sample/deferred.js';
import type { Finding } from '../simulate/results.js';
import { shortfallClause } from './answer.js';
import { whoWaits } from './gridlock.js';
import { shippedOpen } from '../sections/defects.js';
import type { RateJudged } from '../programme/rate-held.js';
import type { Folded, Sample } from '../sample/sample.js';

/** What stands in the way of the build, the gravest first. */
export function findings(sample: Sample, judged: Later<RateJudged>): Later<Finding[]> {
  const kinds = [
    gridlock(sample),
    notFinished(sample),
    notHeld(sample, judged),
    loopLimits(sample),
    shippedOpen(sample),
  ];
  return new Later(() => kinds.flatMap(({ value }) => value));
}

function notHeld(sample: Sample, judged: Later<RateJudged>): Later<Finding[]> {
  return new Later(() => {
    const { value } = judged;
    return value.verdict === 'falls short'
      ? [{ kind: 'rate not held', text: shortfallClause(sample, value), replications: value.notHeld }]
      : [];
  });
}

/** Replications that ended in some way: how many, and the first of them. */
interface Ended {
  readonly count: number;
  readonly first: Pick<Observation, 'replication' | 'endedAt' | 'stuck'> | null;
}

function endedSo(sample: Sample, how: Observation['outcome']): Folded<Ended> {
  return sample.fold<Ended>({ count: 0, first: null }, (known, { outcome, replication, endedAt, stuck }) =>
    outcome === how
      ? { count: known.count + 1, first: known.first ?? { replication, endedAt, stuck } }
      : known,
  );
}

function gridlock(sample: Sample): Later<Finding[]> {
  const { model, clock } = sample,
    locked = endedSo(sample, 'gridlock');
  return new Later(() => {
    const { first, count: replications } = locked.value;
    if (first === null) return [];
    const text =
      `gridlock, on ${clock.date(first.endedAt) ?? 'a day not known'} in replication ` +
      `${first.replication}: ` +
      whoWaits(first.stuck, model.routes.names[0], (each) => stuckName(model, each));
    return [{ kind: 'gridlock', text, replications }];
  });
}

/** Own parts are called by their unit, sub-assemblies for a stock by their own number. */
function stuckName(model: Model, { number, route }: Stuck): string {
  const id = model.routes.names.indexOf(route);
  return id === 0 || model.routes.own[id] === 1 ? buildName(model, number) : String(number);
}

/**
 * A run with a quantity that came to the end of the programme, or to where calendars end, before all units
 * were out.
 */
function notFinished(sample: Sample): Later<Finding[]> {
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
  return new Later(() => {
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
function loopLimits(sample: Sample): Later<Finding[]> {
  const { thens, steps, slots } = sample.model;
  const all = Array.from(thens.limit, (limit, then) => {
    const row = steps.findThen.indexOf(then),
      slot = steps.findSlot[row];
    const step =
      steps.names[
        Array.from(steps.station.keys()).findIndex(
          (id) => steps.findStart[id] <= row && row < steps.findStart[id + 1],
        )
      ];
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
  return new Later(() =>
    all
      .filter(({ replications }) => replications.value > 0)
      .map(({ replications, found, cases, then }) => ({
        kind: 'loop limit',
        replications: replications.value,
        text: `${found}: ${number(cases.value.mean)} a replication, ${then}`,
      })),
  );
}
