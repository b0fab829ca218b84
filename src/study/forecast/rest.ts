import type { Model } from '../../flow/model/model.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { isoDate } from '../../scenario/calendar/date.js';
import { openingFindings } from '../../scenario/programme/opening/opening.js';
import { runSpan } from '../../scenario/programme/span.js';
import type { Order } from '../../scenario/types/programme.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { RouteEntry } from '../../scenario/types/steps.js';
import type { FloorAt } from '../validate/start/floor-at.js';
import { standingOrder } from '../validate/start/standing-orders.js';

/** The scenario from the moment on: with the units that stand there, and those still to come. */
export function restOf(floor: FloorAt, whole: Model): Scenario {
  const scenario = floor.stocked,
    { programme } = scenario,
    known = new Map(
      programme.orders.list.flatMap((order) => (order.build === undefined ? [] : [[order.build, order]])),
    ),
    written = { path: ['programme', 'opening'] };
  const standing = floor.opening.placed.map((placed): Order => {
    const order = known.get(placed.unit),
      came = floor.inside.units.get(placed.unit)?.enteredAt ?? NaN,
      after = programme.orders.dueAfterMin,
      dueAfter = after === undefined || Number.isNaN(came) ? undefined : dayAt(scenario, came + after),
      stands = standingOrder(placed, whole);
    return {
      ...stands,
      release: undefined,
      due: order?.due ?? dueAfter,
      options: { ...order?.options, ...stands.options },
      written: order?.written ?? written,
    };
  });
  const rest = programme.orders.list
    .filter(({ build, at }) => at === undefined && (build === undefined || !floor.entered.has(build)))
    .map((order) => ({ ...order, release: notBefore(order.release, floor.date) }));
  return {
    ...scenario,
    route: scenario.route.map((entry) => withLearnt(entry, floor)),
    programme: {
      ...programme,
      start: floor.date,
      startMin: floor.minute === 0 ? undefined : floor.minute,
      quantity:
        programme.quantity === undefined
          ? undefined
          : Math.max(1, programme.quantity - floor.entered.size + standing.length),
      orders: { ...programme.orders, list: [...standing, ...rest] },
    },
  };
}

/**
 * What the reader of scenarios has against an opening, as sentences: more teams than people, say, as shifts
 * of fewer people leave them. Here who lacks one claims it where it stands.
 */
export const refusedIn = (rest: Scenario): string[] =>
  [...new Set([...openingFindings(rest)].map(({ wanted, seen }) => `expected ${wanted}, got ${seen}`))].map(
    (said) => `A scenario with this opening would be refused: ${said}.`,
  );

/** What was learnt so far. */
function withLearnt<Entry extends RouteEntry>(entry: Entry, floor: FloorAt): Entry {
  if (entry.kind === 'lane') return entry;
  const { learning, name, sideBySide } = entry;
  return {
    ...entry,
    sideBySide: sideBySide?.map((each) => withLearnt(each, floor)),
    learning: learning && {
      ...learning,
      builtBefore: learning.builtBefore + (floor.inside.begun.get(name) ?? 0),
    },
  };
}

const notBefore = (date: string | undefined, first: string): string | undefined =>
  date !== undefined && date < first ? first : date;

const dayAt = (scenario: Scenario, instant: number): string => {
  const { clock } = runSpan(scenario);
  return isoDate(Math.floor(clock.local(instant) / MINUTES_PER_DAY));
};
