import type { Model } from '../../../flow/model/model.js';
import { type FloorEvent, UNIT } from '../../../records/log/event.js';
import { dayNumber, isoDate } from '../../../scenario/calendar/date.js';
import type { Supply } from '../../../scenario/types/plant.js';
import type { Scenario } from '../../../scenario/types/scenario.js';

/** Sub-assemblies of one feeder, as far as the log tells. */
interface Made {
  begun: number;
  done: number;
  gone: number;
  /** The least that done less gone has been: so many at least were there before. */
  least: number;
}

/** What lies between the units: sub-assemblies in stock and in the making, parts of supplies. */
export class Stocks {
  private readonly feeders = new Map<string, Made>();
  private readonly begun = new Map<string, number>();
  private readonly lastSteps: ReadonlyMap<string, string>;
  private first = Infinity;

  constructor(private readonly model: Model) {
    const { routes, steps } = model;
    this.lastSteps = new Map(
      routes.names.flatMap((name, route) =>
        (routes.stock[route] ?? -1) < 0
          ? []
          : [[name, steps.names[(routes.firstStep[route + 1] ?? 0) - 1] ?? ''] as const],
      ),
    );
    for (const name of this.lastSteps.keys())
      this.feeders.set(name, { begun: 0, done: 0, gone: 0, least: 0 });
  }

  take({ at, kind, type, step, others }: FloorEvent): void {
    this.first = Math.min(this.first, at);
    if (kind === 'start') this.begun.set(step, (this.begun.get(step) ?? 0) + 1);
    if (kind === 'join')
      for (const [name, made] of this.feeders) {
        made.gone += others.filter((other) => other.startsWith(`${name}:`)).length;
        made.least = Math.min(made.least, made.done - made.gone);
      }
    const made = type === UNIT ? undefined : this.feeders.get(type);
    if (made === undefined) return;
    if (kind === 'enter') made.begun++;
    else if (kind === 'scrap') made.begun--;
    else if (kind === 'end' && step === this.lastSteps.get(type)) made.done++;
  }

  /**
   * The scenario with the stocks of the moment as those at its start.
   * @param origin start of the programme, minutes since 1970-01-01T00:00Z
   */
  asAt(
    scenario: Scenario,
    origin: number,
    at: number,
  ): { readonly scenario: Scenario; readonly notes: string[] } {
    const notes: string[] = [],
      again: string[] = [],
      isWhole = this.first < origin + WHOLE_LOG;
    const feeders = Object.entries(scenario.feeders).map(([name, feeder]) => {
      const made = this.feeders.get(name);
      if (made === undefined || feeder.kind !== 'stock') return [name, feeder] as const;
      const before = Math.max(isWhole ? feeder.atStart : 0, -made.least),
        stock = Math.min(feeder.target, before + made.done - made.gone);
      if (made.begun > made.done) again.push(`${made.begun - made.done} of ${name}`);
      return [name, { ...feeder, atStart: stock }] as const;
    });
    if (again.length > 0) notes.push(`Sub-assemblies in the making are begun again: ${again.join(', ')}.`);
    const names = Object.keys(scenario.supplies);
    if (names.length > 0)
      notes.push(
        isWhole
          ? `Parts in stock are reckoned from work begun, those on order are there: ${names.join(', ')}.`
          : `The log does not tell of parts in stock, which are taken as at the start: ${names.join(', ')}.`,
      );
    const supplies = Object.entries(scenario.supplies).map(
      ([name, supply], s) =>
        [
          name,
          this.supplyAt(supply, s, { now: at - origin, start: scenario.programme.start, isWhole }),
        ] as const,
    );
    return {
      scenario: { ...scenario, feeders: Object.fromEntries(feeders), supplies: Object.fromEntries(supplies) },
      notes,
    };
  }

  /** @param s id of the supply, `now` minutes since the start of the programme */
  private supplyAt(
    supply: Supply,
    s: number,
    { now, start, isWhole }: { readonly now: number; readonly start: string; readonly isWhole: boolean },
  ): Supply {
    const { supplies } = this.model,
      { order, atStart } = supply;
    let left = atStart - this.used(supplies.resource[s] ?? -1);
    if (order.kind === 'reorder') {
      while (left <= order.level + order.safetyStock) left += order.lot;
      return isWhole ? { ...supply, atStart: left } : supply;
    }
    const come = [...(supplies.planTimes[s] ?? [])].filter((time) => time <= now).length;
    for (const lot of supplies.planLots[s]?.subarray(0, come) ?? []) left += lot;
    return {
      ...supply,
      atStart: isWhole ? Math.max(0, left) : atStart,
      order:
        order.kind === 'dates'
          ? { ...order, dates: order.dates.toSorted((a, b) => dayNumber(a.on) - dayNumber(b.on)).slice(come) }
          : { ...order, from: isoDate(dayNumber(order.from ?? start) + come * order.everyDays) },
    };
  }

  /** Parts that work begun so far has taken. */
  private used(resource: number): number {
    const { steps } = this.model;
    let used = 0;
    steps.names.forEach((step, id) => {
      for (let need = steps.needStart[id] ?? 0; need < (steps.needStart[id + 1] ?? 0); need++)
        if (steps.needResource[need] === resource)
          used += (this.begun.get(step) ?? 0) * (steps.needAmount[need] ?? 0);
    });
    return used;
  }
}

/** A log that begins with the programme, or within its first days, tells of all that was ever begun. */
const WHOLE_LOG = 3 * 24 * 60;
