import { GRIDLOCK } from '../../flow/engine.js';
import { floorLog } from '../../flow/floor-log.js';
import { type Plan, prepare } from '../../flow/plan.js';
import { eventsOfRun } from '../../records/log/of-run.js';
import { LEVEL, wholeNumber } from '../asked.js';
import { judge } from './judge.js';
import type { ValidateResults } from './results.js';
import { measuresOf } from './seen/measures.js';
import { peopleMeasures, peopleOf } from './seen/people-compared.js';
import { LogWatch } from './seen/watch.js';
import { lastStepOf, RealLog, withShipping } from './start/log-read.js';
import { FirstLook, periodOf, tellsOf } from './start/period.js';
import { standingOrder } from './start/standing-orders.js';
import { asLogged, earlierThan, modelFrom } from './start/standing-start.js';
import { summaryOf } from './summary.js';
import type { OneLog, SideBySide, ValidateOptions } from './types.js';

const LEAST_REPLICATIONS = 10;

/**
 * Holds a scenario against a log of the floor: the same estimators run over both, in the same period, from
 * the same standing start, with the same entries and on the same calendars (Sargent 2013, J. Simulation 7,
 * 12-24; Law 2015, sec. 5.6; from memory). Rejects with a RangeError for a log or a period that cannot be
 * compared.
 */
export async function validateStudy(options: ValidateOptions): Promise<ValidateResults> {
  return summaryOf(options, await besideLog(options));
}

export async function besideLog(options: ValidateOptions): Promise<SideBySide> {
  const { scenario, log, replications, level = LEVEL } = options;
  wholeNumber('replications', replications, LEAST_REPLICATIONS);
  const first = scenario.route[0],
    looked = new FirstLook(first === undefined ? '' : first.kind === 'lane' ? first.lane : first.name);
  const seen = await log.read((events) => {
    for (const event of events) looked.take(event);
  });
  if (seen?.isInOrder === false)
    throw new RangeError(
      'log: expected rows about in order of time, got some far out of it; sort it by time',
    );
  const period = periodOf(looked, scenario.programme.zone, options.from, options.to),
    begun = modelFrom(scenario, period.fromDay, period.toDay),
    real = new RealLog(
      begun,
      earlierThan(scenario, period.fromDay),
      prepare(begun.model).calendars,
      period,
      looked,
    );
  await log.read((events) => {
    for (const event of events) real.take(event);
  });
  real.end();
  if (real.entries.length + (real.opening?.placed.length ?? 0) === 0)
    throw new RangeError('log: expected units on the floor in the period, got none; give another period');
  const opening = real.opening ?? { placed: [], notes: [] },
    standing = opening.placed.map((unit) => standingOrder(unit, begun.model)),
    start = modelFrom(scenario, period.fromDay, period.toDay, standing),
    model = asLogged(start, opening, real.entries, period.to, real.before),
    plan = prepare(model),
    simulated: OneLog[] = [];
  let gridlocks = 0;
  for (let r = 1; r <= replications; r++) {
    options.signal?.throwIfAborted();
    const { one, isGridlock } = play(plan, real, options.seed, r, looked);
    simulated.push(one);
    if (isGridlock) gridlocks++;
    options.onReplication?.(r, replications);
    // Lets whoever waits be heard.
    await Promise.resolve();
  }
  const own = oneLog(real.frame, real.watch, looked),
    people = peopleMeasures(
      model,
      own.people,
      simulated.map((each) => each.people),
    ),
    judged = judge(
      [...own.measures, ...people.real],
      simulated.map((each, i) => [...each.measures, ...(people.simulated[i] ?? [])]),
      level,
    );
  return { real, period, read: seen, kinds: looked, simulated, gridlocks, judged, most: people.most };
}

/** One replication, and what is estimated of its log. */
function play(
  plan: Plan,
  { frame }: RealLog,
  seed: string,
  replication: number,
  looked: FirstLook,
): { one: OneLog; isGridlock: boolean } {
  const { happenings, run } = floorLog(plan, seed, replication),
    watch = new LogWatch({ ...frame, model: plan.model, calendars: plan.calendars }),
    last = lastStepOf(plan.model, looked.steps);
  for (const told of eventsOfRun(happenings, plan.model, frame.origin))
    if (tellsOf(looked, told)) for (const event of withShipping(told, looked.kinds, last)) watch.take(event);
  return { one: oneLog(frame, watch.end(), looked), isGridlock: run.outcome === GRIDLOCK };
}

/** Of a log that tells of no finds nothing is said of them. */
function oneLog(frame: RealLog['frame'], watch: LogWatch, { kinds }: FirstLook): OneLog {
  const all = measuresOf(frame, watch);
  return {
    measures: kinds.has('find') ? all : all.filter(({ topic }) => topic !== 'quality' && topic !== 'finds'),
    people: peopleOf(frame, watch),
    watch,
  };
}
