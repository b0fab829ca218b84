import { companionResources, lackedOf } from '../claims/carriers.js';
import { isToBegin } from '../claims/claims.js';
import { type Claimant, OutsideClaim } from '../claims/outside.js';
import type { Resource } from '../claims/resource.js';
import { isWithout, staffedBy, type Team, teamsOf } from '../claims/teams.js';
import type { Run } from '../run.js';
import { ownTeams, wantsOf } from './wants.js';

/**
 * Whether a change of shift can still set something going when nothing else can: some place would have what
 * it lacks if everybody on the largest shift were there or, of a crew with teams, if others were.
 */
export function mayGoOn(run: Run): boolean {
  if (run.crewShifts.some(({ waiting }) => waiting.length > 0)) return true;
  run.scan++;
  for (const { pool } of run.shop.resources) {
    for (let place = pool.head; place !== null; place = place.nextWaiting) {
      // One ahead of a station waits for a place there.
      if (place instanceof OutsideClaim && place.isDown) continue;
      if (wouldDo(run, place) && !wanted(place).some(({ scarceAt }) => scarceAt === run.scan)) return true;
      keepFromLater(run, place);
    }
  }
  return false;
}

const wanted = ({ unit, asked }: Claimant): Resource[] => [
  ...asked.needs.map(({ resource }) => resource),
  ...companionResources(unit!, asked),
];

/** What a request lacks is not for later ones; of crews whose people change, another shift may tell. */
function keepFromLater(run: Run, { unit, asked }: Claimant): void {
  const short = [
    ...asked.needs.filter(({ resource, sum }) => resource.free < sum).map(({ resource }) => resource),
    ...lackedOf(unit!, asked),
  ];
  for (const resource of short)
    if (!run.crewShifts.some(({ crew }) => crew === resource)) resource.scarceAt = run.scan;
}

function wouldDo(run: Run, place: Claimant): boolean {
  const { phase, unit, asked } = place,
    teams = ownTeams(place);
  return (
    (!isToBegin(phase) || (unit!.ownOff & asked.ownParts) === 0) &&
    wantsOf(place).every(
      ({ resource, amount, own }) => own !== undefined || mayHave(run, resource, amount),
    ) &&
    teams.every((team) => mayHave(run, team.companion.resource, 0, team))
  );
}

/** Whether so many could be free in some shift for a claim or, of a team of its own, that have people. */
function mayHave(run: Run, resource: Resource, amount: number, own?: Team): boolean {
  if (!resource.isCrew) return resource.free >= amount;
  const shifts = run.crewShifts.find(({ crew }) => crew === resource),
    teams = teamsOf(run, resource),
    atWork =
      resource.engagedNow -
      teams.reduce((sum, team) => (isWithout(team) ? sum : sum + team.companion.amount), 0);
  if (shifts === undefined || teams.length === 0)
    return own === undefined ? resource.amount - resource.engagedNow >= amount : !isWithout(own);
  return shifts.possible.some(({ people, position }) => {
    const { staffed, left } = staffedBy(teams, people, position);
    return own === undefined
      ? left - atWork >= amount
      : staffed.some(({ unit, companion }) => unit === own.unit && companion === own.companion);
  });
}
