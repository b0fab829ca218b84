import { dayNumber, isoDate, weekday } from '../../scenario/calendar/date.js';
import { askedRate } from '../../scenario/programme/rates.js';
import { runSpan } from '../../scenario/programme/span.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { withUnitsEnough } from '../held/more-asked.js';
import { defined } from '../lists.js';

/** A scenario that runs at one rate, and the whole weeks in which it is watched. */
export interface AtRate {
  readonly scenario: Scenario;
  /** Weeks of the time series, `first` up to but without `end`; times are minutes since the start. */
  readonly first: number;
  readonly end: number;
  readonly fromMin: number;
  readonly toMin: number;
  /** Its first and last day, ISO. */
  readonly from: string;
  readonly to: string;
}

/** Why no other rate can be put into a scenario; null: it can. */
export function noRateReason({ programme: { release } }: Scenario): string | null {
  if (release.kind === 'interval') return 'one with `arrivals`, whose units come by chance';
  if (release.kind === 'saturated')
    return 'one with `arrivals: saturated`, in which a unit is always ready to enter';
  if (release.at !== undefined) return 'one with `arrivals` at clock times';
  return release.phases.length === 0 ? 'one in which each unit has a day of release of its own' : null;
}

/** Phases of the ramp up to the highest rate: what is to be held is the last of them. */
export function rampOf(scenario: Scenario): readonly { readonly from: string; readonly perDay: number }[] {
  const { phases, highest } = askedRate(scenario);
  return phases.slice(0, phases.findIndex(({ perDay }) => perDay === highest) + 1);
}

export interface RateAsked {
  readonly perDay: number;
  /**
   * First day of the last phase, ISO; undefined: that of the scenario. Phases from this day on are left out.
   */
  readonly begins?: string | undefined;
  /** Weeks from the first day of the last phase to the window at least, and length of the window. */
  readonly settleWeeks: number;
  readonly weeks: number;
}

/**
 * The scenario at a rate, units a working day: phases of its ramp above it are cut to it, the highest becomes
 * the rate and goes on to the end. The floor is empty at the start and every unit is drawn: quantity,
 * opening, build list and due dates are left out. Observation begins with the window, a Monday, so that lead
 * times and utilisations are of it alone.
 */
export function atRate(scenario: Scenario, { perDay, begins, settleWeeks, weeks }: RateAsked): AtRate {
  const ramp = rampOf(scenario),
    since = begins ?? defined(ramp.at(-1)).from;
  const phases = [
    ...ramp
      .slice(0, -1)
      .filter(({ from }) => from < since)
      .map((phase) => ({ from: phase.from, perDay: Math.min(phase.perDay, perDay) })),
    { from: since, perDay },
  ];
  const settled = dayNumber(since) + 7 * settleWeeks,
    monday = settled + ((8 - weekday(settled)) % 7),
    until = monday + 7 * weeks;
  const open = withUnitsEnough(scenario),
    changed: Scenario = {
      ...open,
      programme: {
        ...open.programme,
        release: { kind: 'rate', phases },
        until: isoDate(until),
        lengthMin: undefined,
      },
    };
  const { bucketEdges: edges } = runSpan(changed),
    end = edges.length - 1,
    first = end - weeks,
    fromMin = defined(edges[first]);
  return {
    scenario: { ...changed, programme: { ...changed.programme, warmUpMin: fromMin } },
    first,
    end,
    fromMin,
    toMin: defined(edges[end]),
    from: isoDate(monday),
    to: isoDate(until - 1),
  };
}
