import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { HOLD_NONE, REPAIR, SCRAP, SEND_BACK } from '../../flow/model/model.js';
import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import { number } from '../format.js';
import { Later } from '../sample/deferred.js';
import type { Pending, PendingParts } from '../sample/deferred.js';
import { ratio } from '../sample/sample.js';
import type { Sample } from '../sample/sample.js';
import type { Estimate, Finding } from '../simulate/results.js';

/** Results of rules 8 to 10. */
export interface QualityResults {
  /**
   * A row a kind of defect and the step that makes it, in the order of the routes; those that were never made
   * are left out.
   */
  readonly defects: readonly DefectResult[];
  /** A row a site where items are made. */
  readonly escapes: readonly EscapeResult[];
  readonly holds: readonly HoldResult[];
  readonly comparisons: readonly ComparisonResult[];
  /** Work done again and repairs, person-hours a replication. */
  readonly rework: readonly { readonly crew: string; readonly site: string; readonly hours: Estimate }[];
}

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
export interface HoldResult {
  readonly name: string;
  readonly site: string;
  /** Of the units that came to it. */
  readonly heldShare: Estimate;
  /** Units held or on the way to a place there, mean over time. */
  readonly units: Estimate;
  /** From the end of the step before to the release, units released. */
  readonly daysMean: Estimate;
  readonly daysP95: Estimate;
  /** Items a replication. */
  readonly mended: Estimate;
}
export interface ComparisonResult {
  readonly first: string;
  readonly second: string;
  /** Units that both have seen, a replication. */
  readonly units: Estimate;
  /**
   * Shares of these, first visits: nothing found (good) or something (bad), at the first and at the second.
   */
  readonly goodGood: Estimate;
  readonly goodBad: Estimate;
  readonly badGood: Estimate;
  readonly badBad: Estimate;
  /** Share of good-good and bad-bad together. */
  readonly agreement: Estimate;
  /** Extra work where they differ, hours a replication. */
  readonly extraHours: Estimate;
}

/** Escapes charged to where they are found, holds, second measurements and work done again. */
export function quality(sample: Sample): PendingParts<QualityResults> {
  const { resources, siteNames } = sample.model;
  return {
    defects: defects(sample),
    escapes: escapes(sample),
    holds: holds(sample),
    comparisons: comparisons(sample),
    rework: resources.names.slice(0, resources.crews).map((crew, c) => ({
      crew,
      site: siteNames[resources.site[c]],
      hours: sample.amount(({ reworkMinutes }) => reworkMinutes[c] / 60),
    })),
  };
}

/** A noted item on a unit that leaves: there was no hold after the find. */
export function shippedOpen(sample: Sample): Later<Finding[]> {
  const { slots, steps } = sample.model,
    noted = ({ quality: { shippedNoted } }: Observation): number =>
      shippedNoted.reduce((sum, items) => sum + items, 0);
  const replications = sample.count((each) => noted(each) > 0),
    items = sample.amount(noted);
  const kinds = Array.from(slots.kind, (kind, slot) => ({
    times: sample.count(({ quality: { shippedNoted } }) => shippedNoted[slot] > 0),
    name: kind < 0 ? `failure of ${steps.names[slots.step[slot]]}` : slots.kindNames[kind],
  }));
  return new Later(() =>
    replications.value === 0
      ? []
      : [
          {
            kind: 'shipped open',
            replications: replications.value,
            text:
              'units were shipped with items that had been found and left open: ' +
              `${number(items.value.mean)} a replication ` +
              `(${[...new Set(seenOf(kinds).map(({ name }) => name))].join(', ')}); a step with hold ` +
              'after the find would keep them back',
          },
        ],
  );
}

/** Those that occurred in some replication. */
const seenOf = <Each extends { readonly times: Later<number> }>(all: readonly Each[]): Each[] =>
  all.filter(({ times }) => times.value > 0);

function defects(sample: Sample): Later<DefectResult[]> {
  const { slots, steps, thens } = sample.model;
  const all = slotsOf(sample).map(({ slot, times }) => {
    const shareOf = (items: (quality: Observation['quality']) => number) =>
      sample.share(({ quality: seen }) => ratio(items(seen), seen.made[slot]));
    const finds = findsOf(sample.model, slot),
      foundAt = finds.map(({ find, step }) => ({
        times: sample.count(({ quality: { found } }) => found[find] > 0),
        result: {
          step: steps.names[step],
          then: thenOf(thens.kind[steps.findThen[find]]),
          share: shareOf(({ found }) => found[find]),
          repairHours: sample.amount(({ quality: { repairMinutes } }) => repairMinutes[find] / 60),
        },
      }));
    return {
      times,
      result: {
        kind: slots.kindNames[slots.kind[slot]],
        madeAt: steps.names[slots.step[slot]],
        made: sample.amount(({ quality: { made } }) => made[slot]),
        foundAt: new Later<DefectResult['foundAt']>(() => seenOf(foundAt).map(({ result }) => result)),
        repairHours: sample.amount(
          ({ quality: { repairMinutes } }) =>
            finds.reduce((sum, { find }) => sum + repairMinutes[find], 0) / 60,
        ),
        shippedWith: shareOf(({ shippedUnfound }) => shippedUnfound[slot]),
        shippedNoted: shareOf(({ shippedNoted }) => shippedNoted[slot]),
      },
    };
  });
  return new Later<DefectResult[]>(() => seenOf(all).map(({ result }) => result));
}

function escapes(sample: Sample): Later<EscapeResult[]> {
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
          rows.reduce((sum, row) => sum + seen[column][row], 0),
          shipped,
        ),
      );
    const foundIn = (isHere: boolean) =>
      perUnit(
        'found',
        finds.filter(({ step }) => (siteOf(step) === site) === isHere).map(({ find }) => find),
      );
    return {
      made,
      result: {
        site: name,
        madePerUnit: perUnit('made', here),
        foundHerePerUnit: foundIn(true),
        foundElsewherePerUnit: foundIn(false),
        shippedWithPerUnit: perUnit('shippedUnfound', here),
      },
    };
  });
  return new Later<EscapeResult[]>(() =>
    all.filter(({ made }) => seenOf(made).length > 0).map(({ result }) => result),
  );
}

function holds(sample: Sample): Pending<HoldResult[]> {
  const { quality: columns, steps, stations, siteNames } = sample.model;
  return idsOf(columns.hold, (hold) => hold !== HOLD_NONE).map((step, h) => ({
    name: steps.names[step],
    site: siteNames[stations.site[steps.station[step]]],
    heldShare: sample.share(({ quality: { held, cameToHold } }) => ratio(held[h], cameToHold[h])),
    units: sample.amount(({ quality: { inHold } }) => inHold[h]),
    daysMean: sample.amount(({ quality: { holdMean } }) => holdMean[h] / MINUTES_PER_DAY),
    daysP95: sample.amount(({ quality: { holdP95 } }) => holdP95[h] / MINUTES_PER_DAY),
    mended: sample.amount(({ quality: { mended } }) => mended[h]),
  }));
}

function comparisons(sample: Sample): Pending<ComparisonResult[]> {
  const {
      quality: { compareWith },
      steps,
    } = sample.model,
    inspections = idsOf(steps.station, (_, step) => steps.findStart[step + 1] > steps.findStart[step]);
  return inspections.flatMap((step, inspection): Pending<ComparisonResult>[] => {
    if (compareWith[step] < 0) return [];
    const cells = ({ quality: { compared } }: Observation): Float64Array =>
      compared.subarray(4 * inspection, 4 * inspection + 4);
    const all = (each: Observation): number => cells(each).reduce((sum, units) => sum + units, 0);
    const share = (...wanted: number[]) =>
      sample.share((each) =>
        ratio(
          wanted.reduce((sum, cell) => sum + cells(each)[cell], 0),
          all(each),
        ),
      );
    return [
      {
        first: steps.names[compareWith[step]],
        second: steps.names[step],
        units: sample.amount(all),
        goodGood: share(0),
        goodBad: share(1),
        badGood: share(2),
        badBad: share(3),
        agreement: share(0, 3),
        extraHours: sample.amount(({ quality: { differMinutes } }) => differMinutes[inspection] / 60),
      },
    ];
  });
}

/** Slots of a kind of defect, and in how many replications an item of it was made. */
function slotsOf(sample: Sample): { readonly slot: number; readonly times: Later<number> }[] {
  return idsOf(sample.model.slots.kind, (kind) => kind >= 0).map((slot) => ({
    slot,
    times: sample.count(({ quality: { made } }) => made[slot] > 0),
  }));
}

/** Rows that look for a slot, with their steps. */
function findsOf({ steps }: Model, slot: number): { readonly find: number; readonly step: number }[] {
  return idsOf(steps.station, () => true).flatMap((step) =>
    idsOf(
      steps.findSlot,
      (sought, find) => sought === slot && find >= steps.findStart[step] && find < steps.findStart[step + 1],
    ).map((find) => ({ find, step })),
  );
}

function idsOf(column: ArrayLike<number>, is: (value: number, id: number) => boolean): number[] {
  return Array.from(column).flatMap((value, id) => (is(value, id) ? [id] : []));
}

const thenOf = (kind: number): DefectResult['foundAt'][number]['then'] =>
  kind === REPAIR ? 'repaired' : kind === SEND_BACK ? 'sent back' : kind === SCRAP ? 'scrapped' : 'carried';
