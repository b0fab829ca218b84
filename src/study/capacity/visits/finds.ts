import type { Model } from '../../../flow/model/model.js';
import { CARRY, REPAIR, SCRAP } from '../../../flow/model/quality.js';
import { power } from '../../../random/power.js';

/** One thing an inspection may find, for one build. */
export interface Find {
  readonly slot: number;
  readonly note: number;
  readonly chance: number;
  readonly kind: number;
  readonly then: number;
}

/**
 * Chances of one row; `sent` and `stillOpen` (open and not sent back for it) are among units it does not
 * scrap.
 */
export interface FindOdds {
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
 * What comes of a find on a slot that is open with a chance.
 * @param share of the finds that a limit still lets go back
 */
export function oddsOf(thens: Model['thens'], find: Find, present: number, share: number): FindOdds {
  const found = present * find.chance;
  const missed = present - found;
  const goesOn = { find, found, scrapped: 0, sent: 0, stillOpen: missed, noted: 0, passes: 1, target: -1 };
  if (find.kind === REPAIR || find.kind === CARRY) return goesOn;
  if (find.kind === SCRAP)
    return {
      ...goesOn,
      scrapped: found,
      stillOpen: found < 1 ? missed / (1 - found) : 0,
      passes: 1 - found,
    };
  const atLimit = found * (1 - share);
  const scrapped = thens.scrapAtLimit[find.then] ? atLimit : 0;
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
    target: thens.target[find.then],
  };
}

/**
 * Chance that a slot is open on a unit that goes to `target` (`Infinity`: on), where `none` is the chance
 * that no row of that target was found: for a row of an earlier target it is known that it was not, for one
 * of a later target nothing is.
 */
export function openAfter(before: number, row: FindOdds | undefined, target: number, none: number): number {
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
export class LimitedLoop {
  private visits = 0;
  private finds = 0;
  share = 1;
  constructor(private readonly limit: number) {}

  add(units: number, chance: number): void {
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
  return (1 - power(chance, limit)) / (1 - power(chance, limit + 1));
}
