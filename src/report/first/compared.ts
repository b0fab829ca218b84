import type { Offer } from '../../study/priced/offer.js';
import type { DateQuantile } from '../../study/programme/dates.js';
import { boundsOf, type Estimate, negated } from '../../study/statistics/estimate.js';
import type { MeasureCompared } from '../compare.js';
import { figure, range } from './figures.js';
import { type Line, sentences } from './first.js';
import { lastUnitLine } from './lines/last-unit.js';
import { withItsPrice } from './lines/offer.js';

/** More would not be read at a glance. */
const MOST_WORDS = 12;
/** The first of these that is short enough: a name may be long. */
export const shortest = (...texts: readonly string[]): string =>
  texts.find((text) => text.split(/\s+/).length <= MOST_WORDS) ?? texts.at(-1) ?? '';

/** Said of changes that nobody has looked at but the planner. */
export const ALLOWED = 'Whether codes and room allow the changes is not known here.';

/** What the best does to the dates and the prices, against the scenario as it is. */
export function others(
  measures: readonly MeasureCompared[],
  best: {
    readonly name: string;
    readonly lastUnit: readonly DateQuantile[];
    readonly offer?: Offer | undefined;
  },
  beside: { readonly of: string; readonly plannedEnd: string | null },
): { readonly when: Line; readonly cost: string } {
  const of = (id: string) => {
    const measure = measures.find((each) => each.id === id),
      difference = measure?.whatIfs.find(({ whatIf }) => whatIf === best.name)?.difference;
    return measure === undefined || difference === undefined ? null : { ...measure, difference };
  };
  const end = of('last unit'),
    cost = of('cost'),
    { brief, more } = lastUnitLine(best.lastUnit, beside);
  return {
    when: {
      brief,
      more: sentences(more, end === null ? '' : `That is ${changeText(end, ['sooner', 'later'])}.`),
    },
    cost:
      cost === null
        ? ''
        : `A unit is then ${changeText(cost, ['cheaper', 'dearer'])}` +
          `${withItsPrice(cost.difference, best.offer)}.`,
  };
}

/** `14 days sooner than today (13 to 16)`, or that neither is sure. */
function changeText(
  { unit, difference }: Pick<MeasureCompared, 'unit'> & { readonly difference: Estimate },
  [less, more]: readonly [string, string],
): string {
  const { low, high } = boundsOf(difference),
    by = high < 0 ? negated(difference) : difference;
  return low <= 0 && high >= 0
    ? `neither surely ${less} nor ${more} than today`
    : `${figure(by)} ${unit} ${high < 0 ? less : more} than today (${range(by)})`;
}
