import type { Thing } from '../../scenario/reliefs/thing.js';
import type { ConstraintResult } from '../../study/constraint/results.js';
import { calledThing } from '../../study/constraint/sentence.js';
import { count } from '../../study/format.js';
import { rateText } from '../../study/planners-unit.js';
import type { RateResults } from '../../study/rate/results.js';
import type { BufferResult } from '../../study/sections/buffers.js';
import type { LaneResult } from '../../study/sections/lanes.js';
import type { StationResult } from '../../study/sections/stations.js';
import type { Results } from '../../study/simulate/results.js';
import { toldConstraint } from '../constraint.js';
import { figure } from '../first/figures.js';
import { idleText } from '../page/constraint.js';
import { type Found, foundAt, SHARES } from './found.js';

/** What a study knows of the things on the map; shares are 0..1. */
export interface Seen {
  /** In a line or two, under the title. */
  readonly head: string;
  /** Of what the figures are, below the map; and in a sentence above it in a page. */
  readonly source: string;
  readonly caption: string;
  /** Where units that stand were counted. */
  readonly counted: 'everywhere' | 'in places' | 'nowhere';
  readonly station: (name: string) => StationSeen | undefined;
  /** Ahead of a station, or a bank. */
  readonly buffer: (name: string) => BufferResult | undefined;
  readonly lane: (name: string) => LaneResult | undefined;
  readonly crewUse: (site: string, name: string) => number | undefined;
  readonly equipmentUse: (site: string, name: string) => number | undefined;
  readonly laneUse: (name: string) => number | undefined;
  readonly passes: (site: string, step: string) => number | undefined;
  /** Sent back, of the units looked at. */
  readonly sentBack: (site: string, step: string) => number | undefined;
  /** Mended on the spot, and scrapped, of the units looked at. */
  readonly found: (site: string, step: string) => Found | undefined;
  readonly stops: Marked | undefined;
  /** Why what stops it is not in use all of its hours; empty: not known. */
  readonly idle: string;
  /** Behind units that wait, where they are counted over another time than what is in use. */
  readonly waitMark: '' | '*';
  /** What the study changed, or would. */
  readonly marks: readonly Marked[];
}
export interface StationSeen {
  /** Share of the hours of its places in which something was done to a unit. */
  readonly use: number;
  /** Units in its places on average, of these hours. */
  readonly standing: number;
  /** Shares of these hours by what its places did. */
  readonly shares: StationResult['shareOnShift'];
}
/** What is said of a thing. */
export interface Marked {
  readonly thing: Thing;
  readonly text: string;
}

const NOTHING = (): undefined => undefined;
/** Of a study that counts no units where they stand. */
export const NO_FIGURES = {
  counted: 'nowhere',
  source:
    'Where units stand is not counted in this study: squares and rings are empty. Shares that pass and are ' +
    'sent back are by arithmetic.',
  caption:
    'What the scenario says, drawn; squares and rings are empty, since this study does not count where ' +
    'units stand.',
  station: NOTHING,
  buffer: NOTHING,
  lane: NOTHING,
  crewUse: NOTHING,
  equipmentUse: NOTHING,
  laneUse: NOTHING,
  passes: NOTHING,
  sentBack: NOTHING,
  found: NOTHING,
  stops: undefined,
  idle: '',
  waitMark: '',
  marks: [],
} as const satisfies Partial<Seen>;

type Judged = NonNullable<ConstraintResult['judged']>;
type Rows = Pick<Judged, 'stations' | 'crews' | 'equipment' | 'lanes'>;

/** Use of what stands in a plant, from the sections of a run. */
function usedIn({
  stations,
  crews,
  equipment,
  lanes,
}: Rows): Pick<Seen, 'station' | 'crewUse' | 'equipmentUse' | 'laneUse' | 'lane'> {
  const byName = new Map(stations.map((each) => [each.name, each])),
    laneOf = (name: string): LaneResult | undefined => lanes.find((each) => each.name === name);
  return {
    station: (name) => {
      const row = byName.get(name);
      if (row === undefined) return undefined;
      const { working, changeover, unattended, starved, down } = row.shareOnShift;
      return {
        use: working.mean + changeover.mean + unattended.mean,
        standing: row.places * Math.max(0, 1 - starved.mean - down.mean),
        shares: row.shareOnShift,
      };
    },
    crewUse: (site, name) => crews.find((each) => each.name === name && each.site === site)?.busy.mean,
    equipmentUse: (site, name) =>
      equipment?.find((each) => each.name === name && each.site === site)?.busy.mean,
    laneUse: (name) => laneOf(name)?.truckBusy.mean,
    lane: laneOf,
  };
}

/** `the weeks from 2027-12-13 to 2028-06-11`. */
const weeksOf = (judged: Judged | undefined): string =>
  judged === undefined ? 'the whole run' : `the weeks from ${judged.from} to ${judged.to}`;

const stopsIn = (culprit: ConstraintResult['culprit']): Marked | undefined =>
  culprit === null
    ? undefined
    : {
        thing: culprit.thing,
        text:
          `${calledThing(culprit.thing)} stops it: ` +
          `with ${culprit.what} it ships ${figure(culprit.gain)} a day more`,
      };

/** Of a station alone: its use and what follows add to the whole. */
function idleOf(stops: Marked | undefined, { station }: Pick<Seen, 'station'>): string {
  const here = stops?.thing.kind === 'station' ? station(stops.thing.name) : undefined;
  const idle = here === undefined ? '' : idleText(here.shares);
  return here === undefined || idle === '' ? '' : `It is at work ${Math.round(100 * here.use)} %; ${idle}`;
}

/** What a run has seen, by what a planner calls things. */
export function seenIn(results: Results): Seen {
  const constraint = toldConstraint(results),
    judged = constraint?.judged ?? undefined,
    stops = stopsIn(constraint?.culprit ?? null),
    used = usedIn(judged ?? results),
    buffers = new Map(results.buffers.map((each) => [each.name, each])),
    looked = (site: string, step: string) =>
      results.inspections.find((each) => each.name === step && each.site === site);
  return {
    ...used,
    head:
      `${figure(results.answer.heldPerDay ?? results.throughput.perDay)} a working day shipped` +
      (stops === undefined ? '' : `; ${stops.text}`) +
      ` (${count(results.replications, 'replication')})`,
    source:
      `Use and units in places are those of ${weeksOf(judged)}, on average` +
      (judged === undefined ? ', as are units that wait.' : '. * Units that wait: over the whole run.') +
      ` ${SHARES}`,
    caption: 'What the scenario says, drawn; filled: units that stand there on average.',
    counted: 'everywhere',
    buffer: (name) => buffers.get(name),
    passes: (site, step) => looked(site, step)?.ftt.mean,
    sentBack: (site, step) => {
      const row = looked(site, step);
      return row === undefined ? undefined : row.sentBackPer100.mean / 100;
    },
    found: (site, step) => foundAt(looked(site, step)),
    stops,
    idle: idleOf(stops, used),
    waitMark: judged === undefined ? '' : '*',
    marks: [],
  };
}

/** What a study of rates has seen where it looked for what stops the build. */
export function seenAtRate({ answer, constraint, rateUnit, plannedPerDay }: RateResults): Seen {
  const { highestPerDay } = answer,
    judged = constraint?.judged ?? undefined,
    stops = stopsIn(constraint?.culprit ?? null),
    asked = constraint === null ? '' : rateText(constraint.perDay, rateUnit);
  const head =
    (highestPerDay === null
      ? 'No rate that was tried holds'
      : `${rateText(highestPerDay, rateUnit)} holds, the plan says ${rateText(plannedPerDay, rateUnit)}`) +
    (stops === undefined ? '' : `; at ${asked} ${stops.text}`);
  if (judged === undefined) return { ...NO_FIGURES, head, stops };
  const used = usedIn(judged);
  return {
    ...NO_FIGURES,
    ...used,
    idle: idleOf(stops, used),
    counted: 'in places',
    head,
    stops,
    source:
      `Use and units in places are those of ${weeksOf(judged)} with ${asked} asked, on average. Units ` +
      'that wait are not told in this study: waiting spaces are empty. Shares that pass and are sent back ' +
      'are by arithmetic.',
    caption:
      `What the scenario says, drawn, with ${asked} asked; filled: units in places on average. Waiting ` +
      'spaces are empty: this study does not tell how many wait.',
  };
}
