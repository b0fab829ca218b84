import type { Companion } from './claims/companion.js';
import type { Resource } from './claims/resource.js';
import type { Place } from './floor/place.js';
import type { Unit } from './floor/unit.js';
import type { Other } from './model/happening.js';
import { CREW } from './model/resources.js';
import type { Run } from './run.js';

/**
 * Numbers for what the engine only counts: sub-assemblies in a stock, first in, first out; carriers, the one
 * that was put aside the longest ago first.
 */
export class Numbered {
  private readonly stocks = new Map<Resource, { queue: number[]; last: number }>();
  private readonly carriers = new Map<Resource, { queue: number[]; last: number }>();
  private readonly kept: readonly Companion[];

  constructor(private readonly run: Run) {
    this.kept = run.shop.companions.filter(({ resource }) => resource.kind !== CREW);
  }

  get hasCarriers(): boolean {
    return this.kept.length > 0;
  }

  deliver(stock: Resource, number: number): void {
    lineOf(this.stocks, stock).queue.push(number);
  }

  /** Sub-assemblies that join at a step; those of the stock at the start have numbers from 0 down. */
  private take(stock: Resource, amount: number): Other[] {
    const line = lineOf(this.stocks, stock);
    return Array.from({ length: amount }, () => ({
      kind: 'part' as const,
      route: stock.feeder!.id,
      // What was there at the start is older than all that was delivered.
      number: line.last < stock.amount ? 0 - line.last++ : line.queue.shift()!,
    }));
  }

  /** Sub-assemblies of stocks, and own parts that were off, which are with the unit from now on. */
  joining(seen: { off: number }, unit: Unit, { station }: Place): Other[] {
    const { asked } = unit.step,
      back = asked.ownParts & seen.off & ~unit.ownOff;
    seen.off &= ~back;
    const own = this.run.shop.routes.flatMap(({ ownBit, id }) =>
      (ownBit & back) !== 0 ? [{ kind: 'part' as const, route: id, number: unit.number }] : [],
    );
    // One unit of a lot takes the parts.
    return station.lotMost > 0 && station.lotLead !== unit.place ? own : [...this.partsOf(unit), ...own];
  }

  partsOf({ step }: Unit): Other[] {
    return step.asked.needs.flatMap(({ resource, amount }) =>
      resource.feeder === null ? [] : this.take(resource, amount),
    );
  }

  /** What has left a unit is put aside. */
  release(held: Held, bits: number): void {
    for (const { bit, resource } of this.kept) {
      const indices = held.get(bit);
      if (indices === undefined || (bits & bit) !== 0) continue;
      held.delete(bit);
      lineOf(this.carriers, resource).queue.push(...indices);
    }
  }

  /** What has come to a unit gets its numbers. */
  claim(held: Held, bits: number): void {
    for (const { bit, resource, amount } of this.kept) {
      if ((bits & bit) === 0 || held.has(bit)) continue;
      const line = lineOf(this.carriers, resource);
      held.set(
        bit,
        Array.from({ length: amount }, () => line.queue.shift() ?? line.last++),
      );
    }
  }

  /** The carriers that are with a unit. */
  with(held: Held): Other[] {
    return this.kept.flatMap(({ bit, resource }) =>
      (held.get(bit) ?? []).map((index) => ({
        kind: 'carrier' as const,
        resource: this.run.shop.resources.indexOf(resource),
        index,
      })),
    );
  }
}

/** Indices of carriers by bit of the companion. */
export type Held = Map<number, number[]>;

function lineOf(lines: Map<Resource, { queue: number[]; last: number }>, resource: Resource) {
  const line = lines.get(resource) ?? { queue: [], last: 0 };
  lines.set(resource, line);
  return line;
}
