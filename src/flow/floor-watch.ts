import type { Place } from './floor/place.js';
import { SidePlace } from './floor/side-place.js';
import type { Unit } from './floor/unit.js';
import { Followed, hasBegun, isOutside, isRepair, phaseOf, truckOf } from './followed.js';
import type { Found, Happening, Other } from './model/happening.js';
import { SEND_BACK } from './model/quality.js';
import { Numbered } from './numbered.js';
import type { Run, Witness } from './run.js';
import { BACK, SCRAPPED, type Verdict } from './tasks/inspections.js';

/** Writes down what happens in a run; whoever makes it lets it look after each event. */
export class FloorWatch implements Witness {
  readonly happenings: Happening[] = [];
  private readonly numbered: Numbered;
  private readonly followed = new Map<Unit, Followed>();
  private readonly sides: readonly { readonly side: SidePlace; seen: Followed | null }[];
  private readonly finds: Omit<Found, 'to'>[] = [];
  /** Starts that come with the next working minute, in the order in which they were begun. */
  private readonly coming = new Set<Followed>();

  constructor(private readonly run: Run) {
    this.numbered = new Numbered(run);
    this.sides = run.places.flatMap((side) => (side instanceof SidePlace ? [{ side, seen: null }] : []));
    run.witness = this;
    const { units } = run,
      remove = units.remove.bind(units);
    units.remove = (unit) => {
      this.gone(unit);
      remove(unit);
    };
  }

  /** All that followed from an event is done. */
  look(): void {
    const { run, numbered } = this;
    this.begin();
    for (const each of this.sides) this.lookAtSide(each);
    if (numbered.hasCarriers)
      for (const [unit, { held }] of this.followed) numbered.release(held, unit.companionBits);
    for (const unit of run.units.all) if (unit.alive) this.lookAt(unit);
  }

  found(_: Unit, find: number, again: boolean): void {
    this.finds.push({ find, again });
  }

  judged(unit: Unit, { outcome, repairMinutes, target }: Verdict): void {
    this.begin();
    const seen = this.followed.get(unit),
      { thens, steps } = this.run.model;
    if (seen === undefined) return;
    if (repairMinutes === 0)
      for (const { side, seen: its } of this.sides) if (side.lead === unit.place) this.end(its);
    for (const found of this.finds.splice(0)) {
      const isBack = outcome === BACK && thens.kind[steps.findThen[found.find]] === SEND_BACK;
      this.tell(seen, 'find', [], { found: { ...found, to: isBack ? target!.id : -1 } });
    }
    seen.isScrapped = outcome === SCRAPPED;
    if (repairMinutes === 0) this.end(seen);
  }

  private gone(unit: Unit): void {
    this.begin();
    const seen = this.followed.get(unit),
      { route } = unit.step;
    if (seen !== undefined) {
      this.getOut(seen);
      this.end(seen);
      if (seen.isScrapped) this.tell(seen, 'scrap');
      else if (route.isMain) this.tell(seen, 'ship');
      this.numbered.release(seen.held, 0);
      this.followed.delete(unit);
    }
    if (route.stock !== null && seen?.isScrapped !== true) this.numbered.deliver(route.stock, unit.number);
  }

  private lookAt(unit: Unit): void {
    let seen = this.followed.get(unit);
    const { step, place, truck } = unit;
    if (seen === undefined) {
      if (isOutside(unit)) return;
      seen = new Followed(unit.number, step);
      this.followed.set(unit, seen);
      const isStocked = step.route.stock !== null;
      this.tell(seen, 'enter', [], isStocked ? {} : { options: [...unit.options] });
    }
    seen.off |= unit.ownOff;
    if (this.numbered.hasCarriers) this.numbered.claim(seen.held, unit.companionBits);
    if (truck !== null) {
      if (seen.truck === truck) return;
      this.getOut(seen);
      this.comeTo(seen, unit);
      seen.truck = truck;
      this.tell(seen, 'load', [truckOf(seen)]);
      return;
    }
    this.getOut(seen);
    if (unit.arrivedBy !== null) return;
    if (place !== null && seen.isDoneIn(place, step)) {
      this.end(seen);
      return;
    }
    const isRepaired = seen.isInRepair && !isRepair(place);
    if (isRepaired) this.end(seen);
    this.comeTo(seen, unit);
    if (place === null) return;
    seen.isInRepair = isRepair(place);
    if (seen.phase === 'arrived' && hasBegun(phaseOf(place)))
      this.start(seen, place, this.numbered.joining(seen, unit, place));
  }

  /** A shadow of the unit, at one of several steps side by side. */
  private lookAtSide(each: { readonly side: SidePlace; seen: Followed | null }): void {
    const { side } = each,
      { shadow } = side;
    if (each.seen !== null && !(side.isGoing && each.seen.is(shadow))) this.end(each.seen);
    if (!side.isGoing) each.seen = null;
    else if (each.seen === null || each.seen.phase === 'ended') {
      each.seen = new Followed(shadow.number, shadow.step);
      each.seen.phase = 'arrived';
    }
    if (each.seen?.phase === 'arrived' && hasBegun(side.phase))
      this.start(each.seen, side, this.numbered.partsOf(shadow));
  }

  /** It comes to the step at which it is now, unless it is there already. */
  private comeTo(seen: Followed, { step }: Unit): void {
    if (seen.step !== step) this.end(seen);
    else if (seen.phase === 'arrived' || seen.phase === 'started') return;
    seen.step = step;
    seen.phase = 'arrived';
    this.tell(seen, 'arrive');
  }

  private getOut(seen: Followed): void {
    if (seen.truck === null) return;
    this.tell(seen, 'unload', [truckOf(seen)]);
    seen.truck = null;
    seen.phase = 'ended';
  }

  private start(seen: Followed, place: Place, joining: readonly Other[]): void {
    seen.phase = 'started';
    seen.begins(this.run, place, joining, this.numbered.with(seen.held));
    this.coming.add(seen);
    this.begin();
  }

  /** What is due of the starts that are to come is told; of `ended`, be it due or not. */
  private begin(ended: Followed | null = null): void {
    if (this.coming.size === 0) return;
    const { now } = this.run,
      due = [...this.coming]
        .map((seen) => ({ seen, at: Math.min(seen.startsAt(this.run), seen === ended ? now : Infinity) }))
        .filter(({ at }) => at <= now)
        .sort((a, b) => a.at - b.at);
    for (const { seen, at } of due) {
      this.coming.delete(seen);
      if (seen.joining.length > 0) this.tell(seen, 'join', seen.joining, {}, at);
      this.tell(seen, 'start', seen.carriers, {}, at);
    }
  }

  private end(seen: Followed | null): void {
    if (seen === null) return;
    if (seen.phase === 'started') {
      if (this.coming.has(seen)) this.begin(seen);
      this.tell(seen, 'end');
    }
    if (seen.phase !== 'entered') seen.phase = 'ended';
    seen.isInRepair = false;
  }

  private tell(
    { step, number }: Followed,
    kind: Happening['kind'],
    others: readonly Other[] = [],
    more: Pick<Happening, 'options' | 'found'> = {},
    at = this.run.now,
  ): void {
    // Steps side by side have a name each, their group has none.
    const named = step.sideSteps[0] ?? step,
      of = kind === 'enter' || kind === 'ship' ? -1 : named.id;
    if (step.sideSteps.length > 0 && (kind === 'start' || kind === 'end')) return;
    this.happenings.push({ at, kind, route: step.route.id, number, step: of, others, ...more });
  }
}
