import type { CalendarSpec } from './calendars.js';
import type { Costs } from './costs.js';
import type { Lever } from './levers.js';
import type { Carriers, Lane, Outage, PulseLine, Site, Supply, Team } from './plant.js';
import type { Path } from './problem.js';
import type { Programme } from './programme.js';
import type { Feeder, RouteEntry } from './steps.js';

/**
 * A scenario as read: defaults filled in, quantities converted, names checked. Times are minutes, chances
 * 0..1, dates plain ISO strings (`2027-03-01`), clock times minutes after midnight. Maps keep the order in
 * which the planner wrote them.
 */
export interface Scenario {
  readonly name: string;
  readonly note: string | undefined;
  readonly programme: Programme;
  readonly calendars: Readonly<Record<string, CalendarSpec>>;
  readonly sites: Readonly<Record<string, Site>>;
  readonly feeders: Readonly<Record<string, Feeder>>;
  readonly supplies: Readonly<Record<string, Supply>>;
  readonly lanes: Readonly<Record<string, Lane>>;
  readonly carriers: Readonly<Record<string, Carriers>>;
  readonly teams: Readonly<Record<string, Team>>;
  /** Kinds of defect. */
  readonly defects: Readonly<Record<string, { readonly note: string | undefined }>>;
  readonly costs: Costs | undefined;
  readonly outages: readonly Outage[];
  readonly pulseLines: Readonly<Record<string, PulseLine>>;
  readonly route: readonly RouteEntry[];
  /** What readers of the report may try. No result depends on it. */
  readonly levers: readonly Lever[];
  /** What is said of the values above: where they come from. No result depends on it. */
  readonly assumptions: readonly Assumption[];
  /**
   * How it is before some changes are there, in order of time; all else here is how it is from the last of
   * their days on. Left out: it is the same from the first day on.
   */
  readonly before?: readonly Stage[] | undefined;
}

/** A scenario that holds up to a day. Programme and outages are those of the scenario that it belongs to. */
export interface Stage {
  /** ISO date, after the start: it no longer holds from its midnight on, in the zone of the programme. */
  readonly until: string;
  readonly scenario: Scenario;
}

/** A value of the scenario of which the planner says where it comes from. */
export interface Assumption {
  /** As in messages: `route[3].work`; `at` is the same in pieces; in words: `the work of prime`. */
  readonly path: string;
  readonly at: Path;
  readonly words: string;
  /** The value as written, on one line. */
  readonly value: string;
  /** The same as data: of a time its map, so that its low and high can be told apart. */
  readonly raw: unknown;
  readonly basis: Basis;
  readonly note: string | undefined;
  /** What was measured, where its basis says how many values stand behind it. */
  readonly measured?: Measured | undefined;
  /** The basis was not said of it, but of its whole file or a whole section of it. */
  readonly inGeneral?: true | undefined;
}
/** Where a value comes from; `estimate`: by somebody who knows the work. */
export type Basis = 'measured' | 'estimate' | 'guess';

/** What stands behind a value that was measured. */
export interface Measured {
  /** Values: times clocked, units looked at. */
  readonly n: number;
  /** Of a chance: how many of them had it. */
  readonly found?: number | undefined;
  /** Of a learning rate: that of log2 of the rate, the slope of times against numbers on log scales. */
  readonly standardError?: number | undefined;
  /** ISO dates, both included. */
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  /** A remark: it is not opened. */
  readonly file?: string | undefined;
}
