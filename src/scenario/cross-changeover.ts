import type { Finding } from './problem.js';
import type { Scenario } from './scenario.js';

/** Changeovers from a value to itself, and batches where there is nothing to choose from. */
export function changeoverFindings(scenario: Scenario): Finding[] {
  const found: Finding[] = [];
  for (const [site, { stations }] of Object.entries(scenario.sites)) {
    for (const [name, { changeover, buffer, lot }] of Object.entries(stations)) {
      if (changeover === undefined) continue;
      const path = ['sites', site, 'stations', name, 'changeover'];
      for (const [value, times] of Object.entries(changeover.fromTo)) {
        if (Object.hasOwn(times, value))
          found.push({
            path: [...path, 'from to', value, value],
            wanted: 'a pair of two values; between units of one value there is no changeover',
            seen: `"${value}" to "${value}"`,
            atKey: true,
          });
      }
      if (changeover.batch === undefined) continue;
      if (lot !== undefined)
        found.push({
          path: [...path, 'batch'],
          wanted: 'no batch at a station with lots, whose units are taken together',
          atKey: true,
        });
      else if (buffer !== undefined && buffer < 2)
        found.push({
          path: [...path, 'batch'],
          wanted: 'a buffer of at least 2 spaces ahead of the station, so that there is a choice',
          seen: `buffer: ${buffer}`,
          atKey: true,
        });
    }
  }
  return found;
}
