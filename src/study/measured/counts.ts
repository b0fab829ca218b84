import { FAILED } from '../../records/log/of-run.js';
import type { CountedLook, CountsRead, KnownLooks } from '../../records/table/counted.js';
import { dayText } from '../../records/table/table.js';
import { allSteps } from '../../scenario/lookup/placed.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { CountRow } from '../chances/chance.js';
import { count } from '../format.js';
import { sumOf } from '../statistics/sums.js';
import { makersOf } from './places.js';

/** Units that came to one inspection without the defect having been found on them, and those it found. */
export interface LookCounts {
  readonly step: string;
  readonly rows: readonly CountRow[];
}

/** What inspections found of one kind of defect, in turn; `failed` of one test. */
export interface DefectCounts {
  readonly defect: string;
  /** The step that makes it; null where that is not known, or of a test. */
  readonly madeAt: string | null;
  readonly looks: readonly LookCounts[];
  readonly from: string | null;
  readonly to: string | null;
}

/** What a scenario knows of a table of what inspections found. */
export const knownLooks = (scenario: Scenario): KnownLooks => ({
  steps: allSteps(scenario).map(({ step }) => step.name),
  defects: Object.keys(scenario.defects),
  kinds: new Map(
    allSteps(scenario).map(({ step }) => [
      step.name,
      [...Object.keys(step.finds), ...(step.fails === undefined ? [] : [FAILED])],
    ]),
  ),
});

/** The counts of a table by kind of defect, and what is to be told of them. */
export function tableCounts(
  { looks }: CountsRead,
  scenario: Scenario | undefined,
): { readonly counts: readonly DefectCounts[]; readonly notes: readonly string[] } {
  let again = 0;
  const counts = grouped(looks, ({ defect }) => defect).flatMap(([defect, all]): DefectCounts[] => {
    const bySteps = grouped(all, ({ step }) => step);
    if (defect === FAILED)
      return bySteps.map(([step, each]) => ({
        ...{ defect, madeAt: null, looks: [{ step, rows: summed(each) }] },
        ...daysOf(each),
      }));
    const makers = scenario === undefined ? [] : makersOf(scenario, defect),
      order = makers.flatMap((maker) => maker.looks.map(({ step }) => step)),
      placeOf = (step: string): number => (order.includes(step) ? order.indexOf(step) : order.length),
      inTurn = bySteps.sort(([a], [b]) => placeOf(a) - placeOf(b));
    const found = new Set<string>();
    let before: readonly CountRow[] | undefined;
    const results = inTurn.map(([step, each]): LookCounts => {
      const known = each.filter(({ unit }) => unit !== ''),
        first = firstOfUnits(known),
        kept = [...first.filter(({ unit }) => !found.has(unit)), ...each.filter(({ unit }) => unit === '')],
        rows = summed(kept);
      again += known.length - first.length;
      for (const look of first) if (look.found > 0) found.add(look.unit);
      const atRisk = before === undefined || known.length > 0 ? rows : withoutFound(rows, before);
      before = rows;
      return { step, rows: atRisk };
    });
    return [
      {
        defect,
        madeAt: makers.length === 1 ? (makers[0]?.step ?? null) : null,
        looks: results,
        ...daysOf(all),
      },
    ];
  });
  return {
    counts,
    notes:
      again === 0
        ? []
        : [`${count(again, 'row')} of units that came to an inspection again: only the first look counts.`],
  };
}

export const unitsIn = (rows: readonly CountRow[]): number => sumOf(rows, ({ units }) => units);

/** The first look at each unit. */
function firstOfUnits(looks: readonly CountedLook[]): CountedLook[] {
  const seen = new Set<string>();
  return looks.filter(({ unit }) => !seen.has(unit) && seen.add(unit));
}

/** Rows with the same options in one. */
function summed(looks: readonly CountedLook[]): CountRow[] {
  return grouped(looks, ({ options }) => JSON.stringify(options)).map(([, all]) => ({
    units: sumOf(all, ({ units }) => units),
    found: sumOf(all, (look) => look.found),
    options: all[0]?.options ?? {},
  }));
}

/**
 * Where an inspection counts the same units as the one before it, those on which it was found there come
 * without it.
 */
function withoutFound(rows: readonly CountRow[], before: readonly CountRow[]): CountRow[] {
  return rows.map((row) => {
    const same = before.find(({ options }) => JSON.stringify(options) === JSON.stringify(row.options));
    return same?.units === row.units && row.units - same.found >= row.found
      ? { ...row, units: row.units - same.found }
      : row;
  });
}

function daysOf(looks: readonly CountedLook[]): Pick<DefectCounts, 'from' | 'to'> {
  const days = looks.map(({ at }) => at);
  return days.length === 0 || days.some((day) => Number.isNaN(day))
    ? { from: null, to: null }
    : {
        from: dayText(days.reduce((a, b) => Math.min(a, b))),
        to: dayText(days.reduce((a, b) => Math.max(a, b))),
      };
}

function grouped<Each>(all: readonly Each[], key: (each: Each) => string): [string, Each[]][] {
  const groups = new Map<string, Each[]>();
  for (const each of all) {
    const group = groups.get(key(each)) ?? [];
    group.push(each);
    groups.set(key(each), group);
  }
  return [...groups];
}
