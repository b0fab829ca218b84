import type { ReachResults } from '../../src/study/reach/results.js';
import { built, scenarioBuilt } from './built.js';
import { exactThroughput } from './exact-places.js';

/** A saturated line of exponential stations, one place each, with spaces ahead of the second and later ones. */
export interface PricedLine {
  /** Mean work of each, minutes. */
  readonly work: readonly number[];
  readonly between: readonly number[];
  readonly changes: readonly PricedChange[];
}

export interface PricedChange {
  readonly name: string;
  readonly price: number;
  readonly atMost: number;
  /** One place more at a station, one space more ahead of it, or its work at so many times as long. */
  readonly does:
    | readonly ['place' | 'space', station: number]
    | readonly ['work', station: number, times: number];
  readonly excludes?: string;
  readonly requires?: string;
}

const stationOf = (s: number): string => `s${s + 1}`;

/** As a planner writes it. */
export function lineText({ work, between, changes }: PricedLine, programme: string): string {
  const stations = work.map((_, s) => `${stationOf(s)}: {${s === 0 ? '' : ` buffer: ${between[s - 1]} `}}`),
    steps = work.map(
      (mean, s) =>
        `  - { step: t${s + 1}, at: ${stationOf(s)}, work: { exponential: { mean: ${mean} min } } }`,
    ),
    does = ({ does: [kind, s, times = 1] }: PricedChange): string =>
      kind === 'work'
        ? `changes: [{ scale: { times: ${times}, of: t${s + 1} } }]`
        : `relief: ${kind}, of: ${stationOf(s)}, at most: ${MOST}`;
  return `
scenario: priced line
programme: { ${programme} }
sites: { hall: { zone: UTC, stations: { ${stations.join(', ')} } } }
route:
${steps.join('\n')}
costs:
  currency: EUR
  changes:
${changes
  .map(
    (each) =>
      `    ${each.name}: { ${does(each).replace(String(MOST), String(each.atMost))}, price: ${each.price}` +
      (each.excludes === undefined ? '' : `, excludes: ${each.excludes}`) +
      `${each.requires === undefined ? '' : `, requires: ${each.requires}`} }`,
  )
  .join('\n')}
`;
}
const MOST = 999;

/** A set, by change how often, and what is known of it without a run: units a day of 24 hours. */
export interface ExactSet {
  readonly counts: readonly number[];
  readonly price: number;
  readonly perDay: number;
}

/** Every set that may be made, by its Markov chain. */
export function everySet({ work, between, changes }: PricedLine): ExactSet[] {
  const all = changes.reduce<number[][]>(
    (sets, { atMost }) =>
      sets.flatMap((set) => Array.from({ length: atMost + 1 }, (_, times) => [...set, times])),
    [[]],
  );
  const has = (counts: readonly number[], name: string): boolean =>
    counts[changes.findIndex((each) => each.name === name)] > 0;
  return all
    .filter((counts) =>
      changes.every(
        ({ excludes, requires }, i) =>
          counts[i] === 0 ||
          ((excludes === undefined || !has(counts, excludes)) &&
            (requires === undefined || has(counts, requires))),
      ),
    )
    .map((counts) => {
      const line = {
        rates: work.map((minutes) => 60 / minutes),
        places: work.map(() => 1),
        between: [...between],
      };
      counts.forEach((times, i) => {
        const [kind, s, factor = 1] = changes[i].does;
        if (kind === 'place') line.places[s] += times;
        else if (kind === 'space') line.between[s - 1] += times;
        else if (times > 0) line.rates[s] /= factor;
      });
      return {
        counts,
        price: counts.reduce((sum, times, i) => sum + times * changes[i].price, 0),
        perDay: 24 * exactThroughput(line),
      };
    });
}

interface ReachedMore {
  /** Of a line that is never short of units. */
  readonly hours?: number;
  /** Units that enter at the rate; left out: the line is never short of them. */
  readonly quantity?: number;
  readonly budget?: number;
  readonly atMost?: number;
  readonly replications?: number;
}

/** The study with a seed. */
export async function reached(
  line: PricedLine,
  perDay: number,
  seed: string,
  { hours = 960, quantity, ...more }: ReachedMore = {},
): Promise<ReachResults> {
  const text = lineText(
      line,
      quantity === undefined
        ? `arrivals: saturated, length: ${hours} h, warm up: 48 h`
        : `start: 2028-01-03, zone: UTC, quantity: ${quantity}, rate: { per day: ${perDay} }`,
    ),
    scenario = scenarioBuilt(text);
  return built.reachStudy({
    ...{ scenario, data: built.scenarioData(text, 'line.yaml', () => ''), file: 'line.yaml' },
    goal: { kind: 'rate', perDay },
    ...{ replications: 20, seed, workers: 1, ...more },
  });
}

/** How often each change is made on the way of a study. */
export const countsOf = ({ changes }: PricedLine, { steps }: Pick<ReachResults, 'steps'>): number[] =>
  changes.map(({ name }) => steps.reduce((sum, { made }) => sum + (made?.name === name ? made.times : 0), 0));
