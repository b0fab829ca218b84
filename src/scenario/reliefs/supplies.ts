import { scaled } from '../../random/distribution.js';
import { dayNumber, isoDate } from '../calendar/date.js';
import type { DeliveryDates, DeliveryRhythm, Reorder, Supply } from '../types/plant.js';
import type { Scenario } from '../types/scenario.js';
import { defined, neighbours } from '../values/lists.js';
import { type Relief, type ReliefKind, withEntry } from './relief.js';

/** A larger lot is half as much again; a lead time loses a fifth. Our own convention. */
const LOT_MORE = 1.5,
  LEAD_LEFT = 0.8;

interface Change {
  readonly kind: ReliefKind;
  readonly text: string;
  readonly change: (its: Supply) => Supply;
}

/** More of each bought-in part, or sooner, by what its kind of order allows. */
export function moreSupply(scenario: Scenario): Relief[] {
  return Object.entries(scenario.supplies).flatMap(([name, { site, order, late }]) =>
    [
      ...(order.kind === 'reorder'
        ? byLevel(name, order)
        : order.kind === 'rhythm'
          ? byRhythm(name, order)
          : byDates(name, order, scenario.programme.start)),
      ...(late === undefined || late.chance === 0
        ? []
        : [
            {
              kind: 'lateness',
              text: `lots of ${name} late half as often`,
              change: (its) => ({ ...its, late: { ...late, chance: late.chance / 2 } }),
            } as const satisfies Change,
          ]),
    ].map(
      ({ kind, text, change }): Relief => ({
        kind,
        text,
        of: { kind: 'supply', name, site },
        change: (from) => withEntry(from, 'supplies', name, change),
      }),
    ),
  );
}

/**
 * A higher level is a lot more on order at any time; more at the start would only put off the first order.
 */
function byLevel(name: string, order: Reorder): Change[] {
  const { lot, level, leadTime } = order,
    larger = moreOf(lot);
  const ordered = (kind: ReliefKind, text: string, change: Partial<Reorder>): Change => ({
    kind,
    text,
    change: (its) => ({ ...its, order: { ...order, ...change } }),
  });
  return [
    ordered('lot', `larger lots of ${name} (${larger} instead of ${lot})`, { lot: larger }),
    ordered('lead time', `lead time of ${name} a fifth shorter`, { leadTime: scaled(leadTime, LEAD_LEFT) }),
    ordered('stock', `${name} ordered at ${level + lot} instead of ${level}`, { level: level + lot }),
  ];
}

/** Of a rhythm of a day there is no more: what comes on a day is there when the shift begins. */
function byRhythm(name: string, order: DeliveryRhythm): Change[] {
  const { lot, everyDays } = order,
    larger = moreOf(lot);
  const delivered = (change: Partial<DeliveryRhythm>) => (its: Supply) => ({
    ...its,
    order: { ...order, ...change },
  });
  return [
    {
      kind: 'lot',
      text: `larger lots of ${name} (${larger} instead of ${lot})`,
      change: delivered({ lot: larger }),
    },
    ...(everyDays < 2
      ? []
      : [
          {
            kind: 'delivery',
            text: `two deliveries of ${name} in ${everyDays} days instead of one`,
            // Half days count as well: what comes at noon is there the next morning.
            change: delivered({ everyDays: everyDays / 2 }),
          } as const,
        ]),
    atStart(name, lot),
  ];
}

function byDates(name: string, order: DeliveryDates, start: string): Change[] {
  const dates = [...order.dates].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0)),
    [first] = dates,
    extra = oneMore(dates, start);
  const delivered = (changed: DeliveryDates['dates']) => (its: Supply) => ({
    ...its,
    order: { ...order, dates: changed },
  });
  return [
    {
      kind: 'lot',
      text: `larger lots of ${name} (half as much again in each)`,
      change: delivered(dates.map(({ on, lot }) => ({ on, lot: moreOf(lot) }))),
    },
    ...(extra === undefined
      ? []
      : [
          {
            kind: 'delivery',
            text: `one delivery more of ${name} (${extra.lot} on ${extra.on})`,
            change: delivered([...dates, extra]),
          } as const,
        ]),
    ...(first === undefined ? [] : [atStart(name, first.lot)]),
  ];
}

const atStart = (name: string, lot: number): Change => ({
  kind: 'stock',
  text: `${lot} more of ${name} in stock at the start`,
  change: (its) => ({ ...its, atStart: its.atStart + lot }),
});

const moreOf = (lot: number): number => Math.max(lot + 1, Math.round(LOT_MORE * lot));

/**
 * In the middle of the widest gap between two dates, as much as comes before it; of a single delivery,
 * between the start of the programme and it. undefined where all come on successive days.
 */
function oneMore(dates: DeliveryDates['dates'], start: string): DeliveryDates['dates'][number] | undefined {
  const days = dates.map(({ on, lot }) => ({ day: dayNumber(on), lot })).sort((a, b) => a.day - b.day);
  const [only] = days,
    all = days.length === 1 ? [{ ...defined(only), day: dayNumber(start) }, ...days] : days;
  const [widest] = neighbours(all)
    .map(([before, after]) => ({ from: before.day, width: after.day - before.day, lot: before.lot }))
    .filter(({ width }) => width >= 2)
    .sort((a, b) => b.width - a.width || a.from - b.from);
  return widest && { on: isoDate(widest.from + Math.floor(widest.width / 2)), lot: widest.lot };
}
