import type { Stuck } from '../flow/gridlock.js';
import type { Model } from '../flow/model.js';
import { buildName } from '../flow/model-orders.js';
import type { Observation } from '../measure/observation.js';
import { count, mean, number } from './format.js';
import type { Finding } from './results.js';
import { shortfallClause } from './summary-answer.js';
import { whoWaits } from './summary-gridlock.js';
import { shippedOpen } from './summary-quality.js';
import type { RateJudged } from './summary-rate.js';
import type { Sample } from './sample.js';

/** What stands in the way of the build, the gravest first. */
export function findings(sample: Sample, judged: RateJudged): Finding[] {
  const notHeld: Finding[] = judged.verdict === 'falls short' ? [{ kind: 'rate not held', text: shortfallClause(sample, judged), replications: judged.notHeld }] : [];
  return [...gridlock(sample), ...notFinished(sample), ...notHeld, ...loopLimits(sample), ...shippedOpen(sample)];
}

function gridlock({ observations, model, clock }: Sample): Finding[] {
  const locked = observations.filter(({ outcome }) => outcome === 'gridlock'), [first] = locked;
  if (first === undefined) return [];
  const text = `gridlock, on ${clock.date(first.endedAt) ?? 'a day not known'} in replication ${first.replication}: ${whoWaits(first.stuck, model.routes.names[0], (each) => stuckName(model, each))}`;
  return [{ kind: 'gridlock', text, replications: locked.length }];
}

/** Own parts are called by their unit, sub-assemblies for a stock by their own number. */
function stuckName(model: Model, { number, route }: Stuck): string {
  const id = model.routes.names.indexOf(route);
  return id === 0 || model.routes.own[id] === 1 ? buildName(model, number) : String(number);
}

/** A run with a quantity that came to the end of the programme, or to where calendars end, before all units were out. */
function notFinished(sample: Sample): Finding[] {
  const { model: { programme, horizon }, scenario, clock, level } = sample, { quantity } = scenario.programme;
  const late = sample.observations.filter(({ outcome }) => outcome === 'ended'), [first] = late;
  if (quantity === undefined || first === undefined) return [];
  const left = mean({ mean: late.reduce((sum, each) => sum + inside(each, quantity), 0) / late.length, low: null, high: null, level, n: late.length });
  const rest = `${left} of ${count(quantity, 'unit')} were not out, mean of ${count(late.length, 'replication')}`;
  const day = clock.date(first.endedAt) ?? 'a day not known';
  return [programme.end <= horizon && programme.end < Infinity
    ? { kind: 'not finished', text: `the programme ends on ${day} before it is finished: ${rest}`, replications: late.length }
    : { kind: 'calendar end', text: `calendars are known to ${day} only, and the programme is not finished by then: ${rest}; raise the capacity or lower the quantity`, replications: late.length }];
}

const inside = ({ shipped, scrapped }: Observation, quantity: number): number => quantity - shipped - scrapped;

/** Units that came to the limit of a rework loop, by the step that found and what it found. */
function loopLimits(sample: Sample): Finding[] {
  const { thens, steps, slots } = sample.model;
  return Array.from(thens.limit.keys()).flatMap((then): Finding[] => {
    const replications = sample.count(({ limitReached }) => limitReached[then] > 0);
    if (replications === 0) return [];
    const row = steps.findThen.indexOf(then), slot = steps.findSlot[row];
    const step = steps.names[Array.from(steps.station.keys()).findIndex((id) => steps.findStart[id] <= row && row < steps.findStart[id + 1])];
    const what = slot < 0 ? 'a failure' : slots.kindNames[slots.kind[slot]];
    const cases = sample.amount(({ limitReached }) => limitReached[then]).mean;
    return [{
      kind: 'loop limit', replications,
      text: `${step} found ${what} on units that it had already sent back ${count(thens.limit[then], 'time')} for it, the most allowed: ${number(cases)} a replication, ${thens.scrapAtLimit[then] ? 'scrapped' : 'passed on as they were'}`,
    }];
  });
}
