import { FAILED } from '../../records/log/of-run.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { LEVEL } from '../asked.js';
import { type FitOfChance, fitChance } from '../chances/chance.js';
import { basisOf, percentText, roughPercent, type Source, type Written } from '../chances/measured.js';
import { type Bounded, inTurn, oneLook, say } from '../chances/two-looks.js';
import { writtenBounded, writtenChance } from '../chances/written.js';
import { proportion } from '../statistics/proportion.js';
import { foundByOption } from './by-option.js';
import { type DefectCounts, type LookCounts, unitsIn } from './counts.js';
import { type Detection, detectionAt, takenOf, turnAt } from './detection.js';
import { type Entry, entryOf } from './entry.js';
import { sourceOf, testResult } from './failed.js';
import { type ChancePlace, type MakerPlace, makersOf, pathOf } from './places.js';
import type { ChanceResult, LookResult } from './results.js';

/**
 * What counts of inspections say, kind by kind.
 * @param scenario where the values have their places; it also says what share the last inspection finds,
 *   which counts cannot tell
 * @param file of the records, for the basis
 */
export function chanceResults(
  counts: readonly DefectCounts[],
  scenario: Scenario | undefined,
  file: string,
): ChanceResult[] {
  const kinds = [...new Set(counts.map(({ defect }) => defect))];
  return kinds.flatMap((kind) => {
    const ofKind = counts.filter(({ defect }) => defect === kind);
    return kind === FAILED
      ? ofKind.map((each) => testResult(each, scenario, file, counts.length))
      : kindResults(kind, ofKind, scenario, file, counts.length);
  });
}

function kindResults(
  kind: string,
  all: readonly DefectCounts[],
  scenario: Scenario | undefined,
  file: string,
  looked: number,
): ChanceResult[] {
  const makers = scenario === undefined ? [] : makersOf(scenario, kind),
    places = new Map(makers.flatMap(({ looks }) => looks.map((look) => [look.step, look] as const))),
    order = [
      ...new Set([...places.keys(), ...all.flatMap(({ looks }) => looks.map(({ step }) => step))]),
    ].filter((step) => all.some(({ looks }) => looks.some((look) => look.step === step))),
    shares = new Map<string, number>(),
    detections = new Map<string, Detection>();
  // From the last inspection back: what it finds is asked of the one before.
  for (const step of order.toReversed())
    detections.set(step, detectionAt(step, all, places.get(step), shares));
  const written = new Set<string>();
  return all.map((counts) =>
    resultOf(counts, {
      ...{ scenario, makers, places, shares, detections, source: sourceOf(file, counts) },
      ...{ isOnly: all.length === 1, looked },
      /** Once, though several steps may make it. */
      isFirst: (step) => {
        const isNew = !written.has(step);
        written.add(step);
        return isNew;
      },
    }),
  );
}

interface Known {
  readonly scenario: Scenario | undefined;
  readonly makers: readonly MakerPlace[];
  readonly places: ReadonlyMap<string, ChancePlace>;
  readonly shares: ReadonlyMap<string, number>;
  readonly detections: ReadonlyMap<string, Detection>;
  readonly source: Source;
  readonly isFirst: (step: string) => boolean;
  /** So many chances are looked at in all. */
  readonly looked: number;
  /** No other step makes it. */
  readonly isOnly: boolean;
}

function resultOf(counts: DefectCounts, known: Known): ChanceResult {
  const { defect, madeAt, from, to } = counts,
    { scenario, makers, places, shares, detections, source } = known,
    looks = counts.looks
      .filter(({ rows }) => unitsIn(rows) > 0)
      .map(
        ({ step, rows }): LookResult => ({
          ...{ step, found: fitChance(rows, LEVEL), finds: detections.get(step)?.finds ?? null },
        }),
      ),
    maker = makers.find(({ step }) => step === madeAt),
    seen = foundByOption(
      counts.looks,
      maker !== undefined && maker.chance.byOption.length > 0 ? 1 : known.looked,
    ),
    found = seen?.found ?? null,
    told = [
      // The table has the others.
      ...looks.slice(0, 1).flatMap((look) => (look.found.all.count === 0 ? look.found.told.slice(0, 1) : [])),
      ...(seen?.told ?? []),
    ],
    notWritten: string[] = [],
    entries: Entry[] = [];
  looks.forEach(({ step, finds }, i) => {
    if (!known.isFirst(step)) return;
    const place = places.get(step),
      detection = detections.get(step);
    told.push(...(detection?.told ?? []));
    if (finds === null || detection === undefined) {
      if (i > 0 && place !== undefined)
        told.push(`What ${step} misses no later inspection shows: its chance stays as the scenario has it.`);
      return;
    }
    if (detection.isFew) return;
    const path =
      place?.path ?? (scenario === undefined ? `${pathOf(step)}.finds.${defect}.chance` : undefined);
    if (path === undefined)
      notWritten.push(`${step} does not look for it in the scenario; nothing is written.`);
    else if (place !== undefined && place.chance.byOption.length > 0)
      notWritten.push(`What ${step} finds differs by option in the scenario; nothing is written.`);
    else entries.push(entryOf(path, writtenBounded(finds, detection.n, source)));
  });
  const first = looks[0];
  if (first === undefined || found === null)
    return { defect, madeAt, looks, found, made: null, from, to, told, entries, notWritten };
  const made = madeOf(counts.looks, first, shares, { told, isOnly: known.isOnly });
  if (scenario === undefined)
    notWritten.push('Without a scenario it is not known which step makes it; of that nothing is written.');
  else if (maker === undefined)
    notWritten.push(
      makers.length > 1
        ? `${makers.map(({ step }) => step).join(', ')} make it in the scenario, and the records do not ` +
            'say which did; of that nothing is written.'
        : `${madeAt ?? 'No step'} ${madeAt === null ? 'makes' : 'does not make'} it in the scenario; of ` +
            'that nothing is written.',
    );
  else {
    const value = writtenMade(found, made, looks.length === 1 ? shares.get(first.step) : undefined, source);
    if (value === null)
      notWritten.push('How often it is made the counts do not tell; of that nothing is written.');
    else entries.push(entryOf(maker.path, value));
  }
  return { defect, madeAt, looks, found, made, from, to, told, entries, notWritten };
}

/**
 * How often it is made: what was found over what is found of those that have it. Where several steps make it,
 * what inspections find is known from all of them together.
 */
function madeOf(
  counts: readonly LookCounts[],
  { step }: LookResult,
  shares: ReadonlyMap<string, number>,
  { told, isOnly }: { readonly told: string[]; readonly isOnly: boolean },
): Bounded | null {
  const turn = turnAt(counts, step);
  if (turn === undefined) return null;
  const later = takenOf(turn.later, shares);
  if (turn.later.length > 0 && later !== undefined && isOnly) return inTurn(turn, later, LEVEL).made;
  const seen = proportion(turn.first + turn.second, turn.units, LEVEL),
    share = shares.get(step),
    all = share === undefined || typeof later === 'string' ? undefined : 1 - (1 - share) * (1 - (later ?? 0));
  if (all === undefined || all === 0) {
    told.push(...oneLook(seen).told);
    return null;
  }
  const scaled = (value: number): number => Math.min(1, value / all),
    made = { value: scaled(seen.share), low: scaled(seen.low), high: scaled(seen.high), level: LEVEL };
  if (all < 1)
    told.push(
      `${[step, ...turn.later].join(', then ')}: ${roughPercent(all)} of what is there is taken to be ` +
        `found, so ${say(made)} of units have it.`,
    );
  return made;
}

/** For `creates`; by option where that matters. Null where the counts do not tell. */
function writtenMade(
  found: FitOfChance,
  made: Bounded | null,
  share: number | undefined,
  source: Source,
): Written | null {
  if (share === 1 || (found.all.count === 0 && (made === null || made.value === 0)))
    return writtenChance(found, source);
  if (made === null) return null;
  const [usual, ...others] = found.by?.levels ?? [];
  if (found.by === null || usual === undefined) return writtenBounded(made, found.all.n, source);
  const scale = made.value / found.all.share,
    each = ({ units, found: n }: { units: number; found: number }): Written => ({
      value: percentText(Math.min(1, (n / units) * scale)),
      basis: basisOf(units, source),
    });
  return {
    usual: each(usual),
    [found.by.option]: Object.fromEntries(others.map((level) => [level.name, each(level)])),
  };
}
