import { joinIndex } from './cross-joins.js';
import type { Finding } from './problem.js';
import type { Scenario } from './scenario.js';
import {
  findsOf,
  isAlways,
  routesOf,
  sendBacksOf,
  stepsOf,
  type PlacedRoute,
  type PlacedStep,
} from './cross-routes.js';

/** Defects that nothing can find, inspections with nothing to find, loops that cannot end. */
export function defectFindings(scenario: Scenario): Finding[] {
  const routes = routesOf(scenario);
  return [...unmatched(scenario, routes), ...routes.flatMap(endless)];
}

interface Mark {
  readonly route: PlacedRoute;
  readonly placed: PlacedStep;
  readonly kind: string;
}

function unmatched(scenario: Scenario, routes: readonly PlacedRoute[]): Finding[] {
  const marks = (kinds: (placed: PlacedStep) => string[]): Mark[] =>
    routes.flatMap((route) =>
      stepsOf(route).flatMap((placed) =>
        kinds(placed)
          .filter((kind) => Object.hasOwn(scenario.defects, kind))
          .map((kind) => ({ route, placed, kind })),
      ),
    );
  const created = marks(({ step }) => Object.keys(step.creates));
  const sought = marks(({ step }) => Object.keys(step.finds));
  const furthest = new Map(routes.map((route) => [route, furthestBack(route)]));

  /** Can an item made at `maker`, or brought by what is made there, be open when `finder` looks? Also by a loop that leads back to a finder before it. */
  const meets = (maker: Mark, finder: Mark): boolean => {
    if (maker.kind !== finder.kind) return false;
    const looked = finder.placed.index,
      made = maker.route === finder.route ? maker.placed.index : joinIndex(routes, maker.route, finder.route);
    return made !== undefined && made <= Math.max(looked, furthest.get(finder.route)![looked]!);
  };
  const lost = created.filter((maker) => !sought.some((finder) => meets(maker, finder)));
  const idle = sought.filter((finder) => !created.some((maker) => meets(maker, finder)));
  return [
    ...lost.map(
      ({ placed, kind }): Finding => ({
        path: [...placed.path, 'creates', kind],
        wanted: 'a defect that this or a later step finds; no step does',
        atKey: true,
      }),
    ),
    ...idle.map(
      ({ placed, kind }): Finding => ({
        path: [...placed.path, 'finds', kind],
        wanted: 'a defect that this or an earlier step creates; no step does',
        atKey: true,
      }),
    ),
  ];
}

/** For each entry of a route: the last one from which units are sent back to it or past it; -1 if none. */
export function furthestBack(route: PlacedRoute): number[] {
  const furthest = route.entries.map(() => -1);
  for (const { from, to } of sendBacksOf(route)) furthest[to] = Math.max(furthest[to]!, from);
  for (let i = 1; i < furthest.length; i++) furthest[i] = Math.max(furthest[i]!, furthest[i - 1]!);
  return furthest;
}

/** Every unit would go round until the limit, or be scrapped. */
function endless(route: PlacedRoute): Finding[] {
  const steps = stepsOf(route);
  return steps.flatMap((placed) => {
    if (placed.step.sample !== undefined || placed.step.rework !== 'both') return [];
    return findsOf(placed).flatMap(({ path, kind, find }): Finding[] => {
      if (!isAlways(find.chance)) return [];
      const below = (why: string): Finding[] => [
        { path: [...path, 'chance'], wanted: `a chance below 100 %: ${why}`, seen: '100 %' },
      ];
      const { then } = find;
      if (then.kind === 'scrap' && kind === undefined) return below('every unit would be scrapped');
      if (then.kind !== 'back') return [];
      if (kind === undefined) return below('every unit would fail and go back until the limit');
      const target = steps.find(({ step }) => step.name === then.to)?.index ?? Infinity;
      const again = steps.some(({ step, index }) => {
        const chance = Object.hasOwn(step.creates, kind) ? step.creates[kind] : undefined;
        return (
          index >= target &&
          index <= placed.index &&
          chance !== undefined &&
          isAlways(chance) &&
          step.rework !== 'skip' &&
          step.sample === undefined &&
          Object.keys(step.when).length === 0
        );
      });
      return again
        ? below('the defect is always made again, so every unit would go back until the limit')
        : [];
    });
  });
}
