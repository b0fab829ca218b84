import { z } from 'zod';
import type { PulseLine } from './scenario-pulse.js';
import { duration, keys, name } from './schema-quantity.js';

/** One entry of the top-level key `pulse lines`. */
export const pulseLineSchema = keys(
  {
    stations: z
      .array(name('the name of a station'), { error: 'a list of stations in the order of the route' })
      .min(1, { error: 'at least one station' })
      .describe(
        'Its stations in the order of the route, all of one site and one calendar, with one place each, and no buffer but ahead of the first. Example: [trim, marriage, final]',
      ),
    takt: duration.describe(
      'Least time from one move to the next, in working time of the stations. Example: 4 h',
    ),
  },
  'a pulse line: a map with the keys stations and takt',
).transform((line): PulseLine => ({ stations: line.stations, taktMin: line.takt }));
