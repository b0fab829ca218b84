import { START_UP_PARTS } from '../../flow/accounts/start-up.js';
import type { Model } from '../../flow/model/model.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Observation } from '../../measure/observe.js';
import { compile } from '../../scenario/compile.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { Replicator } from '../run/replicator.js';
import { mser5 } from '../statistics/mser5.js';
import { sumOf } from '../statistics/sums.js';
import { tenDigits } from '../ten-digits.js';

/**
 * What a pilot run is read for: units inside by equal part from the empty start; null where it stopped early.
 */
export type Inside = readonly number[] | null;

/**
 * MSER-5 makes the mean of the pilot most precise, not free of its start: what is left at the cut is about as
 * much as chance leaves in the pilot, and a run that is shorter than the pilot feels more of it. So a start-
 * up is taken to be over after so many times the cut. Our own convention; docs/measures.md tells what it
 * leaves.
 */
export const TIMES_CUT = 3;

/** The first pilot takes so many times as long as a unit. */
const LEADS = 20,
  WEEK = 7 * MINUTES_PER_DAY;

/** A cut lies well inside if it is within this share of a pilot. Our own convention. */
const WELL_INSIDE = 1 / 4;

/** The scenario, begun empty and observed for so long. */
export const pilotModel = (scenario: Scenario, minutes: number): Model =>
  compile({ ...scenario, programme: { ...scenario.programme, warmUpMin: 0, lengthMin: minutes } });

/** Replications of it, by the numbers asked; null where one stopped early (gridlock). */
export async function insideOf(
  model: Model,
  [from, to]: readonly [from: number, to: number],
  replicator: Replicator,
): Promise<readonly (readonly number[])[] | null> {
  const minutes = model.programme.end,
    seen = await replicator.row<Inside>(
      { key: `pilot ${minutes}`, model, closely: Infinity, read: readInside },
      from,
      to,
    );
  const inside = seen.flatMap((each) => (each === null ? [] : [each]));
  return inside.length < seen.length ? null : inside;
}

const readInside = ({ startUp, outcome }: Observation): Inside =>
  outcome === 'ended' && startUp !== null ? [...startUp] : null;

/** A pilot: so many replications, its minutes at first and, if they are made longer, at most. */
export interface PilotAsked {
  readonly replications: number;
  readonly minutes: number;
  readonly most: number;
}

/** Where a start-up ends, and how long the pilot was that told it; minutes. */
export interface Cut {
  readonly cut: number;
  readonly pilot: number;
}

/**
 * Where MSER-5 cuts the mean of pooled replications of a steady-state run. They begin short, as in a long run
 * chance drowns a short start-up and puts the cut anywhere, and are made twice as long until the cut lies
 * well inside them (White 1997; several replications pooled, and more data until the cut does not lie late in
 * them: Hoad, Robinson & Davies 2010, J. Oper. Res. Soc. 61, 1389-1403; both from memory).
 * @returns `too long`: not within the longest; null: a replication stopped early
 */
export async function pilotCut(
  scenario: Scenario,
  { replications, minutes, most }: PilotAsked,
  replicator: Replicator,
): Promise<Cut | 'too long' | null> {
  for (let pilot = minutes; pilot === minutes || pilot <= most; pilot *= 2) {
    const model = pilotModel(scenario, pilot);
    // A last day (`until`) leaves no room for it.
    if (model.programme.end < pilot) return 'too long';
    const inside = await insideOf(model, [1, replications], replicator);
    if (inside === null) return null;
    const { cut } = mser5(pooled(inside));
    if (cut <= WELL_INSIDE * START_UP_PARTS) return { cut: (cut * pilot) / START_UP_PARTS, pilot };
  }
  return 'too long';
}

/**
 * Minutes of the first pilot: so many times as a unit takes, or a week if that is longer, since a line with
 * shifts goes by the week; no longer than the run.
 */
export const firstPilot = (leadMin: number, run: number): number =>
  Math.min(run, Number.isFinite(leadMin) ? Math.max(Math.ceil(LEADS * leadMin), WEEK) : run);

/** Mean over replications, by part; to ten digits, so that parts that are the same are so to the last bit. */
const pooled = (inside: readonly (readonly number[])[]): number[] =>
  Array.from({ length: START_UP_PARTS }, (_, part) =>
    tenDigits(sumOf(inside, (each) => each[part] ?? NaN) / inside.length),
  );
