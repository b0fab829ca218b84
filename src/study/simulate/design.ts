import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import { compile } from '../../scenario/compile.js';
import type { ScenarioData } from '../../scenario/data.js';
import { type Measured, measured } from '../answer/precision.js';
import type { PrecisionMeasure } from '../answer/precision-measures.js';
import type { Origin } from '../head.js';
import { type JourneyAsked, journey as journeyOf } from '../programme/journey.js';
import type { Shipments } from '../programme/pairs.js';
import type { FixedDesign, Gathering } from '../run/fixed-design.js';
import { identityOf } from '../run/identity.js';
import { whole } from '../run/replicator.js';
import type { ToRun } from '../run/runner.js';
import { planned } from '../sample/planned.js';
import { Sample } from '../sample/sample.js';
import { drawnOf } from '../uncertain/drawn.js';
import { GatheredDraws } from '../uncertain/gathered.js';
import { drawOf } from '../uncertain/models.js';
import { CLOSELY, type Simulated, summary } from './summary.js';
import { outageTrials, withoutVariant } from './without-outages.js';

/** What `simulate` is asked, as plain JSON. */
export interface SimulateAsked extends Origin {
  readonly replications: number;
  /** The scenario as data, where the page carries it or its guesses and estimates are varied. */
  readonly data?: ScenarioData | undefined;
  /**
   * What is measured is drawn anew, from what is known of it, for every two replications; `data` is then
   * needed, and an even number of replications.
   */
  readonly inputs?: 'uncertain' | undefined;
}

/** What is read: of the build all that is observed, of the build without an outage what it ships. */
export type SimulateValue = Observation | Shipments;

/** What is asked to be precise is known, as far as it is, at any time. */
export interface SimulateDesign extends FixedDesign<SimulateValue, Simulated> {
  readonly gather: (
    of?: readonly PrecisionMeasure[],
  ) => Gathering<SimulateValue, Simulated> & { readonly measured: Measured };
}

/**
 * A scenario, many times over, and a few times without its outages. The journey is told when it is summed up,
 * and needs one replication once more.
 */
export function simulateDesign(asked: SimulateAsked, journey?: JourneyAsked): SimulateDesign {
  const { scenario, replications, seed, level } = asked,
    model = compile(scenario),
    trials = outageTrials(model),
    uncertain = drawnOf(asked);
  /** The same with the inputs of the draw that a replication uses. */
  const drawn = (of: (model: Model) => ToRun) => {
    const { model: modelOf } = uncertain;
    if (modelOf === undefined) return {};
    return {
      drawn: (replication: number): ToRun => {
        const { key, ...run } = of(modelOf(replication));
        return { ...run, key: `${key}, draw ${drawOf(replication)}` };
      },
    };
  };
  return {
    identity: identityOf({ study: 'simulate', ...asked, more: uncertain.identity }),
    variants: [
      {
        ...{ key: 'base', model, closely: CLOSELY, read: whole },
        ...drawn((its) => ({ key: 'base', model: its, closely: CLOSELY })),
      },
      ...trials.map((out) => ({
        ...withoutVariant(model, out),
        ...drawn((its) => withoutVariant(its, out)),
      })),
    ],
    replications,
    seed,
    gather: (of = []) => {
      const plan = planned(scenario, model),
        sample = new Sample(plan, level),
        without = trials.map((outages) => ({ outages, seen: [] as Shipments[] })),
        all = summary(sample, asked, without),
        draws = uncertain.inputs === null ? undefined : new GatheredDraws(uncertain.inputs, plan, level);
      return {
        take: (value, index) => {
          if ('lastUnitDay' in value) without[index - 1]?.seen.push(value);
          else {
            sample.take(value);
            draws?.take(value);
          }
        },
        measured: measured(sample, of),
        found: () => {
          const { results, ...how } = all.value,
            ofFirst = uncertain.model?.(1) ?? model;
          return {
            ...how,
            results: {
              ...results,
              ...(draws && { inputs: draws.found(results.runs, results.rateUnit, how.judged.window) }),
              ...(journey && { journey: journeyOf(ofFirst, plan.clock, seed, sample.first, journey) }),
            },
          };
        },
      };
    },
  };
}
