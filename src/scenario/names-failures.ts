import type { Look } from './names.js';
import { listOf, mapOf, type Outline, type RawMap } from './names-outline.js';
import type { Path } from './problem.js';

/** Calendars of repairs. One failure may stand without its list. */
export function failureNames(
  path: Path,
  failures: unknown,
  calendar: (path: Path, name: unknown) => void,
): void {
  listOf(failures).forEach((failure, i) =>
    calendar([...path, ...(Array.isArray(failures) ? [i] : []), 'hours'], mapOf(failure)['hours']),
  );
}

/** Stations, sites and lanes of outages. */
export function outageNames(raw: RawMap, outline: Outline, look: Look): void {
  listOf(raw['outages']).forEach((value, i) => {
    const outage = mapOf(value),
      path = ['outages', i];
    const each = (key: string, known: Parameters<Look>[2], what: string): void =>
      listOf(outage[key]).forEach((name, n) =>
        look([...path, key, ...(Array.isArray(outage[key]) ? [n] : [])], name, known, what),
      );
    each('stations', outline.stations, 'station of this name');
    each('site', outline.sites, 'site of this name');
    each('lanes', outline.lanes, 'lane of this name');
  });
}
