import { unusualClause } from '../answer/unusual-weeks.js';
import { stopsIt } from '../constraint/sentence.js';
import { count, exact, number } from '../format.js';
import { defined } from '../lists.js';
import { loadsText } from '../loads/words.js';
import { each, inUnit, rateText } from '../planners-unit.js';
import type { RateAnswer, RateResults } from './results.js';

type Known = Omit<RateResults, 'answer' | 'ramp' | 'weakest' | 'plannedEnd' | 'lastUnit'> &
  Omit<RateAnswer, 'sentence'>;

/** The answer in a few sentences, the highest rate first. */
export function rateSentence({
  highestPerDay,
  abovePerDay,
  contradictions,
  spread,
  grid,
  points,
  arithmetic,
  sure,
  plannedPerDay,
  constraint,
  counting: { loads },
  window,
  rateUnit,
}: Known): string {
  const rate = (perDay: number): string => rateText(perDay, rateUnit);
  const because = (perDay: number): string => defined(points.find((point) => point.perDay === perDay)).why;
  const said = [
    highestPerDay === null
      ? `No rate from ${rate(grid.from)} on holds: at ${rate(grid.from)} ${because(grid.from)}`
      : abovePerDay === null
        ? `${rate(highestPerDay)}, the highest rate looked at, holds: ${because(highestPerDay)}`
        : `${rate(highestPerDay)} is the highest rate that holds: ${because(highestPerDay)}; ` +
          `at ${rate(abovePerDay)} ${because(abovePerDay)}`,
    ...spreadText(spread, grid, (perDay) => exact(inUnit(perDay, rateUnit)), rate),
  ];
  if (arithmetic !== null)
    said.push(
      `Arithmetic allows ${number(inUnit(arithmetic.perDay, rateUnit))} ${each(rateUnit)} ` +
        `(${arithmetic.name})`,
    );
  if (constraint !== null)
    said.push(`At ${rate(constraint.perDay)} ${stopsIt(constraint) ?? 'no single thing stops it'}`);
  if (contradictions.length > 0)
    said.push(
      `Beware: ${contradictions.map(rate).join(', ')}, above one that does not hold, ` +
        `${contradictions.length === 1 ? 'holds' : 'hold'} none the less`,
    );
  const marked = unusualClause(
    { unit: 'week', judged: window.weeks, weeks: window.unusual, othersPerDay: null },
    'watched',
  );
  if (marked !== null) said.push(marked);
  if (loads.length > 0)
    said.push(
      `Counted over whole loads (${loadsText(loads)})` +
        (window.isLonger ? `, in ${count(window.weeks, 'week')}, which they take` : ''),
    );
  if (abovePerDay !== null && plannedPerDay >= abovePerDay)
    said.push(`The plan asks for ${rate(plannedPerDay)}, which is more`);
  return (
    `${said.join('. ')}. ("Holds": surely at least ${number(100 * sure)} % of builds keep up, and surely ` +
    'as much is shipped in the long run when more is asked.)'
  );
}

/** Nothing of a single rate, and where all of the grid hold by whatever chance. */
function spreadText(
  { share, low, high }: RateAnswer['spread'],
  { from, to }: RateResults['grid'],
  plain: (perDay: number) => string,
  rate: (perDay: number) => string,
): string[] {
  if (from === to || low === to || high === null) return [];
  const most = high === to && to > from ? `${rate(high)} or more` : rate(high);
  const named =
    low === null ? `none, or up to ${most}` : low === high ? 'the same' : `${plain(low)} to ${most}`;
  return [`${exact(10 * share)} of 10 such studies would name ${named}`];
}
