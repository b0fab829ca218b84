import { programmeClock } from '../../scenario/programme/clock.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { headOf } from '../head.js';
import { defined, neighbours } from '../lists.js';
import { plannedEnd } from '../programme/dates.js';
import type { Changed } from '../reliefs/changes.js';
import type { Replicator } from '../run/replicator.js';
import { familyLevel } from '../statistics/difference.js';
import type { Chosen } from './choose.js';
import type { ReachForecast } from './forecast.js';
import type { ReachOptions } from './options.js';
import type { BuildResult, FrontierResult, ReachResults, StepResult, UnpricedResult } from './results.js';
import { type Choices, type Counts, isSame } from './search/choices.js';
import { frontier } from './search/frontier.js';
import type { Goal } from './search/goal.js';
import { hurtful } from './search/hurts.js';
import type { Pool } from './search/pool.js';
import { wayTo } from './search/way.js';
import { reachSentence } from './sentence.js';
import { hangsAt, questionOf, stopsAt } from './stopped.js';
import { type Terms, withMaking } from './terms.js';
import { figuresOf, gainOver, type Teller, type Told } from './told.js';
import type { WithUnpriced } from './unpriced.js';

interface SummaryAsked {
  readonly options: ReachOptions & { readonly level: number };
  readonly terms: Terms;
  readonly choices: Choices;
  readonly pool: Pool;
  readonly chosen: Chosen;
  readonly unpriced: WithUnpriced | null;
  readonly goal: Goal;
  readonly forecast: ReachForecast;
  /** Of replications by which builds are told, and of those by which it is tried what stops them. */
  readonly teller: Teller;
  readonly stopping: Replicator;
  /** The scenario at the rate asked. */
  readonly atRate: (scenario: Scenario) => Scenario;
  readonly skipped: ReachResults['skipped'];
  readonly phases: ReachResults['phases'];
}

/** Sets of the frontier that are told at most. */
const MOST_TOLD = 12;

/** Tells the way to the chosen set and the frontier, by replications that had no part in finding them. */
export async function summary(asked: SummaryAsked): Promise<ReachResults> {
  const { options, terms, choices, pool, chosen, unpriced, goal, teller, stopping, atRate } = asked,
    { goal: wanted, replications, level, onStage, scenario, data } = options,
    { plan, judged, perDay, verdict } = chosen.verified,
    way = await wayTo(chosen.counts, choices, pool),
    onFront = thinned(frontier(pool.ran, choices, pool, goal.zone), chosen.counts, pool),
    holds = verdict === 'holds',
    build = (counts: Counts): Changed => pool.build(counts),
    builds = [...way, ...onFront].map(build);
  asked.forecast.builds(teller.toRun(builds, replications), way.length);
  onStage?.(`telling the way to ${way.length === 1 ? 'it' : `it, ${way.length - 1} steps`}`);
  const told = await teller.tell(builds, replications),
    onWay = told.slice(0, way.length),
    each = familyLevel(level, Math.max(1, way.length - 1)),
    resultOf = (counts: Counts, its: Told): BuildResult => ({
      ...terms.money(counts),
      ...figuresOf(its, perDay, wanted, level),
    });
  onStage?.('looking at what stops the build at each step');
  const stops: Awaited<ReturnType<typeof stopsAt>>[] = [],
    askedOf = (counts: Counts, isHeld: boolean) =>
      questionOf(build(counts), chosen.verified, { goal: wanted, replications, level, atRate }, isHeld);
  for (const counts of way.slice(0, -1)) stops.push(await stopsAt(askedOf(counts, false), stopping));
  const { stopped, weakest } = await hangsAt(
    askedOf(chosen.counts, holds),
    { scenario, data: data && withMaking(data, terms.made(chosen.counts)) },
    stopping,
  );
  stops.push(stopped);
  const steps = way.map((counts, i): StepResult => {
      const before = way[i - 1],
        its = defined(onWay[i]),
        { outcome, culprit, sentence, askedPerDay } = defined(stops[i]);
      return {
        ...resultOf(counts, its),
        made: before === undefined ? null : defined(terms.made(counts, before)[0]),
        price: before === undefined ? null : difference(terms.money(counts).money, terms.money(before).money),
        gain: before === undefined ? null : gainOver(defined(onWay[i - 1]), its, perDay, each),
        stopped: { outcome, culprit, sentence, askedPerDay },
      };
    }),
    onFrontier = onFront.map(
      (counts, i): FrontierResult => ({
        ...resultOf(counts, defined(told[way.length + i])),
        made: terms.made(counts),
        isChosen: isSame(counts, chosen.counts),
      }),
    );
  const hurts = hurtful(pool, goal.zone, level).map((pair) => ({
      with: terms.made(pair.with).map(({ name }) => name),
      without: terms.made(pair.without).map(({ name }) => name),
    })),
    { window } = judged;
  const results: Omit<ReachResults, 'answer'> = {
    ...headOf('reach', { ...options, level }),
    goal: wanted,
    phases: asked.phases,
    ordered: options.ordered ?? null,
    by: options.by ?? null,
    budget: options.budget ?? null,
    atMost: options.atMost ?? null,
    quantity: scenario.programme.quantity ?? null,
    currency: scenario.costs?.currency ?? '',
    possible: terms.all,
    outcome: chosen.outcome,
    verdict,
    keptUp: wanted.kind === 'rate' ? (judged.holding?.keptUp ?? null) : null,
    counted: window === null ? null : { from: window.from, to: window.to },
    steps,
    frontier: rising(onFrontier),
    unpriced: unpriced === null ? [] : [unpricedResult(unpriced, terms, chosen, choices)],
    constraint: stopped,
    weakest,
    plannedEnd: plannedEnd({ model: plan.model, clock: programmeClock(plan.scenario) }),
    search: {
      sets: pool.ran.length,
      byArithmetic: pool.byArithmetic,
      isProven: chosen.isProven,
      hurts,
      finalists: chosen.finalists.map(({ counts, ...decision }) => ({
        made: terms.made(counts),
        money: choices.price(counts),
        ...decision,
      })),
      level,
      zone: goal.zone,
      replications: asked.forecast.done,
    },
    replications,
    eachLevel: each,
    skipped: asked.skipped,
  };
  return { ...results, answer: { sentence: reachSentence(results) } };
}

const difference = (after: number | null, before: number | null): number | null =>
  after === null || before === null ? null : after - before;

/** The build as it is, the set chosen and of the others those that rise most, as many as are told. */
function thinned(front: readonly Counts[], chosen: Counts, pool: Pool): Counts[] {
  const isKept = (counts: Counts): boolean => isSame(counts, chosen),
    rises = new Map(
      neighbours(front).map(([below, counts]) => [counts, pool.score(counts) - pool.score(below)] as const),
    ),
    left = front
      .filter((counts) => rises.has(counts) && !isKept(counts))
      .toSorted((a, b) => (rises.get(b) ?? 0) - (rises.get(a) ?? 0))
      .slice(0, MOST_TOLD);
  const told = front.filter((counts) => !rises.has(counts) || isKept(counts) || left.includes(counts));
  return told.some(isKept) ? told : [...told, chosen];
}

/** Those that ship more than what is not dearer, as the fresh replications tell it, and the set chosen. */
function rising(told: readonly FrontierResult[]): FrontierResult[] {
  let best = -Infinity;
  return told
    .toSorted((a, b) => (a.money ?? 0) - (b.money ?? 0) || b.throughput.mean - a.throughput.mean)
    .filter(({ throughput: { mean }, isChosen }) => {
      const isMore = mean > best;
      best = Math.max(best, mean);
      return isMore || isChosen;
    });
}

function unpricedResult(
  { counts, names }: WithUnpriced,
  terms: Terms,
  { outcome, counts: chosen }: Chosen,
  choices: Choices,
): UnpricedResult {
  const money = choices.price(counts);
  return {
    names,
    made: terms.made(counts),
    money,
    worth: outcome === 'reached' ? choices.price(chosen) - money : null,
  };
}
