import type { CalendarSpec } from '../../scenario/types/calendars.js';
import type { Lane, Supply } from '../../scenario/types/plant.js';
import type { Programme, ReleaseByRate } from '../../scenario/types/programme.js';
import type { Condition, StationStep } from '../../scenario/types/steps.js';
import { count, exact, number } from '../../study/format.js';
import type { MappedStep, Trip } from '../../study/route/types.js';

const DAY_NAMES = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

/** `06:30`. */
const clock = (minute: number): string =>
  `${String(Math.floor(minute / 60) % 24).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

/** `40 min`, `3.5 h`, `2.1 days`. */
export const duration = (minutes: number): string =>
  minutes < 120
    ? `${number(minutes)} min`
    : minutes < 48 * 60
      ? `${number(minutes / 60)} h`
      : `${number(minutes / 1440)} days`;

/** `Mon-Fri 06:30-15:00, 15:00-23:30`; day and night where there is no calendar. */
export function hoursText(calendar: CalendarSpec | undefined): string {
  if (calendar === undefined) return 'day and night';
  const { on, hours } = calendar,
    shifts = hours.map(({ startMin, endMin }) => `${clock(startMin)}-${clock(endMin)}`);
  return `${daysText(on)} ${shifts.join(', ')}`;
}

/** Weekdays, 1 = Monday: `Mon-Thu`, `Mon, Wed`, `every day`. */
function daysText(on: readonly number[]): string {
  const days = [...on].sort((a, b) => a - b),
    first = days[0] ?? 1,
    last = days.at(-1) ?? 7,
    name = (day: number): string => DAY_NAMES[day - 1] ?? '';
  if (days.length === 7) return 'every day';
  return days.length > 2 && last - first === days.length - 1
    ? `${name(first)}-${name(last)}`
    : days.map(name).join(', ');
}

/** `3 trucks of 3`, and when they leave. */
export function laneTexts({ trucks, capacity, leaves }: Lane, trip: Trip): string[] {
  const leave =
    leaves.kind === 'full'
      ? 'leaves when full'
      : leaves.kind === 'full or wait'
        ? `leaves when full or after ${duration(leaves.longestWaitMin)}`
        : `leaves at ${leaves.atMin.map(clock).join(', ')}`;
  const times = [
    ['load', trip.loadMin],
    ['drive', trip.driveMin],
    ['unload', trip.unloadMin],
    ['back', trip.returnMin],
  ] as const;
  return [
    `${count(trucks, 'truck')}, ${count(capacity, 'unit')} each; ${leave}`,
    times.map(([what, minutes]) => `${what} ${duration(minutes)}`).join(', '),
  ];
}

/** The lanes by which units are sent back to another site: `, by return to coachworks`. */
export const byText = (lanes: readonly string[]): string =>
  lanes.length === 0 ? '' : `, by ${lanes.join(' and ')}`;

/** `22 every 7 days`. */
export function rhythm({ order }: Supply): string {
  switch (order.kind) {
    case 'reorder':
      return `${exact(order.lot)} more when stock falls to ${exact(order.level + order.safetyStock)}`;
    case 'dates':
      return `${order.dates.length} dated ${order.dates.length === 1 ? 'delivery' : 'deliveries'}`;
    case 'rhythm':
      return `${exact(order.lot)} every ${order.everyDays === 1 ? 'day' : `${number(order.everyDays)} days`}`;
  }
}

/** `480 units: 1 a day from 2027-08-16, 2 a day from ..`. */
export function releaseText({ quantity, release, start }: Programme): string {
  const from = quantity === undefined ? '' : `, from ${start}`;
  const units = quantity === undefined ? 'Units' : count(quantity, 'unit');
  switch (release.kind) {
    case 'rate':
      if (release.at !== undefined) return `${units}: ${clockText(release, start)}`;
      return release.phases.length === 0
        ? `${units}, each on a day of its own, from ${start}`
        : `${units}: ${release.phases
            .map(({ from, perDay, perWeek }) =>
              perDay === undefined
                ? `${number(perWeek ?? 0)} a week from ${from}`
                : `${number(perDay)} a day from ${from}`,
            )
            .join(', ')}`;
    case 'interval':
      return `${units} as they come${from}`;
    case 'saturated':
      return `${units} whenever the first station has room${from}`;
  }
}

/** `2 at 07:00, 11:30, Mon-Fri, from 2027-03-01`. */
function clockText({ phases: [phase], at }: ReleaseByRate, start: string): string {
  const { minutes = [], on } = at ?? {},
    perDay = phase?.perDay ?? (phase?.perWeek ?? 0) / (on?.length ?? 1),
    days = on === undefined ? '' : `, ${daysText(on)}`;
  return `${number(perDay / minutes.length)} at ${minutes.map(clock).join(', ')}${days}, from ${start}`;
}

/** `only with bands`, `only if colour is red or white and pump is large`. */
export function whenText(when: Condition): string {
  const [first, ...more] = Object.entries(when);
  if (first === undefined) return '';
  const [option, values] = first,
    [value = '', ...others] = values;
  if (more.length === 0 && others.length === 0 && (value === 'yes' || value === 'no'))
    return `only ${value === 'yes' ? 'with' : 'without'} ${option}`;
  return `only if ${[first, ...more].map(([name, any]) => `${name} is ${any.join(' or ')}`).join(' and ')}`;
}

/** A step as the map names it: `mask, only with bands`, `road test, 1 unit in 5`. */
export function stepText({ name, when, sample, rework, hold }: StationStep): string {
  const notes = [
    ...(Object.keys(when).length > 0 ? [whenText(when)] : []),
    ...(sample === undefined ? [] : [`1 unit in ${sample.oneIn}`]),
    ...(rework === 'only' ? ['only if sent back'] : rework === 'skip' ? ['not if sent back'] : []),
    ...(hold === undefined || name === 'hold' ? [] : ['hold']),
  ];
  return [name, ...notes].join(', ');
}

/** All of a step on one line: name, people, equipment, mean times, what it takes. */
export function stepInFull({ step, workMin, unattendedMin }: MappedStep): string {
  const people = Object.entries(step.crew).map(([crew, heads]) => `${heads} ${crew}`),
    equipment = Object.entries(step.equipment ?? {}).map(([name, { count: pieces }]) => `${pieces} ${name}`),
    parts = Object.entries(step.parts).map(([part, each]) => (each === 'own' ? part : `${each} ${part}`)),
    passes = step.passes === undefined || step.passes.count === 1 ? [] : [`${step.passes.count} passes`];
  const told = [
    ...people,
    ...equipment,
    ...passes,
    ...(workMin > 0 ? [`work ${duration(workMin)}`] : []),
    ...(unattendedMin > 0 ? [`unattended ${duration(unattendedMin)}`] : []),
    ...(parts.length > 0 ? [`takes ${parts.join(', ')}`] : []),
    ...(step.takesOff.length > 0 ? [`takes off ${step.takesOff.join(', ')}`] : []),
  ];
  return told.length === 0 ? stepText(step) : `${stepText(step)}: ${told.join(', ')}`;
}

/** `8 in 100`; what is little or nearly all is not rounded away: `1 in 300`, `all but 1 in 300`. */
export function inHundred(share: number): string {
  if (share <= 0) return 'none';
  if (share >= 1) return 'all';
  if (share < HARDLY) return 'hardly any';
  if (share > 1 - HARDLY) return 'nearly all';
  if (share >= 0.995) return `all but ${oneIn(1 - share)}`;
  return share < 0.005 ? oneIn(share) : `${Math.round(100 * share)} in 100`;
}

/** Below it a share is as good as none. */
export const HARDLY = 1 / 2000;

/** With one digit that says something. */
const oneIn = (share: number): string => `1 in ${exact(Number((1 / share).toPrecision(1)))}`;

/** Of spaces without a limit. */
export const UNLIMITED_TEXT = '∞';
