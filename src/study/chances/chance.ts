import { power } from '../../random/power.js';
import { holm } from '../statistics/difference.js';
import { type Proportion, proportion } from '../statistics/proportion.js';
import { sumOf } from '../statistics/sums.js';
import { combinedP, type EqualChances, equalChances, type Level } from './equal-chances.js';
import { counted, roughPercent } from './measured.js';

/** Units that were looked at, alike in their options, and in how many of them something was found. */
export interface CountRow {
  readonly units: number;
  /** Whole, 0..units: units with it, however often it is on one of them. */
  readonly found: number;
  /** Option and its value; an option that is not known of them is left out. */
  readonly options: Readonly<Record<string, string>>;
}

/** Units with one value of an option. */
export interface LevelChance extends Level {
  readonly chance: Proportion;
}

/** Whether a chance depends on an option. */
export interface OptionTest {
  readonly option: string;
  /** The one with most units first. */
  readonly levels: readonly LevelChance[];
  readonly test: EqualChances;
  /** Its p-value, adjusted for the number of options asked about (Holm 1979). */
  readonly adjusted: number;
}

/** What counts say of a chance. */
export interface FitOfChance {
  /** Of all units, with the Wilson interval. */
  readonly all: Proportion;
  /** Where none was found: the chance is no greater, at the level. */
  readonly most?: number;
  /** Options asked about, the smallest p-value first. */
  readonly options: readonly OptionTest[];
  /** The option that the chance depends on; null: one chance for all. */
  readonly by: OptionTest | null;
  /** In plain sentences. */
  readonly told: readonly string[];
}

/**
 * A chance from counts, by option where it differs. Each option is asked about by a test of equal chances
 * over its values; of those where the adjusted p-value is below 1 - level, the one with the smallest p
 * counts, since a unit of a scenario has the chance of one option. Of the others it is told whether they
 * differ within the values of that one, too.
 * @param rows at least one unit in all
 * @param level confidence of intervals and tests, above 0 and below 1
 */
export function fitChance(rows: readonly CountRow[], level = 0.95): FitOfChance {
  const units = sumOf(rows, (row) => row.units),
    all = proportion(
      sumOf(rows, (row) => row.found),
      units,
      level,
    ),
    names = [...new Set(rows.flatMap(({ options }) => Object.keys(options)))],
    tests = names.flatMap((option) => testOf(rows, option, level)),
    adjusted = holm(tests.map(({ test }) => test.p)),
    options = tests
      .map((one, i) => ({ ...one, adjusted: adjusted[i] ?? 1 }))
      .sort((a, b) => a.test.p - b.test.p),
    matter = options.filter((one) => one.adjusted < 1 - level),
    by = matter[0] ?? null;
  return {
    all,
    ...(all.count === 0 ? { most: mostOfNone(units, level) } : {}),
    options,
    by,
    told: [
      tellAll(all),
      ...options.map(tellOption),
      ...(by === null
        ? []
        : matter
            .slice(1)
            .map((other) => tellOther(other, by, pWithin(rows, by.option, other.option), level))),
    ],
  };
}

/**
 * Of n units without any the chance may still be up to 1 - (1 - level)^(1 / n), about 3 / n at 95 % (the rule
 * of three: Hanley & Lippman-Hand 1983, J. Am. Med. Assoc. 249(13), 1743-1745).
 */
export const mostOfNone = (n: number, level: number): number => 1 - power(1 - level, 1 / n);

function testOf(rows: readonly CountRow[], option: string, level: number): Omit<OptionTest, 'adjusted'>[] {
  const levels = levelsOf(rows, option),
    test = equalChances(levels);
  return test === null
    ? []
    : [
        {
          option,
          test,
          levels: levels.map((one) => ({ ...one, chance: proportion(one.found, one.units, level) })),
        },
      ];
}

/** Counts by value of an option, most units first; rows that do not tell the option are left out. */
function levelsOf(rows: readonly CountRow[], option: string): Level[] {
  const counts = new Map<string, { units: number; found: number }>();
  for (const { options, units, found } of rows) {
    const name = options[option];
    if (name === undefined || units === 0) continue;
    const before = counts.get(name) ?? { units: 0, found: 0 };
    counts.set(name, { units: before.units + units, found: before.found + found });
  }
  return [...counts]
    .map(([name, count]) => ({ name, ...count }))
    .sort((a, b) => b.units - a.units || (a.name < b.name ? -1 : 1));
}

/** Whether chances differ by an option among units alike in another; see `combinedP`. */
function pWithin(rows: readonly CountRow[], fixed: string, option: string): number {
  const values = new Set(rows.flatMap(({ options }) => options[fixed] ?? []));
  return combinedP(
    [...values].flatMap((value) => {
      const test = equalChances(
        levelsOf(
          rows.filter(({ options }) => options[fixed] === value),
          option,
        ),
      );
      return test === null ? [] : [test.p];
    }),
  );
}

/** So many values of an option are told. */
const SHOWN = 6;

const METHODS: Readonly<Record<EqualChances['method'], string>> = {
  exact: 'exact test of equal chances',
  'chi-square': 'chi-square test of equal chances',
  drawn: 'test of equal chances by tables drawn at random',
};

const tellAll = ({ count, n, share, low, high, level }: Proportion): string =>
  count === 0
    ? `None found in ${counted(n, 'unit')}: the chance may still be up to ` +
      `${roughPercent(mostOfNone(n, level))} (${roughPercent(level)} sure), and a scenario with ` +
      '0 % never has it.'
    : `Found in ${count} of ${counted(n, 'unit')}: ${roughPercent(share)} ` +
      `(${roughPercent(level)} interval ${roughPercent(low)} to ${roughPercent(high)}).`;

function tellOption(
  { option, levels, test, adjusted }: OptionTest,
  _: number,
  all: readonly OptionTest[],
): string {
  const shown = levels.slice(0, SHOWN).map(({ name, found, units }) => `${name} ${found} of ${units}`),
    each = [...shown, ...(levels.length > SHOWN ? [`${levels.length - SHOWN} more`] : [])].join(', '),
    several = all.length > 1 ? `, ${pText(adjusted)} as one of ${all.length} options asked about` : '';
  return `By ${option} (${each}) p is ${pText(test.p)} (${METHODS[test.method]})${several}.`;
}

function tellOther(
  { option }: OptionTest,
  { option: first }: OptionTest,
  within: number,
  level: number,
): string {
  return within < 1 - level
    ? `It differs by ${option} among units of the same ${first} too (p ${pText(within)}); a scenario ` +
        `has the chance of one option, and ${first} tells more.`
    : `Among units of the same ${first} no difference by ${option} is seen (p ` +
        `${pText(within)}): ${first} will do.`;
}

const pText = (p: number): string => (p < 0.001 ? 'below 0.001' : String(Number(p.toFixed(3))));
