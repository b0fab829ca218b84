import { buildName } from '../flow/model-orders.js';
import type { UnitResult } from './results.js';
import type { Sample } from './sample.js';
import { chanceLate } from './summary-due.js';
import { dateQuantile, QUANTILES } from './summary-last-unit.js';

const MINUTES_PER_DAY = 1440;

/** When each unit is shipped and due, by build number. Where a replication did not ship it, it comes after all that did. */
export function units(sample: Sample): UnitResult[] {
  if (sample.scenario.programme.quantity === undefined) return [];
  const { observations } = sample;
  return Array.from(observations[0].shippedAt, (_, index) => {
    const dates = Float64Array.from(observations, ({ shippedAt }) => (Number.isNaN(shippedAt[index]) ? Infinity : shippedAt[index])).sort();
    return {
      number: index + 1,
      build: buildName(sample.model, index + 1),
      due: dueDay(sample, index),
      late: chanceLate(sample, index),
      shipped: QUANTILES.map((p) => {
        const { date, low, high } = dateQuantile(sample, dates, p);
        return { p, date, low, high };
      }),
      leadDays: sample.amount(({ enteredAt, shippedAt }) => (shippedAt[index] - enteredAt[index]) / MINUTES_PER_DAY),
    };
  });
}

/** The end of a due day is midnight, the first instant of the next day; a moment earlier is the day meant. */
function dueDay({ observations: [first, ...others], clock }: Sample, index: number): string | null {
  const due = first.dueAt[index] ?? Infinity;
  return others.every(({ dueAt }) => (dueAt[index] ?? Infinity) === due) ? clock.date(due - 0.001) : null;
}
