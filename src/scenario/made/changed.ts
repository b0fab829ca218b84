import { type Changed, changedBy } from '../changes/change.js';
import { type Asked, type Changeable, saidOf, type Together, type Wrong } from '../changes/edit.js';
import { sayPath, saySeen } from '../file/problem.js';
import { bundleAt } from './clash.js';
import { madeIn, withMade } from './with-made.js';

/**
 * As `changedBy`, with the changes in it that the scenario says are made, on top of the edits: of one that
 * a made bundle edits as well nothing would be left, so it is refused.
 */
export function changedAndMade(
  base: Changeable,
  asked: readonly Asked[],
  named: Together,
  wrong: Wrong,
): Pick<Changed, 'scenario' | 'changes'> | undefined {
  let told = 0;
  const fault: Wrong = (...what) => {
    told++;
    wrong(...what);
  };
  const changed = changedBy(base, asked, named, fault);
  if (changed === undefined) return undefined;
  const { edited, edits, scale, changes } = changed;
  if (madeIn(edited.scenario).length === 0) return { scenario: changed.scenario, changes };
  const whole = { ...base, ...edited };
  for (const { path, at, of } of edits) {
    const bundle = bundleAt(whole, path);
    if (bundle !== undefined)
      fault(at, `${of}: ${sayPath(path)}`, {
        wanted: `a value that ${saySeen(bundle)}, which is made, does not change already`,
        atKey: true,
      });
  }
  if (told > 0) return undefined;
  const { scenario, findings = [] } = withMade(whole, scale);
  for (const finding of findings) saidOf(finding, edits, named, base, fault);
  return scenario === undefined || told > 0
    ? undefined
    : { scenario: { ...scenario, assumptions: base.assumptions }, changes };
}
