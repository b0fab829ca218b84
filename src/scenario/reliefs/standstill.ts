import { allSteps, findsOf, routesOf, stationsOf } from '../lookup/placed.js';
import type { Scenario } from '../types/scenario.js';
import type { RouteEntry } from '../types/steps.js';
import { neighbours } from '../values/lists.js';
import { own } from '../values/raw.js';
import { type Relief, withEntry } from './relief.js';

/** A change that may end a standstill and is no more of one thing: `reliefs` does not try it. */
export type Remedy = Pick<Relief, 'text' | 'change'>;

/** A space of their own for units sent back to a station that has none, if units are sent back there. */
export function roomForRework(scenario: Scenario, station: string): Remedy[] {
  const placed = stationsOf(scenario).get(station),
    targets = new Set(
      allSteps(scenario).flatMap((step) =>
        findsOf(step).flatMap(({ find: { then } }) => (then.kind === 'back' ? then.to : [])),
      ),
    );
  if (placed === undefined || placed.station.reworkBuffer !== undefined) return [];
  if (!allSteps(scenario).some(({ step }) => step.at === station && targets.has(step.name))) return [];
  return [
    {
      text: `one space for rework ahead of ${station}`,
      change: inAllStages((from) =>
        withEntry(from, 'sites', placed.siteName, (site) =>
          withEntry(site, 'stations', station, (its) => ({ ...its, reworkBuffer: 1 })),
        ),
      ),
    },
  ];
}

/** Units sent back behind the stretch of a carrier or a team go on without it. */
export function withoutInRework(scenario: Scenario, name: string): Remedy[] {
  return (['carriers', 'teams'] as const)
    .filter(
      (section) =>
        own<{ readonly inRework?: string | undefined }>(scenario[section], name)?.inRework === 'again',
    )
    .map((section) => ({
      text: `in rework: without for ${name}`,
      change: inAllStages((from) =>
        section === 'carriers'
          ? withEntry(from, section, name, (its) => ({ ...its, inRework: 'without' as const }))
          : withEntry(from, section, name, (its) => ({ ...its, inRework: 'without' as const })),
      ),
    }));
}

/**
 * A station like it for each feeder that shares it with the unit or with another feeder; of a station that
 * one route alone comes back to, one for the last of its steps.
 */
export function ownStation(scenario: Scenario, station: string): Remedy[] {
  const placed = stationsOf(scenario).get(station),
    inLine = Object.values(scenario.pulseLines).some(({ stations }) => stations.includes(station));
  if (placed === undefined || inLine) return [];
  const users = routesOf(scenario).flatMap(({ feeder, entries }) => {
    const at = entries.flatMap((entry, i) => (entry.kind === 'step' && entry.at === station ? i : []));
    return at.length === 0 ? [] : [{ feeder, entries, at }];
  });
  const [first, ...others] = users,
    twice = first !== undefined && others.length === 0 && isLeftBetween(first.at);
  const split = (feeder: string | undefined, what: string, isOf: (index: number) => boolean): Remedy => {
    const name = `${station} for ${what}`;
    const moved = (entries: readonly RouteEntry[]): RouteEntry[] =>
      entries.map((entry, i) =>
        entry.kind === 'step' && entry.at === station && isOf(i)
          ? { ...entry, at: name, sideBySide: entry.sideBySide?.map((step) => ({ ...step, at: name })) }
          : entry,
      );
    return {
      text: `a station of its own for ${what}, like ${station}`,
      change: inAllStages((from) => {
        const whole = withEntry(from, 'sites', placed.siteName, (site) => {
          const { [station]: like } = site.stations;
          return like === undefined ? site : { ...site, stations: { ...site.stations, [name]: like } };
        });
        return feeder === undefined
          ? { ...whole, route: moved(whole.route) }
          : withEntry(whole, 'feeders', feeder, (its) => ({ ...its, route: moved(its.route) }));
      }),
    };
  };
  if (twice) {
    const last = first.at.at(-1) ?? 0,
      entry = first.entries[last];
    return entry?.kind === 'step' ? [split(first.feeder, entry.name, (i) => i === last)] : [];
  }
  return others.flatMap(({ feeder }) => (feeder === undefined ? [] : split(feeder, feeder, () => true)));
}

/** Whether a unit is elsewhere between two of these steps. */
const isLeftBetween = (at: readonly number[]): boolean =>
  neighbours(at).some(([before, after]) => after - before > 1);

/** Also of how it is before some changes are there. */
const inAllStages =
  (change: Relief['change']): Relief['change'] =>
  (from) => ({
    ...change(from),
    before: from.before?.map((stage) => ({ ...stage, scenario: change(stage.scenario) })),
  });
