import type { Model } from '../../../flow/model/model.js';
import { CARRY, REPAIR, SEND_BACK } from '../../../flow/model/quality.js';
import { remembered } from '../../../scenario/values/raw.js';
import { rowsOf } from '../../lists.js';
import { meanChance, meanRepair } from '../means.js';
import type { Build } from '../mix.js';
import { waysBackFrom } from '../way/ways-back.js';
import { type Find, type FindOdds, LimitedLoop, oddsOf, openAfter } from './finds.js';
import { BackStream, type Columns, carried, mendMinutes, passedOn, type Stream } from './streams.js';

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
  /** In the sweep so far: units looked at, and those with nothing found. */
  units = 0;
  clear = 0;
  readonly backs: readonly BackStream[];
  private readonly finds: readonly Find[];
  /** Indices of the finds by what follows them, and by the step to which they send back. */
  private readonly byThen = new Map<number, number[]>();
  private readonly byTarget = new Map<number, number[]>();
  private readonly limited: ReadonlyMap<number, LimitedLoop>;

  constructor(
    private readonly model: Model,
    private readonly build: Build,
    step: number,
    private readonly columns: Columns,
  ) {
    const { findStart, findSlot, findChance, findThen } = model.steps;
    const finds = rowsOf(findStart, step).map(
      (f): Find => ({
        slot: findSlot[f],
        note: model.quality.findNote[f],
        chance: meanChance(model, build, findChance[f]),
        then: findThen[f],
        kind: model.thens.kind[findThen[f]],
      }),
    );
    this.finds = finds;
    for (const [i, { kind, then }] of finds.entries()) {
      if (kind !== SEND_BACK) continue;
      remembered(this.byThen, then, () => []).push(i);
      remembered(this.byTarget, model.thens.target[then], () => []).push(i);
    }
    this.limited = new Map(
      [...this.byThen.keys()].map((then) => [then, new LimitedLoop(model.thens.limit[then])]),
    );
    const ways = waysBackFrom(model, step);
    // The earliest of the steps named by what is found is where the unit goes.
    const targets = [...this.byTarget.keys()].sort((a, b) => a - b);
    this.backs = targets.map((target) => new BackStream(step, target, columns, ways.has(target)));
  }

  startSweep(): void {
    this.repairs.clear();
    this.units = this.clear = 0;
    for (const loop of this.limited.values()) loop.startSweep();
  }

  /** Passes a stream through: it becomes those who go on. */
  pass(stream: Stream): void {
    const { units, open } = stream,
      { live, rowOf } = this.columns;
    if (units <= 0) return;
    const rows = this.finds.map((find) =>
      oddsOf(
        this.model.thens,
        find,
        find.slot < 0 ? 1 : open[find.slot] / units,
        this.limited.get(find.then)?.share ?? 1,
      ),
    );
    this.chanceOfFind = 1 - noneOf(rows, ({ found }) => found);
    this.units += units;
    this.clear += units * (1 - this.chanceOfFind);
    for (const [then, loop] of this.limited)
      loop.add(units, 1 - noneOf(some(rows, this.byThen.get(then)), ({ found }) => found));
    const kept = units * noneOf(rows, ({ scrapped }) => scrapped);
    for (const row of rows) {
      if (row.find.kind === REPAIR)
        this.repairs.set(row.find.then, (this.repairs.get(row.find.then) ?? 0) + kept * row.found);
    }
    for (const row of rows) if (row.find.slot >= 0) rowOf[row.find.slot] = row;
    let going = kept;
    for (const back of this.backs) {
      const none = noneOf(some(rows, this.byTarget.get(back.target)), ({ sent }) => sent);
      const sent = going * (1 - none);
      going *= none;
      if (sent <= 0) continue;
      back.send(sent);
      for (const slot of live) {
        if (open[slot] > 0)
          back.sendOpen(slot, sent * openAfter(open[slot] / units, rowOf[slot], back.target, none));
      }
      if (this.columns.withNotes)
        for (const row of rows)
          this.note(row, stream, sent, false, (column, more) => {
            back.sendOpen(column, more);
          });
    }
    const before = this.columns.withNotes ? { units, open: open.slice() } : stream;
    for (const slot of live) {
      if (open[slot] > 0) open[slot] = going * openAfter(open[slot] / units, rowOf[slot], Infinity, 0);
    }
    if (this.columns.withNotes)
      for (const row of rows)
        this.note(row, before, going, true, (column, more) => {
          open[column] += more;
        });
    for (const row of rows) if (row.find.slot >= 0) rowOf[row.find.slot] = undefined;
    stream.units = going;
  }

  /**
   * How a row changes the notes of those of a stream that go one way: `add` takes the change against the same
   * share of the stream as it was. What was passed on before is found again like any other; passed on anew, a
   * unit goes on (`isOn`).
   */
  private note(
    { find, found, noted, passes }: FindOdds,
    { units, open }: Stream,
    going: number,
    isOn: boolean,
    add: (column: number, units: number) => void,
  ): void {
    if (find.note < 0) return;
    const {
        columns,
        model: { thens },
      } = this,
      carriedBefore = (going * open[carried(columns, find.note)]) / units;
    if (find.kind === CARRY) {
      const more = find.slot < 0 ? (going - carriedBefore) * found : going * found,
        minutes = meanRepair(this.model, this.build, thens.repairTime[find.then]);
      add(carried(columns, find.note), more);
      if (minutes > 0) add(mendMinutes(columns), more * minutes);
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
}

const some = (rows: readonly FindOdds[], indices: readonly number[] | undefined): FindOdds[] =>
  (indices ?? []).map((i) => rows[i]);

/** Chance that none of the rows comes true, each with its own chance. */
const noneOf = (rows: readonly FindOdds[], chance: (row: FindOdds) => number): number =>
  rows.reduce((none, row) => none * (1 - chance(row)), 1);
