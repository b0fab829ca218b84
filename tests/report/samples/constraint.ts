import type { Thing } from '../../../src/scenario/reliefs/thing.js';
import type { ConstraintResult, JudgedResult, Tried } from '../../../src/study/constraint/results.js';
import { constraintSentence } from '../../../src/study/constraint/sentence.js';
import { type Estimate, mapped } from '../../../src/study/statistics/estimate.js';

type Around = (mean: number, halfWidth: number) => Estimate;
/** What the whole run of a sample has of the sections that are told over the weeks judged. */
type Whole = Omit<JudgedResult, 'from' | 'to' | 'replications'>;

/** What stops the sample, invented: one trial that helps most, one that helps, decoys; a ladder that adds up. */
export function sampleConstraint(
  whole: Whole,
  window: { readonly from: string; readonly to: string } | null,
  around: Around,
): ConstraintResult {
  const booth: Thing = { kind: 'station', name: 'top coat booth 6', site: 'coachworks north' };
  const trial = (thing: Thing, what: string, gain: number): Tried => ({
    thing,
    what,
    gain: { ...around(gain, 0.04), level: 0.99 },
  });
  const tried = [
    trial(booth, 'one place more at top coat booth 6', 0.31),
    trial(
      { kind: 'hours', name: 'paint shifts', site: '' },
      'one hour of overtime a day in "paint shifts" (23:30 to 00:30)',
      0.2,
    ),
    trial(
      { kind: 'lane', name: 'coachworks to paint', site: '' },
      'one truck more on coachworks to paint',
      0.01,
    ),
    trial(
      { kind: 'crew', name: 'painters', site: 'paint and finishing works' },
      'one person more in painters (paint and finishing works)',
      -0.02,
    ),
  ];
  const shippedPerDay = around(3.38, 0.09),
    isTold = shippedPerDay.low !== null;
  const found: Omit<ConstraintResult, 'sentence'> = {
    outcome: isTold ? 'proven' : 'not settled',
    culprit: isTold ? (tried[0] ?? null) : null,
    replications: Math.min(20, shippedPerDay.n),
    zone: 0.0338,
    shippedPerDay,
    tried,
    waiting: [
      { thing: booth, units: 9.4 },
      { thing: { kind: 'hours', name: 'paint shifts', site: '' }, units: 4.7 },
    ],
    ladder: {
      of: booth,
      allowedPerDay: 4.2,
      losses: [
        { cause: 'blocked, no room ahead', perDay: around(0.12, 0.01) },
        { cause: 'short of crew', perDay: around(0.75, 0.03) },
        { cause: 'changeovers beyond the average', perDay: around(-0.05, 0.02) },
      ],
      shippedPerDay,
    },
    judged:
      window === null ? null : { ...window, replications: Math.min(20, shippedPerDay.n), ...busier(whole) },
  };
  return { ...found, sentence: constraintSentence(found) };
}

/** A tenth of the time in which a place is starved is worked instead, so that shares still add to 1. */
function busierShare<Shares extends Readonly<Record<'working' | 'starved', Estimate>>>(
  share: Shares,
): Shares {
  const won = share.starved.mean / 10;
  return {
    ...share,
    working: mapped(share.working, (each) => each + won),
    starved: mapped(share.starved, (each) => each - won),
  };
}

/** A tenth more of the time that is left is used. */
function busier(whole: Whole): Whole {
  const more = (share: Estimate): Estimate => mapped(share, (each) => each + 0.1 * (1 - each));
  return {
    ...whole,
    stations: whole.stations.map((station) => ({
      ...station,
      share: busierShare(station.share),
      shareOnShift: busierShare(station.shareOnShift),
    })),
    crews: whole.crews.map(({ name, site, busy }) => ({ name, site, busy: more(busy) })),
    lanes: whole.lanes.map((lane) => ({ ...lane, truckBusy: more(lane.truckBusy) })),
    bottlenecks: whole.bottlenecks.map((each) => ({
      ...each,
      active: more(each.active),
      sole: { ...each.sole, mean: 0, low: null, high: null, n: 0 },
      shifting: { ...each.shifting, mean: 0, low: null, high: null, n: 0 },
    })),
  };
}
