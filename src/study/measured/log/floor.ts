import { prepare } from '../../../flow/plan.js';
import { dayText } from '../../../records/table/table.js';
import { WallClock } from '../../../records/table/wall-clock.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import { type Frame, stepIds } from '../../validate/seen/frame.js';
import { lastStepOf, withShipping } from '../../validate/start/log-read.js';
import { FirstLook, periodOf } from '../../validate/start/period.js';
import { modelFrom } from '../../validate/start/standing-start.js';
import type { LogSource } from '../../validate/types.js';
import { Trials } from './trials.js';
import { Visits } from './visits.js';

/** What is read of a floor log: times of steps, and what inspections found. */
export interface FloorSeen {
  readonly visits: Visits;
  readonly trials: Trials;
  readonly hasFinds: boolean;
  readonly read: Awaited<ReturnType<LogSource['read']>>;
  /** First and last day, by the clock of the programme's zone. */
  readonly from: string;
  readonly to: string;
  /** Units that stood on the floor when the log begins. */
  readonly old: number;
}

export interface FloorAsked {
  /** First and last day, ISO dates; by default those of the log. */
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  /** Options by which times and finds are told apart; by default all. */
  readonly by: readonly string[];
}

/**
 * Reads a floor log: once for its days, once for what happens on them. Visits that begin on the days count,
 * to their ends, and looks that end on them; days before tell how often a step had been done by then.
 * @throws RangeError where the log has nothing of the days, or is far out of order
 */
export async function readFloor(scenario: Scenario, log: LogSource, asked: FloorAsked): Promise<FloorSeen> {
  const first = scenario.route[0],
    look = new FirstLook(first === undefined ? '' : first.kind === 'lane' ? first.lane : first.name),
    read = await log.read((events) => {
      for (const event of events) look.take(event);
    });
  if (read?.isInOrder === false)
    throw new RangeError(
      'log: expected rows about in order of time, got some far out of it; sort it by time',
    );
  const { zone, options } = scenario.programme,
    clock = new WallClock(zone),
    dayOf = (at: number): string => dayText(at + clock.offsetAt(at)),
    isEmpty = !(look.last >= look.first),
    from = asked.from ?? (isEmpty ? undefined : dayOf(look.first)),
    to = asked.to ?? (isEmpty ? undefined : dayOf(look.last)),
    period = periodOf(look, zone, from, to),
    { model, origin } = modelFrom(scenario, period.fromDay, period.toDay),
    last = lastStepOf(model),
    frame: Frame = {
      ...{ model, origin, calendars: prepare(model).calendars, from: period.from, to: period.to },
      fromDay: period.fromDay,
      ...{ workingDays: 1, stepOf: stepIds(model), old: new Set<string>() },
    },
    by = asked.by.length > 0 ? asked.by : Object.keys(options),
    visits = new Visits(scenario, frame, (at) => at + clock.offsetAt(at), by),
    trials = new Trials(scenario, frame, by);
  await log.read((events) => {
    for (const logged of events)
      for (const event of withShipping(logged, look.kinds, last)) {
        visits.take(event);
        trials.take(event, visits.optionsOf(event));
      }
  });
  return {
    ...{ visits, trials, read, hasFinds: look.kinds.has('find'), old: look.old },
    ...{ from: from ?? '', to: to ?? '' },
  };
}
