import { HOLD_NONE, REPAIR, SCRAP, SEND_BACK, type Model } from '../flow/model.js';
import type { Observation } from '../measure/observation.js';
import { number } from './format.js';
import type { Finding } from './results.js';
import type { ComparisonResult, DefectResult, EscapeResult, HoldResult, QualityResults } from './results-quality.js';
import { ratio, type Sample } from './sample.js';

const DAY = 1440;

/** Escapes charged to where they are found, holds, second measurements and work done again. */
export function quality(sample: Sample): QualityResults {
  const { resources, siteNames } = sample.model;
  return {
    defects: defects(sample), escapes: escapes(sample), holds: holds(sample), comparisons: comparisons(sample),
    rework: resources.names.slice(0, resources.crews).map((crew, c) => ({ crew, site: siteNames[resources.site[c]], hours: sample.amount(({ reworkMinutes }) => reworkMinutes[c] / 60) })),
  };
}

/** A noted item on a unit that leaves: there was no hold after the find. */
export function shippedOpen(sample: Sample): Finding[] {
  const { slots, steps } = sample.model, noted = ({ quality: { shippedNoted } }: Observation): number => shippedNoted.reduce((sum, items) => sum + items, 0);
  const replications = sample.count((each) => noted(each) > 0);
  if (replications === 0) return [];
  const kinds = Array.from(slots.kind.keys()).filter((slot) => sample.observations.some(({ quality: { shippedNoted } }) => shippedNoted[slot] > 0))
    .map((slot) => (slots.kind[slot] < 0 ? `failure of ${steps.names[slots.step[slot]]}` : slots.kindNames[slots.kind[slot]]));
  return [{ kind: 'shipped open', replications,
    text: `units were shipped with items that had been found and left open: ${number(sample.amount(noted).mean)} a replication (${[...new Set(kinds)].join(', ')}); a step with hold after the find would keep them back` }];
}

function defects(sample: Sample): DefectResult[] {
  const { slots, steps, thens } = sample.model;
  return madeSlots(sample).map((slot) => {
    const shareOf = (items: (quality: Observation['quality']) => number) => sample.share(({ quality: seen }) => ratio(items(seen), seen.made[slot]));
    const finds = findsOf(sample.model, slot);
    return {
      kind: slots.kindNames[slots.kind[slot]], madeAt: steps.names[slots.step[slot]],
      made: sample.amount(({ quality: { made } }) => made[slot]),
      foundAt: finds.filter(({ find }) => sample.observations.some(({ quality: { found } }) => found[find] > 0)).map(({ find, step }) => ({
        step: steps.names[step], then: thenOf(thens.kind[steps.findThen[find]]),
        share: shareOf(({ found }) => found[find]),
        repairHours: sample.amount(({ quality: { repairMinutes } }) => repairMinutes[find] / 60),
      })),
      repairHours: sample.amount(({ quality: { repairMinutes } }) => finds.reduce((sum, { find }) => sum + repairMinutes[find], 0) / 60),
      shippedWith: shareOf(({ shippedUnfound }) => shippedUnfound[slot]),
      shippedNoted: shareOf(({ shippedNoted }) => shippedNoted[slot]),
    };
  });
}

function escapes(sample: Sample): EscapeResult[] {
  const { model } = sample, { slots, stations, steps, siteNames } = model;
  const siteOf = (step: number): number => stations.site[steps.station[step]], made = madeSlots(sample);
  return siteNames.flatMap((name, site): EscapeResult[] => {
    const here = made.filter((slot) => siteOf(slots.step[slot]) === site);
    if (here.length === 0) return [];
    const finds = here.flatMap((slot) => findsOf(model, slot));
    const perUnit = (column: 'made' | 'found' | 'shippedUnfound', rows: readonly number[]) =>
      sample.amount(({ quality: seen, shipped }) => ratio(rows.reduce((sum, row) => sum + seen[column][row], 0), shipped));
    const foundIn = (isHere: boolean) => perUnit('found', finds.filter(({ step }) => (siteOf(step) === site) === isHere).map(({ find }) => find));
    return [{ site: name, madePerUnit: perUnit('made', here), foundHerePerUnit: foundIn(true), foundElsewherePerUnit: foundIn(false), shippedWithPerUnit: perUnit('shippedUnfound', here) }];
  });
}

function holds(sample: Sample): HoldResult[] {
  const { quality: columns, steps, stations, siteNames } = sample.model;
  return idsOf(columns.hold, (hold) => hold !== HOLD_NONE).map((step, h) => ({
    name: steps.names[step], site: siteNames[stations.site[steps.station[step]]],
    heldShare: sample.share(({ quality: { held, cameToHold } }) => ratio(held[h], cameToHold[h])),
    units: sample.amount(({ quality: { inHold } }) => inHold[h]),
    daysMean: sample.amount(({ quality: { holdMean } }) => holdMean[h] / DAY),
    daysP95: sample.amount(({ quality: { holdP95 } }) => holdP95[h] / DAY),
    mended: sample.amount(({ quality: { mended } }) => mended[h]),
  }));
}

function comparisons(sample: Sample): ComparisonResult[] {
  const { quality: { compareWith }, steps } = sample.model, inspections = idsOf(steps.station, (_, step) => steps.findStart[step + 1] > steps.findStart[step]);
  return inspections.flatMap((step, inspection): ComparisonResult[] => {
    if (compareWith[step] < 0) return [];
    const cells = ({ quality: { compared } }: Observation): Float64Array => compared.subarray(4 * inspection, 4 * inspection + 4);
    const all = (each: Observation): number => cells(each).reduce((sum, units) => sum + units, 0);
    const share = (...wanted: number[]) => sample.share((each) => ratio(wanted.reduce((sum, cell) => sum + cells(each)[cell], 0), all(each)));
    return [{
      first: steps.names[compareWith[step]], second: steps.names[step], units: sample.amount(all),
      goodGood: share(0), goodBad: share(1), badGood: share(2), badBad: share(3), agreement: share(0, 3),
      extraHours: sample.amount(({ quality: { differMinutes } }) => differMinutes[inspection] / 60),
    }];
  });
}

/** Slots of a kind of defect of which an item was made in some replication. */
function madeSlots({ model: { slots }, observations }: Sample): number[] {
  return idsOf(slots.kind, (kind, slot) => kind >= 0 && observations.some(({ quality: { made } }) => made[slot] > 0));
}

/** Rows that look for a slot, with their steps. */
function findsOf({ steps }: Model, slot: number): { readonly find: number; readonly step: number }[] {
  return idsOf(steps.station, () => true).flatMap((step) => idsOf(steps.findSlot, (sought, find) => sought === slot && find >= steps.findStart[step] && find < steps.findStart[step + 1]).map((find) => ({ find, step })));
}

function idsOf(column: ArrayLike<number>, is: (value: number, id: number) => boolean): number[] {
  return Array.from(column).flatMap((value, id) => (is(value, id) ? [id] : []));
}

const thenOf = (kind: number): DefectResult['foundAt'][number]['then'] => (kind === REPAIR ? 'repaired' : kind === SEND_BACK ? 'sent back' : kind === SCRAP ? 'scrapped' : 'carried');
