import type { StepTimes } from '../../../records/table/clocked.js';
import { stationsOf } from '../../../scenario/lookup/placed.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import { count } from '../../format.js';
import { stepPlaces } from '../places.js';
import type { FloorSeen } from './floor.js';

/** What is to be known of times and finds that come from a log. */
export function logNotes(
  { visits, trials, from, to, old }: FloorSeen,
  times: readonly StepTimes[],
  scenario: Scenario,
  of: 'times' | 'chances' | 'learning',
): string[] {
  const some = (n: number, sentence: string): string[] => (n === 0 ? [] : [sentence]),
    days = from === to ? `On ${from}.` : `From ${from} to ${to}.`;
  if (of === 'chances')
    return [
      days,
      ...some(
        trials.unclear,
        `${count(trials.unclear, 'look')} of which the log does not say where the defect was made, though ` +
          'several steps may have made it: left out.',
      ),
    ];
  const places = stepPlaces(scenario),
    stations = stationsOf(scenario),
    steps = times.flatMap(({ step }) => places.get(step)?.step ?? []),
    failing = steps.filter(({ at }) => (stations.get(at)?.station.failures.length ?? 0) > 0),
    uneven = steps.filter(({ at, crew }) =>
      Object.keys(crew).some((name) => isUneven(scenario, stations.get(at)?.siteName ?? '', name)),
    ),
    byFactor = steps.filter(({ workFactor }) => Object.keys(workFactor).length > 0),
    names = (all: typeof steps): string => all.map(({ name }) => name).join(', ');
  return [
    `${days} Minutes from start to end in the hours of each step's station and people; of a process by ` +
      'the clock.',
    ...some(
      visits.withFinds,
      `${count(visits.withFinds, 'visit')} at which something was found: left out, with the repairs in them.`,
    ),
    ...some(
      visits.empty,
      `${count(visits.empty, 'visit')} without a minute in the hours of the step: left out.`,
    ),
    ...some(
      byFactor.length,
      of === 'learning'
        ? `Divided by the scenario's work factor for the unit's options: ${names(byFactor)}.`
        : `Steps with a work factor in the scenario, which is in these times: ${names(byFactor)}.`,
    ),
    ...some(
      failing.length,
      `Stations that fail in the scenario, so that some of these times may hold a repair: ${names(failing)}.`,
    ),
    ...some(
      uneven.length,
      'Crews that are smaller in some shifts, so that some of these times may hold a wait for people at a ' +
        `shift change: ${names(uneven)}.`,
    ),
    ...(of === 'learning' && old > 0
      ? [
          `${count(old, 'unit')} stood on the floor when the log begins, so steps may have been done ` +
            'before: units are counted from the log on, and from `built before` of the scenario.',
        ]
      : []),
  ];
}

/** Whether a crew may be smaller in one shift than in the one before. */
function isUneven(scenario: Scenario, site: string, crew: string): boolean {
  const shifts = scenario.sites[site]?.crews[crew]?.shifts;
  return shifts !== undefined && (shifts.absence > 0 || new Set(shifts.headcounts).size > 1);
}
