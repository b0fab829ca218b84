import { buildName } from '../flow/model-orders.js';
import type { Observation } from '../measure/observation.js';
import { Later, type Pending } from './later.js';
import type { UnitResult } from './results.js';
import type { Sample } from './sample.js';
import { chanceLate } from './summary-due.js';
import { dateQuantile, QUANTILES } from './summary-last-unit.js';

const MINUTES_PER_DAY = 1440;

/** When each unit is shipped and due, by build number. Where a replication did not ship it, it comes after all that did. */
export function units(sample: Sample): Pending<UnitResult[]> {
  const {
    scenario: {
      programme: { quantity },
    },
    clock,
    level,
  } = sample;
  return Array.from({ length: quantity ?? 0 }, (_, index): Pending<UnitResult> => {
    const days = sample.counts(({ shippedAt }) =>
      Number.isNaN(shippedAt[index]) ? Infinity : clock.day(shippedAt[index]),
    );
    return {
      number: index + 1,
      build: buildName(sample.model, index + 1),
      due: dueDay(sample, index),
      late: chanceLate(sample, index),
      shipped: QUANTILES.map(
        (p) =>
          new Later(() => {
            const { date, low, high } = dateQuantile(days.value, p, level);
            return { p, date, low, high };
          }),
      ),
      leadDays: sample.amount(
        ({ enteredAt, shippedAt }) => (shippedAt[index] - enteredAt[index]) / MINUTES_PER_DAY,
      ),
    };
  });
}

/** The end of a due day is midnight, the first instant of the next day; a moment earlier is the day meant. */
function dueDay(sample: Sample, index: number): Later<string | null> {
  const due = ({ dueAt }: Pick<Observation, 'dueAt'>): number => dueAt[index] ?? Infinity,
    others = sample.count((each) => due(each) !== due(sample.first));
  return new Later(() => (others.value > 0 ? null : sample.clock.date(due(sample.first) - 0.001)));
}
