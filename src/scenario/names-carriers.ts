import { mapOf, type Names, type Outline, type RawMap } from './names-outline.js';
import type { Path } from './problem.js';

/** Names in carriers and teams. Whether their steps are of one route and in order is asked when all names are known. */
export function lookAtStretches(
  raw: RawMap,
  outline: Outline,
  look: (path: Path, name: unknown, known: Names | undefined, what: string) => void,
): void {
  const stepNames = new Set(outline.routes.flatMap(({ steps }) => [...steps.keys()]));
  for (const section of ['carriers', 'teams']) {
    for (const [name, value] of Object.entries(mapOf(raw[section]))) {
      const stretch = mapOf(value),
        path = [section, name];
      for (const end of ['from', 'to']) look([...path, end], stretch[end], stepNames, 'step of this name');
      look([...path, 'hours'], stretch['hours'], outline.calendars, 'calendar of this name');
      const site = siteOfStep(outline, stretch['from']);
      if (site !== undefined)
        look(
          [...path, 'crew'],
          stretch['crew'],
          outline.crewsOf?.get(site),
          `crew of this name in site ${site}`,
        );
    }
  }
}

function siteOfStep({ routes, stations }: Outline, step: unknown): string | undefined {
  const found = routes
    .flatMap(({ entries }) => entries)
    .find(({ entry }) => typeof step === 'string' && entry['step'] === step);
  return stations?.get(String(found?.entry['at']));
}
