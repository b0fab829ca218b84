import type { Place } from '../floor/place.js';
import {
  OFF_SHIFT,
  SHORT_CREW,
  SIDE_BY_SIDE,
  WAIT_CREW,
  WAIT_NEEDS,
  WAIT_REPAIR,
  WAIT_REST,
} from '../floor/states.js';
import type { Step } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import type { Asked } from './asked.js';
import type { Companion } from './companion.js';
import type { Claimant } from './outside.js';
import type { Resource } from './resource.js';

/**
 * Rule 7, teams of a crew whose people change. Those who are there go to teams first, in the order in which
 * these were claimed, but later to units that wait for room. One for which they are too few stays its
 * unit's, without people; where work waits for its own shift, so does a team in the other ones.
 */

/** A team that is with a unit. */
export interface Team {
  readonly unit: Unit;
  readonly companion: Companion;
}

/** Tells each step which teams do its work; a lot is worked on by its crew alone. */
export function furnishTeams(steps: readonly Step[], companions: readonly Companion[]): void {
  const uneven = companions.filter(({ resource }) => resource.mayFallShort);
  for (const step of steps) {
    const { id } = step.group ?? step;
    if (step.station?.lotMost !== 0) continue;
    step.asked.staffWith(uneven.filter(({ from, to }) => from <= id && id <= to));
  }
}

/** A team that does the work of the step is without people. */
export const lacksTeam = ({ real }: Unit, { teamBits }: Asked): boolean => (real.unstaffed & teamBits) !== 0;

/** Whether it is of another shift than the one that is there. */
export const isAway = ({ unit, companion: { id, resource } }: Team): boolean =>
  unit.teamShift[id] !== resource.position;

/** Of a request: in the order of claims, the first team that does its work; Infinity: it has none. */
export function teamOrderAt(place: Claimant): number {
  const { real } = place.unit!,
    step = place.asked;
  let first = Infinity;
  if ((real.companionBits & step.teamBits) !== 0)
    for (const { id, bit } of step.teams)
      if ((real.companionBits & bit) !== 0) first = Math.min(first, real.teamOrder[id]);
  return first;
}

/**
 * The state of a place whose team has no people who could be with it; -1: it has some, or can. What it lacks
 * is kept from requests behind it (`marking`), but not where only other teams could give it back.
 */
export function lackingTeams(run: Run, place: Claimant, marking: boolean): number {
  const { real: unit } = place.unit!,
    step = place.asked;
  let state = -1;
  if ((unit.unstaffed & step.teamBits) === 0) return state;
  for (const companion of step.teams) {
    if ((unit.unstaffed & companion.bit) === 0) continue;
    const { resource: crew, amount } = companion,
      wanted = amount + askedAt(place, crew);
    if (isAway({ unit, companion })) state = OFF_SHIFT;
    else if (crew.free < wanted || (marking && crew.scarceAt === run.scan)) {
      crew.everLacked = true;
      state = Math.max(state, SHORT_CREW);
      if (marking && crew.onHand - withTeams(run, crew) >= wanted) crew.scarceAt = run.scan;
    }
  }
  return state;
}

const withTeams = ({ shop }: Run, crew: Resource): number =>
  shop.companions.reduce(
    (sum, { resource, amount, held, unstaffed }) =>
      resource === crew ? sum + amount * (held - unstaffed) : sum,
    0,
  );

/** Those that do the work at a place and are without people have them again. */
export function bringTeams(run: Run, { unit, asked }: Claimant): void {
  const { real } = unit!;
  for (const companion of asked.teams)
    if ((real.unstaffed & companion.bit) !== 0) bringPeople(run, { unit: real, companion });
}

/** Teams of a crew that are with units, in the order in which they were claimed. */
export function teamsOf({ shop, units }: Run, crew: Resource): Team[] {
  return shop.companions
    .filter(({ resource }) => resource === crew)
    .flatMap((companion) =>
      units.all
        .filter(({ alive, companionBits }) => alive && (companionBits & companion.bit) !== 0)
        .map((unit) => ({ unit, companion })),
    )
    .sort((a, b) => orderOf(a) - orderOf(b));
}

const orderOf = ({ unit, companion }: Team): number => unit.teamOrder[companion.id];

/** Places at which a team does the work of its unit: sides at which steps go on, or where the unit stands. */
export function workOf({ unit: { place }, companion: { bit } }: Team): Place[] {
  if (place === null || place.isDone) return [];
  const at = place.phase === SIDE_BY_SIDE ? place.sides.filter(({ isGoing }) => isGoing) : [place];
  return at.filter(({ unit }) => (unit!.step.asked.teamBits & bit) !== 0);
}

/**
 * People that a team takes: its own, and those that its step has of the crew besides; without these it is of
 * no use, so if it has none, the fewest for whom it waits.
 */
export function wantedBy(team: Team): number {
  const { amount, resource } = team.companion;
  let has = 0,
    least = Infinity;
  for (const place of workOf(team)) {
    const people = askedAt(place, resource);
    if (place.holdsCrew) has += people;
    else if (waits(place)) least = Math.min(least, people);
  }
  return amount + (has > 0 ? has : least < Infinity ? least : 0);
}

/** Its unit stands where the team has work to do, now or when something else is over. */
export const isAtWork = (team: Team): boolean => workOf(team).length > 0;

const askedAt = ({ unit }: Claimant, crew: Resource): number =>
  unit!.step.asked.needs.reduce(
    (people, { resource, amount }) => people + (resource === crew ? amount : 0),
    0,
  );

const waits = ({ isSuspended, phase }: Place): boolean =>
  isSuspended || phase === WAIT_NEEDS || phase === WAIT_REST || phase === WAIT_CREW || phase === WAIT_REPAIR;

/** Who has people, of so many that are there from now on, and who has no longer. */
export interface Allotment {
  readonly lost: readonly Team[];
  readonly coming: readonly Team[];
  /** Places of teams that keep theirs, with the people that their steps have besides. */
  readonly kept: ReadonlySet<Place>;
}
export const AS_BEFORE: Allotment = { lost: [], coming: [], kept: new Set() };

/** Which teams so many people suffice for, and who is left: first those at work, in the order of claims. */
export function staffedBy(
  teams: readonly Team[],
  people: number,
  position: number,
): { readonly staffed: readonly Team[]; readonly left: number } {
  let left = people;
  const staffed = [...teams.filter(isAtWork), ...teams.filter((team) => !isAtWork(team))].filter((team) => {
    const wanted = wantedBy(team),
      fits = team.unit.teamShift[team.companion.id] === position && wanted <= left;
    if (fits) left -= wanted;
    return fits;
  });
  return { staffed, left };
}

/** Takes the people of teams that lose them; those that are to have some wait for `bringPeople`. */
export function allot(run: Run, crew: Resource, people: number): Allotment {
  if (!crew.hasTeams) return AS_BEFORE;
  const teams = teamsOf(run, crew),
    { staffed } = staffedBy(teams, people, crew.position),
    others = teams.filter((team) => !staffed.includes(team)),
    coming = staffed.filter(isWithout),
    lost = others.filter((team) => !isWithout(team));
  if (others.some((team) => !isAway(team))) crew.everLacked = true;
  for (const { unit, companion } of lost) {
    unit.unstaffed |= companion.bit;
    companion.changeUnstaffed(1, run.now);
    crew.change(companion.amount, run.now);
  }
  return { lost, coming, kept: new Set(staffed.flatMap(workOf)) };
}

export const isWithout = ({ unit, companion }: Team): boolean => (unit.unstaffed & companion.bit) !== 0;

/** The people of the team, who are there, are with its unit again. */
export function bringPeople(run: Run, team: Team): void {
  endLack(run, team);
  team.companion.resource.change(-team.companion.amount, run.now);
}

/** A team without people has them again, or is no longer the unit's. */
export function endLack(run: Run, { unit, companion }: Team): void {
  unit.unstaffed &= ~companion.bit;
  companion.changeUnstaffed(-1, run.now);
}
