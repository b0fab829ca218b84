import type { Distribution } from '../../random/distribution.js';

/** One way in which the equipment of a station fails. */
export interface Failure {
  readonly every: Distribution;
  readonly by: 'operating time' | 'calendar time';
  readonly repair: Distribution;
  /** Calendar in which repairs go on; undefined: day and night. */
  readonly hours: string | undefined;
}

/** All places of some stations are down, and no truck departs on some lanes, between two dates. */
export interface Outage {
  readonly stations: readonly string[];
  /** All stations of this site. */
  readonly site: string | undefined;
  readonly lanes: readonly string[];
  readonly from: Moment;
  readonly to: Moment;
  readonly note: string | undefined;
}
/** A day, or a clock time on it: minutes after midnight. */
export interface Moment {
  readonly day: string;
  readonly minute: number | undefined;
}
