import { TimeReader } from '../../../records/table/times.js';
import { optional, type Reader, required, type Values, word } from '../../arguments/option.js';
import { filledText, reader } from '../../arguments/readers.js';
import type { WORKERS } from '../../arguments/workers.js';

/** The log that a command reads. */
export const LOG = word('LOG', 'floor LOG', 'the log of the floor, CSV');

/** How names of the log are turned into those of the scenario. */
export const NAMES = optional(
  'YAML file that maps names of the log to names of the scenario',
  filledText('a file', 'names.yaml'),
);

/** Builds of a log are few and run one after another. */
export const ONE_THREAD: Values<typeof WORKERS> = { workers: 1, through: [], program: undefined };

/** A date. */
export const day = reader(
  'a date',
  (option) => `for example ${option} 2027-08-16`,
  (text) =>
    /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(Date.parse(`${text}T00:00Z`)) ? text : undefined,
);

/** A moment, as in a log: with its offset from UTC, or by the clock of the programme's zone. */
export interface Moment {
  /** Minutes since 1970-01-01T00:00, of UTC or of the clock. */
  readonly minutes: number;
  readonly isLocal: boolean;
  readonly text: string;
}

const moment: Reader<Moment> = reader(
  'a date or a time',
  (option) => `for example ${option} 2027-08-16 or ${option} 2027-08-16T06:00`,
  (text) => {
    const read = new TimeReader().read(/^\d{4}-\d{2}-\d{2}$/.test(text) ? `${text}T00:00` : text);
    return read === undefined ? undefined : { minutes: read.minutes, isLocal: read.isLocal, text };
  },
);

export const AT = required(
  'the moment: a date (its first minute) or a time, by the zone of the programme',
  moment,
  'a date or a time',
  'for example --at 2027-08-16T06:00',
);
