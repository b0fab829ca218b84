import type { Model } from '../../../flow/model/model.js';
import { buildName } from '../../../flow/model/orders.js';
import type { OvertimeColumns } from '../../../flow/model/time.js';
import { compile } from '../../../scenario/compile.js';
import { runSpan } from '../../../scenario/programme/span.js';
import type { Scenario } from '../../../scenario/types/scenario.js';

/** What is on the floor of the period, as rules of overtime ask for it. */
interface AsLogged {
  /** Start of the model's time, minutes since 1970-01-01T00:00Z. */
  readonly origin: number;
  /** Units in the order of their numbers: those that stand there, by step, then those that come in. */
  readonly standing: readonly { readonly step: number }[];
  readonly names: readonly string[];
  /** Shipped or scrapped before. */
  readonly gone: number;
}

/**
 * Rules of overtime with the due dates of the whole programme, of which the period is a part: what was due
 * and out before it is taken off.
 */
export function overtimeAsked(
  { overtime }: Model,
  scenario: Scenario,
  { origin, standing, names, gone }: AsLogged,
): readonly OvertimeColumns[] {
  if (overtime.length === 0) return overtime;
  const whole = compile(scenario),
    later = origin - runSpan(scenario).origin;
  return overtime.map((rule, r) => {
    const planned = (whole.overtime[r]?.due ?? rule.due).map((time) => time - later),
      isPast = standing.map(({ step }) => rule.step >= 0 && step > rule.step);
    if (rule.byDueDates) {
      const dueOf = new Map(Array.from(planned, (time, i) => [buildName(whole, i + 1), time]));
      const due = names.map((name, u) => (isPast[u] === true ? Infinity : (dueOf.get(name) ?? Infinity)));
      return { ...rule, due: Float64Array.from(due) };
    }
    const before = planned.filter((time) => time <= 0).length,
      inWork = isPast.filter((past) => !past).length,
      out = gone + standing.length - inWork;
    // No more can be behind at the start than stand there; a log may begin later than the programme.
    return { ...rule, due: planned.subarray(Math.max(Math.min(out, planned.length), before - inWork)) };
  });
}
