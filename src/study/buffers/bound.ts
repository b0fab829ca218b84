import type { Model } from '../../flow/model/model.js';
import { routesOf, stepsOf } from '../../scenario/lookup/placed.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { type CapacityRow, capacity } from '../capacity/capacity.js';
import type { RateMeasure } from './search/trial.js';

/** What no places can exceed, in the unit of the study, and what limits it. */
export interface Bound {
  readonly rate: number;
  readonly name: string;
  readonly kind: CapacityRow['kind'];
}

/**
 * The ceiling of arithmetic (see `capacity`); null where it is none, as overtime comes on top, or where a
 * working day is none of the study's unit. What has unattended work is left out: it may go on at night, which
 * the arithmetic leaves out.
 */
export function boundOf(scenario: Scenario, model: Model, { daysInOne }: RateMeasure): Bound | null {
  if (daysInOne === null || Object.values(scenario.calendars).some(({ overtime }) => overtime.length > 0))
    return null;
  const unattended = new Set(
    routesOf(scenario)
      .flatMap(stepsOf)
      .filter(({ step }) => step.process !== undefined || step.passes?.settle !== undefined)
      .map(({ step }) => step.at),
  );
  const [least] = capacity(model, scenario)
    .rows.filter(
      ({ kind, name, capacityPerDay }) =>
        capacityPerDay !== null &&
        !(kind === 'feeder' ? unattended.size > 0 : kind === 'station' && unattended.has(name)),
    )
    .sort((a, b) => (a.capacityPerDay ?? Infinity) - (b.capacityPerDay ?? Infinity));
  return least === undefined
    ? null
    : { rate: (least.capacityPerDay ?? Infinity) * daysInOne, name: least.name, kind: least.kind };
}
