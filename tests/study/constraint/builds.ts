import type { Build } from './build.js';
import { lot, spaces } from './builds-ovens.js';
import { axles, castings, packs } from './builds-parts.js';
import { balanced, fitters, nothing, reworked, teams } from './builds-people.js';
import { bank, carts, departures, trucks } from './builds-transport.js';

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
