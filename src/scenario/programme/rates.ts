import { z } from 'zod';
import { dayNumber, isoDate, isoWeek, mondayOf, weekday } from '../calendar/date.js';
import { workingDayRule } from '../calendar/days.js';
import { calendarOf } from '../lookup/placed.js';
import type { Site } from '../types/plant.js';
import type { Finding } from '../types/problem.js';
import type { RatePhase } from '../types/programme.js';
import type { Scenario } from '../types/scenario.js';
import { keys, together } from '../values/keys.js';
import { date, number } from '../values/scalars.js';

const perDay = number(0, 100_000)
  .optional()
  .describe(
    "Units released per working day, spread evenly over the working time of the first station's " +
      'site; may be a fraction; 0 is a pause. Example: 4',
  );
const perWeek = number(0, 500_000)
  .optional()
  .describe(
    'Units released per ISO week instead, spread evenly over its working days from `from` on; a ' +
      'week without a working day releases none. Example: 10',
  );
const from = date
  .optional()
  .describe(
    'The first day of this rate. Default: the start; only the first rate may leave it out. ' +
      'Example: 2027-06-07',
  );
const phase = keys(
  { from, 'per day': perDay, 'per week': perWeek },
  'a map with the keys from, and per day or per week',
).superRefine(
  together(({ perDay, perWeek }, wrong) => {
    if (perDay === undefined && perWeek === undefined)
      wrong(['per day'], 'missing; should be a number from 0 to 100,000, or per week');
    if (perDay !== undefined && perWeek !== undefined)
      wrong(['per week'], 'either per day or per week, not both', 'both');
  }),
);

const WEEK = 'an ISO week, such as 2027-W23';
const weeks = keys(
  {
    weeks: z
      .record(
        z.string().refine((text) => mondayOf(text) !== undefined, { error: WEEK }),
        number(0, 500_000),
        { error: 'a map from ISO weeks to units, such as { 2027-W23: 8, 2027-W24: 10 }' },
      )
      .superRefine((map, context) => {
        const names = Object.keys(map);
        if (names.length === 0) context.addIssue({ code: 'custom', message: 'at least one week' });
        names.forEach((week, i) => {
          const before = names[i - 1];
          if (before !== undefined && week <= before)
            context.addIssue({
              code: 'custom',
              path: [week],
              message: `a week after the one before, ${before}`,
              params: { seen: `"${week}"` },
            });
        });
      })
      .describe(
        'Units released in each ISO week, as by `per week` from its Monday; each rate continues ' +
          'until the next week named. Example: { 2027-W23: 8, 2027-W24: 10 }',
      ),
  },
  'a map with the key weeks',
);

// Exclusive, since a plain union would explain a wrong week by the form that lacks nothing else.
const rateForms = z.xor(
  [phase.transform((one) => [one]), z.array(phase).min(1, { error: 'at least one rate' }), weeks],
  { error: 'a rate, such as { per day: 4 }, a list of them with dates, or { weeks: { 2027-W23: 8 } }' },
);

/** How fast units are released. */
export const rate = rateForms.describe(
  'How fast units are released: one rate; a ramp as a list of rates with dates; or a ramp by ' +
    'ISO weeks, `{ weeks: { 2027-W23: 8, 2027-W24: 10 } }`. Example: [{ from: 2027-03-01, per ' +
    'day: 2 }, { from: 2027-06-07, per day: 4 }]',
);

/**
 * The phases of a rate; the first begins with the programme where it says no date or a Monday in the week of
 * the start.
 */
export function phasesOf(read: z.output<typeof rateForms>, start: string): RatePhase[] {
  if (!('weeks' in read))
    return read.map(({ from, perDay, perWeek }, i) => ({
      from: from ?? (i === 0 ? start : ''),
      perDay,
      perWeek,
    }));
  return Object.entries(read.weeks).map(([week, perWeek], i) => {
    const isFirst = i === 0 && week === isoWeek(dayNumber(start));
    return { from: isFirst ? start : isoDate(mondayOf(week) ?? NaN), perWeek };
  });
}

/** From the start or one rate to the next: nobody plans for longer, so a year is typed wrong. */
const LONGEST_WAIT_DAYS = 20 * 366;

/** Phases in order, and a release that reaches the end of the run. ISO dates compare as texts. */
export function* rateFindings({ programme }: Scenario): Iterable<Finding> {
  const { start, until, release, lengthMin } = programme,
    phases = release.kind === 'rate' ? release.phases : [],
    last = phases.at(-1);
  // Without phases each unit has a day of release of its own, or stands on the floor.
  if (last === undefined) return;
  for (const [i, { from }] of phases.entries()) {
    const path = ['programme', 'rate', i, 'from'],
      before = phases[i - 1]?.from;
    if (from === '') yield { path, wanted: 'missing; should be the first day of this rate' };
    else if (from < start)
      yield { path, wanted: `a day not before the start of the programme, ${start}`, seen: `"${from}"` };
    else if (before !== undefined && before !== '' && from <= before)
      yield { path, wanted: `a day after that of the rate before, ${before}`, seen: `"${from}"` };
    else if (dayNumber(from) - dayNumber(before ?? start) > LONGEST_WAIT_DAYS)
      yield { path, wanted: `a day at most 20 years after ${before ?? start}`, seen: `"${from}"` };
  }
  const rests = ({ perDay, perWeek }: RatePhase): boolean => (perDay ?? perWeek) === 0;
  if (phases.every(rests) || (rests(last) && until === undefined && lengthMin === undefined))
    yield {
      path: ['programme', 'rate'],
      wanted: 'a rate above 0 per day at last, so that the run ends',
      seen: '0',
    };
}

/** How many units a rate asks for. Days are day numbers. */
export interface AskedRate {
  /** Units asked for on a working day; 0 before the first phase. */
  onDay(day: number): number;
  /** Rate of the day's phase, units per working day of a usual week: the same on all days of a phase. */
  usualOn(day: number): number;
  /** The highest usual rate of all phases; null without one; and whether it was given by the week. */
  readonly highest: number | null;
  readonly highestIsPerWeek: boolean;
  /** Phase by phase: its first day, ISO, and its usual rate. */
  readonly phases: readonly { readonly from: string; readonly perDay: number }[];
}

/**
 * The rate of a programme; none for other releases. Units of a week are spread over its working days from the
 * phase's first day on.
 */
export function askedRate(scenario: Scenario): AskedRate {
  const { release } = scenario.programme,
    on = release.kind === 'rate' ? release.at?.on : undefined,
    works = workingDayRule(calendarOf(scenario, releaseSite(scenario).calendar)),
    aWeek = daysAWeek(scenario);
  const phases = (release.kind === 'rate' ? release.phases : []).map(({ from, perDay, perWeek = 0 }) => ({
    from,
    since: dayNumber(from),
    // Clock times on all weekdays that are worked.
    perDay: perDay ?? (on?.length === aWeek ? perWeek / aWeek : undefined),
    perWeek,
    usual: perDay ?? perWeek / aWeek,
  }));
  const phaseOn = (day: number) => phases.findLast(({ since }) => since <= day),
    highest = phases.length === 0 ? null : Math.max(...phases.map(({ usual }) => usual));
  return {
    onDay(day) {
      const phase = phaseOn(day);
      if (phase === undefined || phase.perDay !== undefined) return phase?.perDay ?? 0;
      if (on !== undefined) return on.includes(weekday(day)) ? phase.perWeek / on.length : 0;
      const monday = day - weekday(day) + 1;
      let days = 0;
      for (let each = Math.max(monday, phase.since); each < monday + 7; each++) if (works(each)) days++;
      return days === 0 ? 0 : phase.perWeek / days;
    },
    usualOn: (day) => phaseOn(day)?.usual ?? 0,
    highest,
    highestIsPerWeek: phases.some(({ usual, perDay }) => usual === highest && perDay === undefined),
    phases: phases.map(({ from, usual }) => ({ from, perDay: usual })),
  };
}

/** Working days of a usual week of the first station's site. */
export const daysAWeek = (scenario: Scenario): number =>
  calendarOf(scenario, releaseSite(scenario).calendar)?.on.length ?? 7;

/** The site whose working days the programme is counted in: that of the first station of the unit's route. */
export function releaseSite(scenario: Scenario): Site {
  const first = scenario.route[0];
  const sites = Object.values(scenario.sites);
  const found =
    first === undefined
      ? undefined
      : first.kind === 'lane'
        ? scenario.sites[scenario.lanes[first.lane]?.from ?? '']
        : sites.find((site) => Object.hasOwn(site.stations, first.at));
  const site = found ?? sites[0];
  if (site === undefined) throw new RangeError('sites: expected at least one site, got none; add one');
  return site;
}
