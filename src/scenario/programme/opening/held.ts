import { stationsOf } from '../../lookup/placed.js';
import { stretchesOf } from '../../plant/stretches.js';
import type { Finding } from '../../types/problem.js';
import type { Order } from '../../types/programme.js';
import type { Scenario } from '../../types/scenario.js';
import type { RouteEntry } from '../../types/steps.js';
import { own } from '../../values/raw.js';
import { senderOf } from './items.js';

/** A unit of the opening, and the index of its step or lane in the route. */
export interface Standing {
  readonly order: Order;
  readonly entry: RouteEntry;
  readonly index: number;
}

/**
 * Units of the opening hold the carriers and teams of the steps that they have passed: more of them than
 * there are carriers, or people. Who would have one only by options that are drawn is not counted.
 */
export function* heldFindings(scenario: Scenario, standing: readonly Standing[]): Iterable<Finding> {
  const stations = stationsOf(scenario),
    held = new Map<string, number>(),
    full = new Set<string>();
  const claims = (entry: RouteEntry, { options }: Order): boolean =>
    entry.kind === 'step' &&
    entry.rework !== 'only' &&
    entry.sample === undefined &&
    entry.hold === undefined &&
    stations.get(entry.at)?.station.lot === undefined &&
    Object.entries(entry.when).every(([option, values]) => values.includes(own(options, option) ?? ''));
  for (const stands of standing) {
    const { order, index } = stands,
      sender = senderOf(scenario, stands);
    for (const { name, kind, route, steps } of stretchesOf(scenario)) {
      const first = steps[0],
        last = steps.at(-1);
      if (route?.kind !== 'unit' || first === undefined || last === undefined) continue;
      if (index <= first.index || index > last.index) continue;
      // Sent back from behind them, it has given it back.
      if (sender !== undefined && sender.index > last.index) continue;
      if (!route.entries.slice(first.index, index).some((entry) => claims(entry, order))) continue;
      const isTeam = 'crew' in kind,
        key = isTeam ? `crew ${kind.crew} of ${first.where?.siteName}` : `carriers ${name}`,
        there = isTeam ? own(first.where?.site.crews ?? {}, kind.crew)?.headcount : kind.count,
        now = (held.get(key) ?? 0) + (isTeam ? kind.people : 1);
      held.set(key, now);
      if (there === undefined || now <= there || full.has(key)) continue;
      full.add(key);
      const units = `no more units behind "${kind.from}", up to "${kind.to}",`;
      yield {
        ...order.written,
        wanted: isTeam
          ? `${units} than the ${there} ${kind.crew} can stay with; each has ${kind.people} of them ` +
            `(${name}): a larger crew, or a unit less`
          : `${units} than there are ${name}; each has one and there ${there === 1 ? 'is' : 'are'} ` +
            `${there}: a higher count, or a unit less`,
        seen: `one more at "${order.at}"`,
      };
    }
  }
}
