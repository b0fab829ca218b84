import { count, number } from '../format.js';
import { defined } from '../lists.js';
import type { RateAnswer, RateResults } from './results.js';

type Known = Omit<RateResults, 'answer' | 'ramp'> & Omit<RateAnswer, 'sentence'>;

/** The answer in a few sentences, the highest rate first. */
export function rateSentence({
  highestPerDay,
  abovePerDay,
  contradictions,
  grid,
  points,
  arithmetic,
  sure,
  plannedPerDay,
  changes,
}: Known): string {
  const at = (perDay: number) => defined(points.find((point) => point.perDay === perDay));
  const said = [
    highestPerDay === null
      ? `No rate from ${rate(grid.from)} a day on holds: at ${rate(grid.from)} a day ` +
        because(at(grid.from))
      : abovePerDay === null
        ? `${rate(highestPerDay)} a day, the highest rate looked at, holds: ${because(at(highestPerDay))}`
        : `${rate(highestPerDay)} a day is the highest rate that holds: ${because(at(highestPerDay))}; ` +
          `at ${rate(abovePerDay)} a day ${because(at(abovePerDay))}`,
  ];
  if (arithmetic !== null)
    said.push(`Arithmetic allows ${number(arithmetic.perDay)} a day (${arithmetic.name})`);
  const stop = at(abovePerDay ?? highestPerDay ?? grid.from).stops[0];
  if (stop !== undefined)
    said.push(
      `At ${rate(abovePerDay ?? highestPerDay ?? grid.from)} a day the ${stop.kind} ${stop.name} ` +
        `is the constraint (${stop.share.count} of ${count(stop.share.n, 'replication')})`,
    );
  for (const { fromPerDay, toPerDay, before, after } of changes)
    said.push(
      `Between ${rate(fromPerDay)} and ${rate(toPerDay)} a day the constraint goes from ` +
        `"${before}" to "${after}"`,
    );
  if (contradictions.length > 0)
    said.push(
      `Beware: ${contradictions.map(rate).join(', ')} a day, above one that does not hold, ` +
        `${contradictions.length === 1 ? 'holds' : 'hold'} none the less`,
    );
  if (abovePerDay !== null && plannedPerDay >= abovePerDay)
    said.push(`The plan asks for ${rate(plannedPerDay)}, which is more`);
  return (
    `${said.join('. ')}. ("Holds": at least ${number(100 * sure)} % of runs keep up, and units ` +
    'released and not yet out do not become more.)'
  );
}

function because({ verdict, keptUp, replications, why }: RateResults['points'][number]): string {
  return (
    `${keptUp.count} of ${count(replications, 'replication')} keep ` +
    `up${verdict === 'holds' ? ' and open units do not grow' : ` (${why})`}`
  );
}

/** A rate of the grid as the planner wrote it. */
export const rate = (perDay: number): string => String(perDay);
