import { z } from 'zod';
import { edited, findPath } from './file/edit-path.js';
import { saySeen } from './file/problem.js';
import { bundleAt } from './made/clash.js';
import type { Lever } from './types/levers.js';
import type { Finding, Path } from './types/problem.js';
import type { Scenario } from './types/scenario.js';
import { type Amount, amountOf, withUnit } from './values/amount.js';
import { keys, named } from './values/keys.js';
import { valueAt } from './values/raw.js';
import { number } from './values/scalars.js';

/** More than a reader with two minutes tries. */
const MOST = 7;
/** A number of money catches slips of the pen at a thousand million. */
const MOST_MONEY = 1e9;

const AN_AMOUNT = 'a number, or a number with its unit, such as "90 min"';
const amount = z
  .union([z.number(), z.string()], { error: AN_AMOUNT })
  .refine((raw) => amountOf(raw) !== undefined, { error: AN_AMOUNT });
const path = z
  .string({ error: 'the path of a value, such as sites.hall.stations.bench.places' })
  .min(1, { error: 'the path of a value, such as sites.hall.stations.bench.places' });

const leverSchema = keys(
  {
    change: path.describe(
      'The path of the value, as in a file of what-ifs. Example: ' +
        'sites.coachworks.stations.colour booth.places',
    ),
    from: amount.describe('The least that is tried, in the unit of the value. Example: 1'),
    to: amount.describe('The most that is tried. Example: 3'),
    step: amount
      .optional()
      .describe('From one number to the next. Default: 1, in the unit of the value. Example: 0.5'),
    price: number(0, MOST_MONEY)
      .optional()
      .describe(
        'Money for each step above what the scenario has, once. Default: not known, and the page says so. ' +
          'Example: 450000',
      ),
  },
  'a lever: a map with the keys change, from and to',
);

/** The top-level key `levers`. */
export const leversSchema = named(leverSchema, 'levers by name')
  .refine((levers) => Object.keys(levers).length <= MOST, { error: `at most ${MOST} levers` })
  .transform((levers) => Object.entries(levers).map(([name, lever]): Lever => ({ name, ...lever })));

/** A lever with its value as it stands in the scenario. */
export interface SetLever {
  readonly name: string;
  readonly path: Path;
  readonly change: string;
  readonly unit: string;
  /** Numbers in that unit. */
  readonly now: number;
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly price: number | null;
}

/** What is wrong at a key of a lever. */
type Fault = Omit<Finding, 'path'> & { readonly key: keyof Lever };

/** The scenario as data, with a lever at another number of its unit. */
export const moved = (value: unknown, { path, unit }: Pick<SetLever, 'path' | 'unit'>, to: number): unknown =>
  edited(value, path, withUnit({ number: to, unit }));

/** A lever in the data of its scenario, or what is wrong with it. */
export function setLever(value: unknown, lever: Lever): SetLever | Fault {
  const found = findPath(value, lever.change);
  if (found.fault !== undefined) return { key: 'change', ...found.fault };
  if (found.isNew)
    return {
      key: 'change',
      wanted: 'a value that the scenario gives; write it there first',
      seen: 'a default',
    };
  const raw = valueAt(value, found.path),
    now = amountOf(raw);
  if (now === undefined)
    return {
      key: 'change',
      wanted: 'the path of a number, or of a number with its unit',
      seen: saySeen(raw),
    };
  const amounts = { from: lever.from, to: lever.to, step: lever.step ?? withUnit({ ...now, number: 1 }) },
    inUnit: Record<string, number> = {};
  for (const [key, written] of Object.entries(amounts) as [keyof typeof amounts, number | string][]) {
    const is = amountOf(written) as Amount;
    if (is.unit.trim() !== now.unit.trim())
      return { key, wanted: `a number as the scenario has it, ${saySeen(raw)}`, seen: saySeen(written) };
    inUnit[key] = is.number;
  }
  const { from = NaN, to = NaN, step = NaN } = inUnit;
  if (!(from <= now.number && now.number <= to && from < to))
    return {
      key: from > now.number ? 'from' : 'to',
      wanted: `a range around what the scenario has, ${saySeen(raw)}`,
      seen: `${saySeen(lever.from)} to ${saySeen(lever.to)}`,
    };
  if (!(step > 0 && step <= to - from))
    return { key: 'step', wanted: 'a step above 0 that fits the range', seen: saySeen(amounts.step) };
  return {
    name: lever.name,
    path: found.path,
    change: lever.change,
    unit: now.unit,
    now: now.number,
    from,
    to,
    step,
    price: lever.price ?? null,
  };
}

/** The levers of a sound scenario. */
export const setLevers = (value: unknown, levers: readonly Lever[]): SetLever[] =>
  levers.flatMap((lever) => {
    const set = setLever(value, lever);
    return 'key' in set ? [] : [set];
  });

const ENDS = ['from', 'to'] as const;

/**
 * What is wrong with the levers of a scenario that is sound without them; `tryOut` reads it with other
 * values.
 */
export function* leverFindings(
  value: unknown,
  scenario: Scenario,
  tryOut: (changed: unknown) => readonly Finding[],
): Iterable<Finding> {
  const { levers, costs } = scenario,
    known = new Map<string, SetLever>();
  for (const lever of levers) {
    const at = (key: keyof Lever): Path => ['levers', lever.name, key],
      set = setLever(value, lever);
    if ('key' in set) {
      const { key, ...wrong } = set;
      yield { ...wrong, path: at(key), atKey: key === 'step' && lever.step === undefined };
      continue;
    }
    const place = JSON.stringify(set.path),
      twin = known.get(place),
      bundle = bundleAt({ value, scenario }, set.path);
    if (bundle !== undefined)
      yield {
        path: at('change'),
        wanted: `a value that ${saySeen(bundle)}, which is made, does not change already`,
        seen: saySeen(lever.change),
      };
    else if (twin === undefined) known.set(place, set);
    else yield { path: at('change'), wanted: `a value that ${saySeen(twin.name)} does not move already` };
    if (lever.price !== undefined && costs === undefined)
      yield { path: at('price'), wanted: 'costs with a currency in the scenario, or no price' };
  }
  const all = [...known.values()];
  for (const end of ENDS) {
    // Reading takes a moment: one by one only where they do not go together.
    if (tryOut(all.reduce((changed, set) => moved(changed, set, set[end]), value)).length === 0) continue;
    for (const set of all) {
      const [wrong] = set[end] === set.now ? [] : tryOut(moved(value, set, set[end]));
      if (wrong !== undefined)
        yield {
          path: ['levers', set.name, end],
          wanted: `a number with which the scenario is sound; this one would need ${wrong.wanted}`,
          seen: saySeen(withUnit({ number: set[end], unit: set.unit })),
        };
    }
  }
}
