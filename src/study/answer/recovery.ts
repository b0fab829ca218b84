import { bounds, count, daysText, intervalAndCount, mean } from '../format.js';
import type { CaughtUp, Recovery } from '../programme/recovery.js';
import { type Estimate, negated } from '../statistics/estimate.js';

/** Outages, by what the planner calls them, and their time: local dates and times. */
interface Named {
  readonly names: readonly string[];
  readonly from: string;
  readonly to: string;
}

/** What outages cost the build and when it has made them good, against the same build without them. */
export function recoverySentence(of: Named & Recovery): string {
  const { names, replications, changed, behindMost, behindJudged, daysLater } = of,
    isOne = names.length === 1,
    it = isOne ? 'it' : 'them',
    runs = count(replications, 'replication'),
    { units, date } = behindMost;
  const who =
    (isOne ? `The outage "${names[0]}"` : `The other ${names.length} outages together`) +
    ` (${daysText(of)})`;
  if (changed === 0)
    return (
      `${who} ${isOne ? 'costs' : 'cost'} nothing: without ${it} every unit is shipped on the same day, ` +
      `in ${replications === 1 ? 'the replication' : `each of ${runs}`} set beside it.`
    );
  const parts = [
    `${who} ${isOne ? 'puts' : 'put'} the build ${inUnits(units)} behind the same build without ${it} ` +
      `when it is worst, on ${date} (${intervalAndCount(units)})`,
    ...(behindJudged === null ? [] : [judgedWeeks(behindJudged, it)]),
    ...(daysLater === null || daysLater.n === 0 ? [] : [`the last unit is out ${later(daysLater)}`]),
  ];
  const isSeen = (units.low ?? units.mean) > 0;
  return `${parts.join('; ')}. ${isSeen ? caughtUp(of) : 'That is not beyond chance.'}`;
}

function judgedWeeks({ units, perDay }: NonNullable<Recovery['behindJudged']>, it: string): string {
  if ([units, perDay].every(isNil)) return `the weeks judged lose nothing by ${it}`;
  const change =
    perDay.mean < 0
      ? `ship ${inBrackets(negated(perDay))} a working day more after ${it}`
      : `lose ${inBrackets(perDay)} a working day by ${it}`;
  return `the weeks judged ${change} and end ${inBrackets(units)} behind`;
}

const isNil = ({ mean: middle, low, high }: Estimate): boolean =>
  [middle, low ?? 0, high ?? 0].every((value) => value === 0);
/** Days that are no time at all: about an hour. */
const AN_HOUR = 0.05;

function later(days: Estimate): string {
  const most = Math.max(Math.abs(days.low ?? days.mean), Math.abs(days.high ?? days.mean));
  return most < AN_HOUR ? 'no later' : `${inBrackets(days, mean(days) === '1' ? ' day' : ' days')} later`;
}

const inUnits = (units: Estimate): string => `${mean(units)} ${mean(units) === '1' ? 'unit' : 'units'}`;

/** `7.7 (6.6 to 8.8)`. */
const inBrackets = (value: Estimate, unit = ''): string =>
  `${mean(value)}${unit}${value.low === null || value.low === value.high ? '' : ` (${bounds(value)})`}`;

function caughtUp({ caughtUp: { count: caught, n }, caughtUpBy: [half, most] }: Recovery): string {
  if (caught === 0)
    return n === 1
      ? 'The build has not caught up when the run ends.'
      : `None of ${n} builds has caught up when the run ends.`;
  const share = `${caught} of ${count(n, 'build')} caught up before the run ended`;
  if (half.date === null) return `${share}.`;
  return (
    `Half of the builds have caught up by ${span(half)}, ` +
    (most.date === null ? `and ${share}.` : `eight in ten by ${span(most)}.`)
  );
}

/** `2028-04-20 (2028-04-14 to 2028-04-28)`. */
function span({ date, lowDate, highDate }: CaughtUp): string {
  if (lowDate === highDate) return date ?? '';
  return `${date ?? ''} (${lowDate ?? 'not known'} to ${highDate ?? 'after the run'})`;
}
