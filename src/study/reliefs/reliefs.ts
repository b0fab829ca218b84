import { sumOf } from '../statistics/sums.js';
import type { Observation } from '../../measure/observe.js';
import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/read.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { Varied } from '../../scenario/vary.js';
import { baseRuns } from '../run/base-runs.js';
import { familyLevel } from '../statistics/difference.js';
import { fingerprint } from '../run/identity.js';
import { amount } from '../statistics/interval.js';
import type { Journal } from '../run/journal.js';
import { effectOf, gainPerCost } from './effects.js';
import { reliefsOf } from './list.js';
import { withHighestRate } from './changes.js';
import { comparedOf, screened, type Changed, type Compared, type Screened } from './runs.js';
import { reliefsSentence } from './answer.js';
import { Replicator } from '../run/replicator.js';
import type { VariedAssumption, ReliefResult, ReliefsResults, VariedResult } from './results.js';
import { headOf } from '../head.js';
import { planned } from '../sample/planned.js';
import { judgeRate } from '../programme/rate-held.js';
import { shippedPerDay } from '../programme/series.js';

export interface ReliefsOptions {
  readonly scenario: Scenario;
  /** Its guesses and estimates, varied. */
  readonly varied: readonly Varied[];
  readonly file: string;
  /** Highest rate of the plan, units a working day; undefined: as the scenario has it. */
  readonly rate?: number | undefined;
  /** Most that one change is given, at least 2. */
  readonly replications: number;
  readonly seed: string;
  readonly workers: number;
  readonly level?: number | undefined;
  /** Finished replications of an earlier run with the same options, and where new ones are written. */
  readonly journal?: Journal<Observation | Compared> | undefined;
  readonly onReplication?: ((done: number, of: number) => void) | undefined;
  readonly signal?: AbortSignal | undefined;
}

/** What a journal has to know of varied assumptions: the scenarios that are run. */
export const variedFingerprint = (varied: readonly Varied[]): string =>
  fingerprint(
    varied.map(({ assumption: { path }, low, high }) => [
      path,
      ...[low, high].map((end) => end && digest(end.scenario)),
    ]),
  );

/** Replications before the first look, and between looks. */
const FIRST = 10,
  BETWEEN = 10;
/** So many best reliefs the screen promises to keep. */
const KEEP = 5;
/**
 * A gain below this share of the base's throughput does not matter: half of what a rate may miss and still
 * count as held. Our own convention.
 */
const ZONE_SHARE = 0.01;

/**
 * Sets every relief and every varied assumption against the scenario as it is. Same scenario, seed and
 * replications: same results, to the last bit.
 */
export async function reliefsStudy(options: ReliefsOptions): Promise<ReliefsResults> {
  const { file, rate, replications: most, seed, workers, level = 0.95, journal, signal } = options;
  if (!(Number.isInteger(most) && most >= 2))
    throw new RangeError(`replications: expected a whole number of at least 2, saw ${most}; give one`);
  const atRate = (scenario: Scenario): Scenario =>
    rate === undefined ? scenario : withHighestRate(scenario, rate);
  const scenario = atRate(options.scenario),
    base = { key: digest(scenario), scenario, model: compile(scenario) };
  const { changes: reliefs, skipped } = compiled(
    base,
    reliefsOf(scenario).map((of) => ({ of, what: of.text, scenario: () => of.change(scenario) })),
  );
  const ends = options.varied.flatMap((of, v) =>
    (['low', 'high'] as const).map((side) => ({
      of: { v, side },
      what: `${of.assumption.path}, ${side}`,
      scenario: () => (of[side] === undefined ? undefined : atRate(of[side].scenario)),
    })),
  );
  const { changes: assumed, skipped: notVaried } = compiled(base, ends);

  const looks = looksOf(most),
    expected = most + looks[0]! * (reliefs.length + assumed.length);
  const told =
    (before: number) =>
    (done: number, of: number): void =>
      options.onReplication?.(before + done, Math.max(before + of, expected));
  const firstSeen = await baseRuns(base.model, looks[0]!, {
    seed,
    workers,
    journal,
    signal,
    onReplication: told(0),
  });
  const plan = planned(scenario, base.model),
    judged = judgeRate(plan, firstSeen, level);
  const throughput = judged.window !== null ? judged.heldIn : shippedPerDay(plan.calendar);
  const readers = new Map(
    [base, ...reliefs, ...assumed].map((each) => [each.key, comparedOf(each, throughput)]),
  );
  const replicator = new Replicator<Compared>({
    seed,
    workers,
    read: (observation, { key }) => readers.get(key)!(observation),
    journal: journal as Journal<Compared> | undefined,
    signal,
    onReplication: told(looks[0]!),
  });
  try {
    const run = (some: readonly Changed[], from: number, to: number): Promise<Compared[][]> =>
      replicator.run(some, from, to);
    const [more] = (await run([base], looks[0]! + 1, most)) as [Compared[]],
      ofBase = [...firstSeen.map(readers.get(base.key)!), ...more];
    const across = amount(
        ofBase.map((each) => each.throughput),
        level,
      ),
      zone = Math.max(1e-9, ZONE_SHARE * across.mean);
    const screenedReliefs = await screened(reliefs, ofBase, looks, { keep: KEEP, zone, level }, run);
    const screenedAssumed = await screened(assumed, ofBase, looks, { keep: 0, zone, level }, run);

    const eachLevel = {
      reliefs: levelOf(screenedReliefs, level),
      assumptions: levelOf(screenedAssumed, level),
    };
    const ranked = ranks(
      reliefs.map(({ of: { kind, text } }, i) => {
        const effect = effectOf(
          ofBase,
          screenedReliefs.rows[i]!,
          screenedReliefs.outs[i]!,
          eachLevel.reliefs,
        );
        return {
          rank: 0,
          kind,
          text,
          ...effect,
          gainPerCost: gainPerCost(ofBase, screenedReliefs.rows[i]!, effect),
          rankPerCost: null,
        };
      }),
    );
    const count = (rows: Screened['rows']): number => sumOf(rows, (row) => row.length);
    const costs = amount(
      ofBase.map((each) => each.cost),
      level,
    );
    const results: Omit<ReliefsResults, 'answer'> = {
      ...headOf('reliefs', { scenario, file, seed, level }),
      replications: most,
      firstReplications: looks[0]!,
      eachLevel,
      zone,
      keep: KEEP,
      counted: {
        over: judged.window === null ? 'whole run' : 'judged window',
        from: judged.window?.from ?? null,
        to: judged.window?.to ?? null,
      },
      rate: { set: rate ?? null, askedPerDay: judged.askedPerDay },
      base: {
        throughput: across,
        costPerUnit: costs.n === 0 ? null : costs,
        currency: scenario.costs?.currency ?? null,
        verdict: judged.verdict,
        gridlocks: judged.gridlocks,
      },
      reliefs: ranked,
      assumptions: tornado(
        options.varied,
        assumed.map(({ of }, i) => ({
          ...of,
          effect: effectOf(ofBase, screenedAssumed.rows[i]!, screenedAssumed.outs[i]!, eachLevel.assumptions),
        })),
      ),
      skipped: [...skipped, ...notVaried],
      runs: {
        run: most + count(screenedReliefs.rows) + count(screenedAssumed.rows),
        withoutScreen: most * (1 + reliefs.length + assumed.length),
      },
    };
    return { ...results, answer: { sentence: reliefsSentence(results) } };
  } finally {
    await replicator.close();
  }
}

interface Candidate<Of> {
  readonly of: Of;
  readonly what: string;
  readonly scenario: () => Scenario | undefined;
}

/**
 * Models of changes; what cannot be, cannot be planned or is counted in other weeks is left out, with the
 * reason.
 */
function compiled<Of>(
  base: Changed,
  candidates: readonly Candidate<Of>[],
): { changes: (Changed & { readonly of: Of })[]; skipped: ReliefsResults['skipped'] } {
  const changes: (Changed & { readonly of: Of })[] = [],
    skipped: { what: string; why: string }[] = [];
  for (const { of, what, scenario: make } of candidates) {
    const scenario = make();
    if (scenario === undefined) {
      skipped.push({ what, why: 'the value cannot be varied this way' });
      continue;
    }
    try {
      const model = compile(scenario);
      if (isCountedAlike(base, model.programme.bucketEdges))
        changes.push({ key: digest(scenario), scenario, model, of });
      else skipped.push({ what, why: 'the weeks of the run would be others' });
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      skipped.push({ what, why: error.message });
    }
  }
  return { changes, skipped };
}

/** The weeks that both have are the same. */
function isCountedAlike(
  {
    model: {
      programme: { bucketEdges },
    },
  }: Changed,
  edges: ArrayLike<number>,
): boolean {
  for (let b = 0; b < Math.min(edges.length, bucketEdges.length) - 1; b++)
    if (edges[b] !== bucketEdges[b]) return false;
  return true;
}

/** Replications after which is looked: 10, 20, 30, 40. */
export function looksOf(most: number): number[] {
  const looks = [Math.min(FIRST, most)];
  while (looks.at(-1)! < most) looks.push(Math.min(most, looks.at(-1)! + BETWEEN));
  return looks;
}

const levelOf = ({ outs }: Screened, level: number): number =>
  familyLevel(level, outs.filter((out) => out === null).length);

function ranks(all: readonly ReliefResult[]): ReliefResult[] {
  const byGain = [...all].sort(
    (a, b) => Number(a.out !== null) - Number(b.out !== null) || b.gain.mean - a.gain.mean,
  );
  const isDearer = (each: ReliefResult): number => Number((each.costPerUnit?.mean ?? 0) > 0);
  const worth = byGain
    .filter(
      ({ gain, costPerUnit: cost, gainPerCost: quotient }) =>
        cost !== null && gain.low !== null && gain.low > 0 && (cost.mean <= 0 || quotient !== null),
    )
    .sort(
      (a, b) =>
        isDearer(a) - isDearer(b) ||
        (b.gainPerCost?.mean ?? b.gain.mean) - (a.gainPerCost?.mean ?? a.gain.mean),
    );
  return byGain.map((each, i) => ({
    ...each,
    rank: i + 1,
    rankPerCost: worth.includes(each) ? worth.indexOf(each) + 1 : null,
  }));
}

function tornado(
  varied: readonly Varied[],
  ends: readonly {
    readonly v: number;
    readonly side: 'low' | 'high';
    readonly effect: ReturnType<typeof effectOf>;
  }[],
): VariedAssumption[] {
  return varied
    .map(({ assumption: { path, basis, note, value }, ...sides }, v): VariedAssumption => {
      const of = (side: 'low' | 'high'): VariedResult | null => {
        const end = ends.find((each) => each.v === v && each.side === side);
        return end === undefined ? null : { value: sides[side]!.value, ...end.effect };
      };
      const low = of('low'),
        high = of('high');
      return {
        path,
        basis,
        note: note ?? null,
        value,
        low,
        high,
        largest: Math.max(0, ...[low, high].map((each) => Math.abs(each?.gain.mean ?? 0))),
      };
    })
    .filter(({ low, high }) => low !== null || high !== null)
    .sort((a, b) => b.largest - a.largest);
}
