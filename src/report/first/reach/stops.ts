import type { ConstraintResult } from '../../../study/constraint/results.js';
import { helps } from '../../../study/constraint/sentence.js';
import { capital } from '../../../study/format.js';
import { rateText } from '../../../study/planners-unit.js';
import type { ReachResults } from '../../../study/reach/results.js';
import { whyText } from '../first.js';
import { nowOf, withThem } from './told.js';

/** What stops it as it is, and what would stop it next. */
export function why(results: ReachResults): string {
  const { steps, constraint, rateUnit, outcome, goal } = results,
    { askedPerDay } = constraint,
    them = withThem(results),
    isMore = askedPerDay !== null && goal.kind === 'rate' && askedPerDay > goal.perDay,
    tried = isMore ? `tried at ${rateText(askedPerDay, rateUnit)}` : '',
    { culprit } = nowOf(results).stopped;
  const now = whyText(
    { ...constraint, ...nowOf(results).stopped, tried: culprit === null ? [] : [culprit] },
    'today',
  );
  if (steps.length === 1) return tried === '' ? now : whyText(constraint, tried);
  // What is held by no set is not said to be.
  if (outcome === 'not reached' && constraint.outcome === 'rate asked')
    return `${now} ${capital(them)}: nothing else that was tried brings more.`;
  return `${now} ${whyText(withHelpful(constraint), tried === '' ? them : `${them}, ${tried},`)}`;
}

/** Without what else was tried where none of it helps: that is told with what was tried. */
const withHelpful = (found: ConstraintResult): ConstraintResult =>
  found.culprit === null ||
  found.tried.some((each) => each.what !== found.culprit?.what && helps(each, found.zone))
    ? found
    : { ...found, tried: [found.culprit] };
