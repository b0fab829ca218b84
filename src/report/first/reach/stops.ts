import { uncapital } from '../../../study/format.js';
import { rateText } from '../../../study/planners-unit.js';
import type { ReachResults } from '../../../study/reach/results.js';
import { type Line, sentences } from '../first.js';
import { stopsLine } from '../lines/stops.js';
import { nowOf, withThem } from './told.js';

/** What stops it as it is, and what would stop it next. */
export function stops(results: ReachResults): Line {
  const { steps, constraint, rateUnit, outcome, goal } = results,
    { askedPerDay } = constraint,
    of = withThem(results),
    isMore = askedPerDay !== null && goal.kind === 'rate' && askedPerDay > goal.perDay,
    at = isMore ? `tried at ${rateText(askedPerDay, rateUnit)}` : '',
    { stopped } = nowOf(results),
    { culprit } = stopped;
  const now = stopsLine(
    { ...constraint, ...stopped, tried: culprit === null ? [] : [culprit] },
    { of: 'today' },
  );
  if (steps.length === 1) return at === '' ? now : stopsLine(constraint, { at });
  const then = stopsLine(constraint, { of, at: at === '' ? of : `${of}, ${at}` });
  // What is held by no set is not said to be.
  return outcome === 'not reached' && constraint.outcome === 'rate asked'
    ? { brief: sentences(now.brief, `Then nothing else that was tried brings more.`), more: today(now) }
    : { brief: sentences(now.brief, then.brief), more: sentences(today(now), then.more) };
}

const today = ({ more }: Line): string => (more === '' ? '' : `Today: ${uncapital(more)}`);
