import { releaseCrew } from '../claims/claims.js';
import type { Place } from '../floor/place.js';
import { type SidePlace, showSides } from '../floor/side-place.js';
import { SIDE_BY_SIDE } from '../floor/states.js';
import type { Step } from '../floor/step.js';
import type { Run } from '../run.js';
import { meetsConditions } from './options.js';

/**
 * Rule 2, steps side by side on one unit in one place. Each goes its own way through needs, work and process,
 * on a side of the place. All begin at once, but one that would bring in more people than may work there
 * waits until others are over; those listed earlier are looked at first.
 */

/** The unit at `place` has come to a group. False: it has none of its steps to do. */
export function beginSideBySide(run: Run, place: Place): boolean {
  const unit = place.unit!,
    { sideSteps } = unit.step;
  place.sides.forEach((side, i) => {
    side.isDue = i < sideSteps.length && meetsConditions(run, unit, sideSteps[i]);
  });
  if (!place.sides.some(({ isDue }) => isDue)) return false;
  place.phase = SIDE_BY_SIDE;
  admit(run, place);
  return true;
}

/** The step at a side is over: the place, if it was the last one; null while others go on. */
export function finishSide(run: Run, side: SidePlace): Place | null {
  const { lead } = side;
  releaseCrew(run, side);
  side.finish();
  admit(run, lead);
  if (!lead.sides.some(({ isGoing }) => isGoing)) return lead;
  showSides(lead);
  return null;
}

function admit(run: Run, { unit, station, sides }: Place): void {
  const { sideSteps } = unit!.step;
  let room = run.model.sideBySide.people[station.id] - peopleOfTeams(run, unit!.companionBits);
  sides.forEach(({ isGoing }, i) => {
    if (isGoing) room -= peopleOf(sideSteps[i]);
  });
  sides.forEach((side, i) => {
    if (!side.isDue || peopleOf(sideSteps[i]) > room) return;
    room -= peopleOf(sideSteps[i]);
    side.begin(unit!, sideSteps[i]);
    run.toBegin.push(side);
    run.pending = true;
  });
}

const peopleOf = ({ asked }: Step): number =>
  asked.needs.reduce((sum, { resource, amount }) => (resource.isCrew ? sum + amount : sum), 0);
const peopleOfTeams = (run: Run, bits: number): number =>
  run.shop.companions.reduce(
    (sum, { bit, resource, amount }) => ((bits & bit) !== 0 && resource.isCrew ? sum + amount : sum),
    0,
  );
