import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Observation } from '../../measure/observe.js';
import type { RunRow } from '../answer/runs.js';
import { daysInOne, type PlannersUnit, unitsEach } from '../planners-unit.js';
import { lastUnitDay } from '../programme/dates.js';
import type { Window } from '../programme/judged-window.js';
import { shippedPerDay } from '../programme/series.js';
import type { Planned } from '../sample/planned.js';
import type { Inputs } from './inputs.js';
import { PER_DRAW } from './models.js';
import { randomEffects } from './random-effects.js';
import { type InputsMeasure, type InputsResult, measureOf } from './results.js';

/** Values of replications by draw of the inputs, and what they tell; replications come in order. */
export class GatheredDraws {
  private readonly perDay: number[] = [];
  private readonly lastDay: number[] = [];
  private readonly shipped: (observation: Observation) => number;

  constructor(
    private readonly inputs: Inputs,
    private readonly plan: Planned,
    private readonly level: number,
  ) {
    this.shipped = shippedPerDay(plan.calendar);
  }

  take(observation: Observation): void {
    this.perDay.push(this.shipped(observation));
    this.lastDay.push(lastUnitDay(observation));
  }

  /**
   * @param runs a row a replication, in order
   * @param window the weeks judged; null: no rate was judged
   */
  found(runs: readonly RunRow[], rateUnit: PlannersUnit, window: Window | null): InputsResult {
    const { level, plan } = this,
      isJudged = runs.some(({ heldPerDay }) => heldPerDay !== null),
      scale = isJudged ? daysInOne(rateUnit, window) : rateUnit.workingDays;
    const measure = (
      id: InputsMeasure['id'],
      unit: string,
      values: readonly (number | null)[],
    ): InputsMeasure => measureOf(id, unit, randomEffects(pairs(values), level), level);
    const date = (days: number | null): string | null =>
        days === null ? null : plan.clock.date(days * MINUTES_PER_DAY),
      last = measure('last unit', 'days since the start', this.lastDay);
    return {
      draws: Math.floor(runs.length / PER_DRAW),
      drawn: this.inputs.drawn.map(({ path, words, n, of }) => ({ path, words, n, kind: of.kind })),
      left: this.inputs.left,
      // Of what is not drawn there is nothing to tell apart.
      measures:
        this.inputs.drawn.length === 0
          ? []
          : [
              measure(
                'shipped',
                unitsEach(rateUnit),
                (isJudged ? runs.map(({ heldPerDay }) => heldPerDay) : this.perDay).map((value) =>
                  value === null ? null : value * scale,
                ),
              ),
              measure(
                'lead time',
                'days',
                runs.map(({ leadMeanDays }) => leadMeanDays),
              ),
              ...(plan.scenario.programme.quantity === undefined
                ? []
                : [
                    { ...last, dates: { mean: date(last.mean), low: date(last.low), high: date(last.high) } },
                  ]),
            ],
    };
  }
}

/** Replications of one draw; of a draw of which one has no value there is no pair. */
function pairs(values: readonly (number | null)[]): number[][] {
  const all: number[][] = [];
  for (let i = 0; i + PER_DRAW <= values.length; i += PER_DRAW) {
    const pair = values.slice(i, i + PER_DRAW).filter((value) => value !== null && Number.isFinite(value));
    if (pair.length === PER_DRAW) all.push(pair as number[]);
  }
  return all;
}
