import { dayNumber, weekday } from './calendar-date.js';
import { workingDayRule } from './calendar-days.js';
import { releaseSite } from './release-site.js';
import type { Scenario } from './scenario.js';

/** How many units a rate asks for. Days are day numbers. */
export interface AskedRate {
  /** Units asked for on a working day; 0 before the first phase. */
  onDay(day: number): number;
  /** Rate of the day's phase, units per working day of a usual week: the same on all days of a phase. */
  usualOn(day: number): number;
  /** The highest usual rate of all phases; null without one. */
  readonly highest: number | null;
  /** Phase by phase: its first day, ISO, and its usual rate. */
  readonly phases: readonly { readonly from: string; readonly perDay: number }[];
}

/** The rate of a programme; none for other releases. Units of a week are spread over its working days from the phase's first day on. */
export function askedRate(scenario: Scenario): AskedRate {
  const { release } = scenario.programme,
    { calendar } = releaseSite(scenario),
    spec = calendar === undefined ? undefined : scenario.calendars[calendar];
  const works = workingDayRule(spec),
    daysAWeek = spec?.on.length ?? 7;
  const phases = (release.kind === 'rate' ? release.phases : []).map(({ from, perDay, perWeek }) => ({
    from,
    since: dayNumber(from),
    perDay,
    perWeek: perWeek ?? 0,
    usual: perDay ?? (perWeek ?? 0) / daysAWeek,
  }));
  const phaseOn = (day: number) => phases.findLast(({ since }) => since <= day);
  return {
    onDay(day) {
      const phase = phaseOn(day);
      if (phase === undefined || phase.perDay !== undefined) return phase?.perDay ?? 0;
      const monday = day - weekday(day) + 1;
      let days = 0;
      for (let each = Math.max(monday, phase.since); each < monday + 7; each++) if (works(each)) days++;
      return days === 0 ? 0 : phase.perWeek / days;
    },
    usualOn: (day) => phaseOn(day)?.usual ?? 0,
    highest: phases.length === 0 ? null : Math.max(...phases.map(({ usual }) => usual)),
    phases: phases.map(({ from, usual }) => ({ from, perDay: usual })),
  };
}
