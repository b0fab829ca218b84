import type { Build } from './build.js';
import { lot, spaces } from './builds-ovens.js';
import { axles, castings, packs } from './builds-parts.js';
import { balanced, fitters, nothing, reworked, teams } from './builds-people.js';
import { bank, carts, departures, trucks } from './builds-transport.js';

/**
 * Small builds of about sixteen weeks, a replication in some 2 to 10 ms, whose constraint is known by argument:
 * the numbers stand with each, for days of 480 min, in units a working day. The days after the first weeks are
 * long enough for a judged window of nine weeks and more.
 *
 * What one more brings and does not bring is checked by tests/statistics/builds.test.ts, what is named by
 * culprits.test.ts beside it.
 */
export const BUILDS: readonly Build[] = [
  packs,
  castings,
  fitters,
  carts,
  teams,
  axles,
  trucks,
  lot,
  departures,
  spaces,
  bank,
  reworked,
  balanced,
  nothing,
];
