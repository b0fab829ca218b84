import type { Model } from '../../flow/model/model.js';
import { REPAIR, SCRAP, SEND_BACK } from '../../flow/model/quality.js';
import type { Observation } from '../../measure/observe.js';
import { rowsOf } from '../lists.js';
import { Deferred } from '../sample/deferred.js';
import { type Folded, occurring, type Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { ratio, sumOf } from '../statistics/sums.js';

export interface DefectResult {
  readonly kind: string;
  readonly madeAt: string;
  /** Items a replication. */
  readonly made: Estimate;
  /** Where they are found for the first time, route by route; steps where none was are left out. */
  readonly foundAt: readonly {
    readonly step: string;
    readonly then: 'repaired' | 'sent back' | 'scrapped' | 'carried';
    /** Of the items made. */
    readonly share: Estimate;
    /** Work of the repairs that followed, a replication; of what is carried, at the hold. */
    readonly repairHours: Estimate;
  }[];
  /** In all, a replication. */
  readonly repairHours: Estimate;
  /** Of the items made: on units shipped, never found; and found, noted and still open. */
  readonly shippedWith: Estimate;
  readonly shippedNoted: Estimate;
}
export interface EscapeResult {
  readonly site: string;
  /**
   * Items for each unit shipped: made in the site; of these found there, found in another, shipped without
   * being found.
   */
  readonly madePerUnit: Estimate;
  readonly foundHerePerUnit: Estimate;
  readonly foundElsewherePerUnit: Estimate;
  readonly shippedWithPerUnit: Estimate;
}
export function defects(sample: Sample): Deferred<DefectResult[]> {
  const { slots, steps, thens } = sample.model;
  const all = slotsOf(sample).map(({ slot, times }) => {
    const shareOf = (items: (quality: Observation['quality']) => number) =>
      sample.share(({ quality: seen }) => ratio(items(seen), seen.made[slot]));
    const finds = findsOf(sample.model, slot),
      foundAt = finds.map(({ find, step }) => ({
        times: sample.count(({ quality: { found } }) => found[find] > 0),
        row: {
          step: steps.names[step],
          then: thenOf(thens.kind[steps.findThen[find]]),
          share: shareOf(({ found }) => found[find]),
          repairHours: sample.amount(({ quality: { repairMinutes } }) => repairMinutes[find] / 60),
        },
      }));
    return {
      times,
      row: {
        kind: slots.kindNames[slots.kind[slot]],
        madeAt: steps.names[slots.step[slot]],
        made: sample.events(({ quality: { made } }) => made[slot]),
        foundAt: occurring<DefectResult['foundAt'][number]>(foundAt),
        repairHours: sample.amount(
          ({ quality: { repairMinutes } }) => sumOf(finds, ({ find }) => repairMinutes[find]) / 60,
        ),
        shippedWith: shareOf(({ shippedUnfound }) => shippedUnfound[slot]),
        shippedNoted: shareOf(({ shippedNoted }) => shippedNoted[slot]),
      },
    };
  });
  return occurring<DefectResult>(all);
}

export function escapes(sample: Sample): Deferred<EscapeResult[]> {
  const { model } = sample,
    { slots, stations, steps, siteNames } = model;
  const siteOf = (step: number): number => stations.site[steps.station[step]],
    kinds = slotsOf(sample);
  const all = siteNames.map((name, site) => {
    const made = kinds.filter(({ slot }) => siteOf(slots.step[slot]) === site),
      here = made.map(({ slot }) => slot);
    const finds = here.flatMap((slot) => findsOf(model, slot));
    const perUnit = (column: 'made' | 'found' | 'shippedUnfound', rows: readonly number[]) =>
      sample.amount(({ quality: seen, shipped }) =>
        ratio(
          sumOf(rows, (row) => seen[column][row]),
          shipped,
        ),
      );
    const foundIn = (isHere: boolean) =>
      perUnit(
        'found',
        finds.filter(({ step }) => (siteOf(step) === site) === isHere).map(({ find }) => find),
      );
    return {
      times: new Deferred(() => sumOf(made, ({ times }) => times.value)),
      row: {
        site: name,
        madePerUnit: perUnit('made', here),
        foundHerePerUnit: foundIn(true),
        foundElsewherePerUnit: foundIn(false),
        shippedWithPerUnit: perUnit('shippedUnfound', here),
      },
    };
  });
  return occurring<EscapeResult>(all);
}

/** Slots of a kind of defect, and in how many replications an item of it was made. */
function slotsOf(sample: Sample): { readonly slot: number; readonly times: Folded<number> }[] {
  const { kind } = sample.model.slots;
  return Array.from(kind.keys())
    .filter((slot) => kind[slot] >= 0)
    .map((slot) => ({ slot, times: sample.count(({ quality: { made } }) => made[slot] > 0) }));
}

/** Rows that look for a slot, with their steps. */
function findsOf({ steps }: Model, slot: number): { readonly find: number; readonly step: number }[] {
  return Array.from(steps.station.keys()).flatMap((step) =>
    rowsOf(steps.findStart, step)
      .filter((find) => steps.findSlot[find] === slot)
      .map((find) => ({ find, step })),
  );
}

const thenOf = (kind: number): DefectResult['foundAt'][number]['then'] =>
  kind === REPAIR ? 'repaired' : kind === SEND_BACK ? 'sent back' : kind === SCRAP ? 'scrapped' : 'carried';
