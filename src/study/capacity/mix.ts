import { type Model, UNLIMITED } from '../../flow/model/model.js';
import { once } from '../../scenario/values/raw.js';
import { rowsOf } from '../lists.js';
import { sumOf } from '../statistics/sums.js';

/** More combinations of option values than this are not told apart. */
const MOST_COMBINATIONS = 256;

/**
 * A build of the unit: the chance of each value of each option. In a full combination these are 0 and 1; an
 * option that plays no part, or all of them where there are too many combinations, keep the mix of the
 * programme.
 */
export interface Build {
  readonly weight: number;
  readonly values: readonly Float64Array[];
}

export interface Mix {
  readonly builds: readonly Build[];
  /**
   * Whether every combination that plays a part has its own build; if not, options count as independent of
   * each other within the route.
   */
  readonly isExact: boolean;
}

/**
 * The combinations of the options on which conditions, work factors, chances, repair times or changeovers
 * depend; weights sum to 1.
 */
export const optionMix = once((model: Model): Mix => {
  const mixes = model.options.map((option) =>
    Float64Array.from(option.cumulative, (sum, i) => sum - (i > 0 ? option.cumulative[i - 1] : 0)),
  );
  const used = usedOptions(model);
  const ordered = orderedBuilds(model, mixes, used);
  const size = [...used].reduce((product, option) => product * mixes[option].length, 1);
  if (size > MOST_COMBINATIONS)
    return {
      builds: [
        {
          weight: 1,
          values: mixes.map((mix, option) =>
            mix.map((_, value) => sumOf(ordered, (build) => build.weight * build.values[option][value])),
          ),
        },
      ],
      isExact: false,
    };
  let builds = ordered;
  for (const option of used) {
    builds = builds.flatMap((build) =>
      [...build.values[option]]
        .map((chance, value) => ({
          weight: build.weight * chance,
          values: build.values.with(option, oneValue(mixes[option].length, value)),
        }))
        .filter(({ weight }) => weight > 0),
    );
  }
  return { builds: ordered.length === 1 ? builds : merged(builds, used), isExact: true };
});

/** Builds that are the same, from orders and from the draw, are one. */
function merged(builds: readonly Build[], used: ReadonlySet<number>): Build[] {
  const byKey = new Map<string, Build>();
  for (const { weight, values } of builds) {
    const key = [...used].map((option) => values[option].indexOf(1)).join(' '),
      known = byKey.get(key);
    byKey.set(key, { values, weight: weight + (known?.weight ?? 0) });
  }
  return [...byKey.values()];
}

/** By value of the station's changeover: the chance that a unit of the build comes to a step with it. */
export function addValues(model: Model, build: Build, step: number, times: number, to: Float64Array): void {
  const { settingOption, settingStart, settingTable } = model.steps,
    start = settingStart[step],
    option = settingOption[step];
  if (option < 0) to[settingTable[start]] += times;
  else
    build.values[option].forEach((p, value) => {
      to[settingTable[start + value]] += times * p;
    });
}

/** The build of sub-assemblies for a stock: they have the first value of every option, as in the engine. */
export function stockBuild(model: Model): Build {
  return { weight: 1, values: model.options.map((option) => oneValue(option.values.length, 0)) };
}

/**
 * The options that decide the way along a route and the repairs on it: those of its conditions, chances and
 * repair times, and those of own parts that rejoin there.
 */
export function routeOptions(model: Model, route: number): number[] {
  const { steps, routes, chances, thens, quality, repairTimes } = model;
  const used = new Set<number>();
  const from = routes.firstStep[route],
    to = routes.firstStep[route + 1];
  for (const w of rowsOf(steps.whenStart, from, to)) used.add(steps.whenOption[w]);
  const ofChance = (id: number): void => {
    for (const c of rowsOf(chances.start, id)) used.add(chances.option[c]);
  };
  const ofRepair = (id: number): void => {
    if (id >= 0) for (const r of rowsOf(repairTimes.start, id)) used.add(repairTimes.option[r]);
  };
  for (const c of rowsOf(steps.createStart, from, to)) ofChance(steps.createChance[c]);
  for (const f of rowsOf(steps.findStart, from, to)) {
    ofChance(steps.findChance[f]);
    ofRepair(thens.repairTime[steps.findThen[f]]);
  }
  for (let step = from; step < to; step++) ofRepair(quality.mendTime[step]);
  for (const o of rowsOf(steps.ownStart, from, to))
    for (const option of routeOptions(model, steps.ownRoute[o])) used.add(option);
  return [...used];
}

function usedOptions(model: Model): Set<number> {
  return new Set(
    [
      ...model.steps.whenOption,
      ...model.steps.factorOption,
      ...model.chances.option,
      ...model.repairTimes.option,
      ...model.stations.changeoverOption,
      ...model.steps.settingOption,
    ].filter((option) => option >= 0),
  );
}

function oneValue(count: number, value: number): Float64Array {
  const chances = new Float64Array(count);
  chances[value] = 1;
  return chances;
}

/**
 * Builds by what the orders of a programme say of some options: one for each combination of values given,
 * weighted by its share of the quantity. Whatever is left open keeps the shares of the options.
 * @param mixes chances of the values of each option, as drawn
 */
export function orderedBuilds(
  { programme: { orders, quantity }, options }: Model,
  mixes: readonly Float64Array[],
  used: ReadonlySet<number>,
): Build[] {
  if (orders.count === 0 || quantity >= UNLIMITED) return [{ weight: 1, values: mixes }];
  const counts = new Map<string, { units: number; values: Float64Array[] }>();
  for (let row = 0; row < orders.count; row++) {
    const given = options.map((_, option) =>
        used.has(option) ? orders.values[row * options.length + option] : -1,
      ),
      key = given.join(' ');
    const build = counts.get(key) ?? {
      units: 0,
      values: mixes.map((mix, option) =>
        given[option] < 0 ? mix : mix.map((_, value) => (value === given[option] ? 1 : 0)),
      ),
    };
    build.units++;
    counts.set(key, build);
  }
  const drawn = quantity - orders.count;
  return [
    ...[...counts.values()].map(({ units, values }) => ({ weight: units / quantity, values })),
    ...(drawn > 0 ? [{ weight: drawn / quantity, values: mixes }] : []),
  ];
}
