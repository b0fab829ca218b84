import { z } from 'zod';
import { dayNumber } from '../calendar/date.js';
import { workingDayRule } from '../calendar/days.js';
import type { ReadTable } from '../file/csv.js';
import { saySeen } from '../file/problem.js';
import { calendarOf } from '../lookup/placed.js';
import type { Finding, Path } from '../types/problem.js';
import type { OptionMix, Order } from '../types/programme.js';
import type { Scenario } from '../types/scenario.js';
import { name } from '../values/keys.js';
import { duration, flag } from '../values/scalars.js';
import { checkOption, readBuilds } from './build-list.js';
import { standingSchema } from './opening/opening.js';
import { releaseSite } from './rates.js';

/** Keys of a programme that tell of single units. */
export const orderKeys = {
  'build list': name('the name of a CSV file')
    .optional()
    .describe(
      'A CSV file with one row per unit, path relative to the folder of the scenario file. Columns: ' +
        '`build` (your own build number, each once); and optionally `release` (the day of its release; ' +
        'without one it is released in its turn by the rate), `due` (the day at the end of which it is ' +
        'due), `stands at` (the step or lane at which it stands when the run starts), and one column ' +
        'for each option (an empty cell, or no column: drawn by chance). Example: builds.csv',
    ),
  'due after': duration
    .optional()
    .describe(
      'When a unit is due without a date of its own: this long after its release, by the clock. A ' +
        'unit of the opening counts from the start of the run. Example: 25 days',
    ),
  opening: z
    .array(standingSchema, { error: 'a list of units, such as [{ at: inspect primer, units: 2 }]' })
    .default([])
    .describe(
      'Units that stand on the floor when the run starts, each at the step that it is about to ' +
        'begin. They count in the quantity and come first in build order. Example: [{ at: inspect ' +
        'primer, units: 2 }]',
    ),
  'replace scrapped': flag
    .default(false)
    .describe(
      'True: the order of a scrapped unit is built again at once: same build number, options and due ' +
        'date; the run ends when all orders are shipped. Default: false. Example: true',
    ),
} as const;

interface Written {
  readonly buildList: string | undefined;
  readonly opening: readonly z.output<typeof standingSchema>[];
  readonly options: OptionMix;
}

/** The orders of a programme, and what is wrong with them by themselves. */
export function readOrders(
  { opening, options, buildList: file }: Written,
  readTable: ReadTable,
): { readonly list: Order[]; readonly findings: Finding[] } {
  const findings: Finding[] = [],
    list: Order[] = [];
  opening.forEach(({ at, units, build: own, due, options: chosen, open, sentBackBy, done }, i) => {
    const path: Path = ['programme', 'opening', i];
    for (const [option, value] of Object.entries(chosen))
      checkOption(option, value, options, { path: [...path, 'options', option] }, findings);
    for (let unit = 0; unit < units; unit++)
      list.push({
        build: own,
        release: undefined,
        due,
        options: chosen,
        at,
        open: open.length === 0 ? undefined : open,
        sentBackBy,
        doneMin: done,
        written: { path },
      });
  });
  if (file !== undefined) list.push(...readBuilds(file, options, readTable, findings));
  const seen = new Set<string>();
  for (const { build: own, written } of list) {
    if (own === undefined) continue;
    if (seen.has(own))
      findings.push({ ...written, wanted: 'each build number once', seen: `${saySeen(own)} again` });
    seen.add(own);
  }
  return { list, findings };
}

/**
 * Units that stand on the floor at the start, that have a day of release, and that are released by the rate
 * (undefined without a quantity).
 */
export function orderCounts(
  list: readonly Order[],
  quantity: number | undefined,
): { opening: number; dated: number; byRate: number | undefined } {
  const opening = list.filter(({ at }) => at !== undefined).length,
    dated = list.filter(({ release }) => release !== undefined).length;
  return { opening, dated, byRate: quantity === undefined ? undefined : quantity - opening - dated };
}

/** Orders that cannot be met: due or released too early or too late, released on a day off. */
export function* orderFindings(scenario: Scenario): Iterable<Finding> {
  const { start, until, orders } = scenario.programme,
    { calendar } = releaseSite(scenario);
  const works = workingDayRule(calendarOf(scenario, calendar));
  for (const { release, due, written } of orders.list) {
    const wrong = (wanted: string, seen: string): Finding => ({ ...written, wanted, seen: saySeen(seen) });
    if (due !== undefined && due < start)
      yield wrong(`a due day not before the start of the programme, ${start}`, due);
    else if (release === undefined) continue;
    else if (release < start)
      yield wrong(`a day of release not before the start of the programme, ${start}`, release);
    else if (until !== undefined && release >= until)
      yield wrong(`a day of release before the end of the run, ${until}`, release);
    else if (!works(dayNumber(release)))
      yield wrong(`a day of release that is a working day of ${calendar ?? 'the first site'}`, release);
  }
}
