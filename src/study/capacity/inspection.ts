import { CARRY, REPAIR, SCRAP, SEND_BACK, type Model } from '../../flow/model/model.js';
import { meanOf } from '../../random/moments.js';
import { carried, mendMinutes, passedOn, type Columns } from './carried.js';
import { meanChance, type Build } from './mix.js';

/** One thing an inspection may find, for one build. */
interface Find {
  readonly slot: number;
  readonly note: number;
  readonly chance: number;
  readonly kind: number;
  readonly then: number;
}

/** Units at an inspection and, of them, those with each slot open; see `Columns`. */
export interface Stream {
  units: number;
  readonly open: Float64Array;
}

/**
 * Units that an inspection `from` sends back to a step `target`: those of the last sweep, and those of the
 * present one.
 */
export class BackStream implements Stream {
  units = 0;
  readonly open: Float64Array;
  private unitsNow = 0;
  private readonly openNow: Float64Array;

  constructor(
    readonly from: number,
    readonly target: number,
    columnCount: number,
  ) {
    this.open = new Float64Array(columnCount);
    this.openNow = new Float64Array(columnCount);
  }

  send(units: number): void {
    this.unitsNow += units;
  }

  sendOpen(slot: number, units: number): void {
    this.openNow[slot] += units;
  }

  /** The sweep is over: what was sent in it is what comes in the next. Returns the greatest change. */
  settle(): number {
    let change = Math.abs(this.units - this.unitsNow);
    for (let s = 0; s < this.open.length; s++) {
      change = Math.max(change, Math.abs(this.open[s] - this.openNow[s]));
      this.open[s] = this.openNow[s];
    }
    this.units = this.unitsNow;
    this.unitsNow = 0;
    this.openNow.fill(0);
    return change;
  }
}

/**
 * What an inspection does to a stream of units, by expectation. Slots are taken as independent of each other,
 * which is exact as long as no loop ties them together.
 *
 * A send-back with limit L: where each visit ends in it with chance r, a unit is sent back r + r^2 + .. + r^L
 * times (geometric, cut off at L), the same as without a limit at the chance r (1 - r^L) / (1 - r^(L + 1)).
 */
export class Inspection {
  /** Repairs found, by row of `thens`, in the sweep so far. */
  readonly repairs = new Map<number, number>();
  /** Chance that a unit of the last stream had something found. */
  chanceOfFind = 0;
  readonly backs: readonly BackStream[];
  private readonly finds: readonly Find[];
  /** Place in `finds` of each slot that is looked for. */
  private readonly findOf = new Map<number, number>();
  private readonly limited: ReadonlyMap<number, LimitedLoop>;

  constructor(
    private readonly model: Model,
    build: Build,
    step: number,
    private readonly columns: Columns,
  ) {
    const { findStart, findSlot, findChance, findThen } = model.steps;
    const finds: Find[] = [];
    for (let f = findStart[step]; f < findStart[step + 1]; f++) {
      finds.push({
        slot: findSlot[f],
        note: model.quality.findNote[f],
        chance: meanChance(model, build, findChance[f]),
        then: findThen[f],
        kind: model.thens.kind[findThen[f]],
      });
    }
    this.finds = finds;
    finds.forEach(({ slot }, find) => this.findOf.set(slot, find));
    const backThens = [...new Set(finds.filter((find) => find.kind === SEND_BACK).map((find) => find.then))];
    this.limited = new Map(backThens.map((then) => [then, new LimitedLoop(model.thens.limit[then])]));
    // The earliest of the steps named by what is found is where the unit goes.
    const targets = [...new Set(backThens.map((then) => model.thens.target[then]))].sort((a, b) => a - b);
    this.backs = targets.map((target) => new BackStream(step, target, columns.count));
  }

  startSweep(): void {
    this.repairs.clear();
    for (const loop of this.limited.values()) loop.startSweep();
  }

  /** Passes a stream through: it becomes those who go on. */
  pass(stream: Stream): void {
    const { units, open } = stream;
    if (units <= 0) return;
    const rows = this.finds.map((find) => this.row(find, find.slot < 0 ? 1 : open[find.slot] / units));
    this.chanceOfFind = 1 - rows.reduce((none, row) => none * (1 - row.found), 1);
    for (const [then, loop] of this.limited) {
      loop.saw(
        units,
        1 - rows.reduce((none, row) => (row.find.then === then ? none * (1 - row.found) : none), 1),
      );
    }
    const kept = units * rows.reduce((none, row) => none * (1 - row.scrapped), 1);
    for (const row of rows) {
      if (row.find.kind === REPAIR)
        this.repairs.set(row.find.then, (this.repairs.get(row.find.then) ?? 0) + kept * row.found);
    }
    const rowOf = (slot: number): Row | undefined => {
      const find = this.findOf.get(slot);
      return find === undefined ? undefined : rows[find];
    };
    let going = kept;
    for (const back of this.backs) {
      const none = rows.reduce(
        (chance, row) => (row.target === back.target ? chance * (1 - row.sent) : chance),
        1,
      );
      const sent = going * (1 - none);
      going *= none;
      if (sent <= 0) continue;
      back.send(sent);
      for (let slot = 0; slot < open.length; slot++) {
        if (open[slot] > 0)
          back.sendOpen(slot, sent * openAfter(open[slot] / units, rowOf(slot), back.target, none));
      }
      if (this.columns.withNotes)
        for (const row of rows)
          this.note(row, stream, sent, false, (column, more) => {
            back.sendOpen(column, more);
          });
    }
    const before = this.columns.withNotes ? { units, open: open.slice() } : stream;
    for (let slot = 0; slot < open.length; slot++) {
      if (open[slot] > 0) open[slot] = going * openAfter(open[slot] / units, rowOf(slot), Infinity, 0);
    }
    if (this.columns.withNotes)
      for (const row of rows)
        this.note(row, before, going, true, (column, more) => {
          open[column] += more;
        });
    stream.units = going;
  }

  /**
   * How a row changes the notes of those of a stream that go one way: `add` takes the change against the same
   * share of the stream as it was. What was passed on before is found again like any other; passed on anew, a
   * unit goes on (`isOn`).
   */
  private note(
    { find, found, noted, passes }: Row,
    { units, open }: Stream,
    going: number,
    isOn: boolean,
    add: (column: number, units: number) => void,
  ): void {
    if (find.note < 0) return;
    const {
        columns,
        model: { thens, draws },
      } = this,
      carriedBefore = (going * open[carried(columns, find.note)]) / units;
    if (find.kind === CARRY) {
      const more = find.slot < 0 ? (going - carriedBefore) * found : going * found,
        draw = thens.repairDraw[find.then];
      add(carried(columns, find.note), more);
      if (draw >= 0) add(mendMinutes(columns), more * meanOf(draws[draw].distribution));
    } else if (find.slot < 0 && isOn) {
      const column = passedOn(columns, find.note);
      add(column, (going - (going * open[column]) / units) * noted);
    }
    if (find.slot < 0) return;
    const column = passedOn(columns, find.slot),
      passedBefore = (going * open[column]) / units;
    add(
      column,
      passedBefore * ((isOn ? (1 - find.chance) / passes : 1 - find.chance) - 1) +
        (isOn && find.kind !== CARRY ? going * noted : 0),
    );
  }

  private row(find: Find, present: number): Row {
    const found = present * find.chance;
    const missed = present - found;
    if (find.kind === SCRAP)
      return {
        find,
        found,
        scrapped: found,
        sent: 0,
        stillOpen: found < 1 ? missed / (1 - found) : 0,
        noted: 0,
        passes: 1 - found,
        target: -1,
      };
    if (find.kind === REPAIR || find.kind === CARRY)
      return { find, found, scrapped: 0, sent: 0, stillOpen: missed, noted: 0, passes: 1, target: -1 };
    const share = this.limited.get(find.then)?.share ?? 1;
    const atLimit = found * (1 - share);
    const scrapped = this.model.thens.scrapAtLimit[find.then] ? atLimit : 0;
    const passed = missed + (atLimit - scrapped);
    const rest = 1 - scrapped,
      notSent = rest - found * share;
    return {
      find,
      found,
      scrapped,
      sent: rest > 0 ? (found * share) / rest : 0,
      stillOpen: rest > 0 ? passed / rest : 0,
      noted: notSent > 0 ? (atLimit - scrapped) / notSent : 0,
      passes: notSent,
      target: this.model.thens.target[find.then],
    };
  }
}

/**
 * Chances of one row; `sent` and `stillOpen` (open and not sent back for it) are among units it does not
 * scrap.
 */
interface Row {
  readonly find: Find;
  readonly found: number;
  readonly scrapped: number;
  readonly sent: number;
  readonly stillOpen: number;
  /** Neither scrapped nor sent back by it; of these, passed on at the limit. */
  readonly passes: number;
  readonly noted: number;
  /** Step it sends back to; -1 if it does not. */
  readonly target: number;
}

/**
 * Chance that a slot is open on a unit that goes to `target` (`Infinity`: on), where `none` is the chance
 * that no row of that target was found: for a row of an earlier target it is known that it was not, for one
 * of a later target nothing is.
 */
function openAfter(before: number, row: Row | undefined, target: number, none: number): number {
  if (row === undefined) return before;
  if (row.target < 0 || row.target > target) return row.stillOpen;
  const notSent = 1 - row.sent;
  if (notSent <= 0) return 0;
  if (row.target < target) return row.stillOpen / notSent;
  return (row.stillOpen * (1 - none / notSent)) / (1 - none);
}

/**
 * Share of the finds of a row that a limit still lets go back; from the chance of a find seen in the last
 * sweep.
 */
class LimitedLoop {
  private visits = 0;
  private finds = 0;
  share = 1;
  constructor(private readonly limit: number) {}

  saw(units: number, chance: number): void {
    this.visits += units;
    this.finds += units * chance;
  }

  startSweep(): void {
    if (this.visits > 0) this.share = shareWithin(this.finds / this.visits, this.limit);
    this.visits = this.finds = 0;
  }
}

/** (1 - r^L) / (1 - r^(L + 1)); L / (L + 1) in the limit of a find at every visit. */
function shareWithin(chance: number, limit: number): number {
  if (chance >= 1 - 1e-9) return limit / (limit + 1);
  return (1 - chance ** limit) / (1 - chance ** (limit + 1));
}
