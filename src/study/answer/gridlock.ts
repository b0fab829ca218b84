import type { Stuck } from '../../flow/gridlock.js';

/** Most units named where there is no ring. */
const MOST_NAMED = 4;

/**
 * Who waits for whom, in one sentence part: the ring in which each waits for the next, where there is one,
 * otherwise the first few by build number.
 * @param unitRoute name of the unit's own route; sub-assemblies are called by theirs
 * @param nameOf what the planner calls the unit; its number, if left out
 */
export function whoWaits(
  stuck: readonly Stuck[],
  unitRoute: string,
  nameOf: (each: Stuck) => string = ({ number }) => String(number),
): string {
  const ring = ringOf(stuck);
  if (ring !== null)
    return (
      `${ring.map((each) => waits(each, unitRoute, nameOf(each))).join(', ')}: each waits for the ` +
      'next, and the last for the first'
    );
  const named = stuck
    .slice(0, MOST_NAMED)
    .map((each) => waits(each, unitRoute, nameOf(each)))
    .join(', ');
  return stuck.length > MOST_NAMED ? `${named}, and ${stuck.length - MOST_NAMED} more wait` : named;
}

/** The first ring met on a walk from each in turn to those it waits for; null if there is none. */
function ringOf(stuck: readonly Stuck[]): Stuck[] | null {
  const left = new Set<Stuck>(),
    path: Stuck[] = [];
  const walk = (at: Stuck): Stuck[] | null => {
    const seen = path.indexOf(at);
    if (seen >= 0) return path.slice(seen);
    if (left.has(at)) return null;
    path.push(at);
    for (const next of waitedFor(at, stuck)) {
      const ring = walk(next);
      if (ring !== null) return ring;
    }
    path.pop();
    left.add(at);
    return null;
  };
  for (const start of stuck) {
    const ring = walk(start);
    if (ring !== null) return ring;
  }
  return null;
}

/**
 * Those who stand where it wants to go; of a unit short of parts, its own sub-assemblies; those who keep a
 * carrier or a team that it lacks.
 */
function waitedFor({ kind, number, route, waitsFor, lacks = [] }: Stuck, stuck: readonly Stuck[]): Stuck[] {
  switch (kind) {
    case 'room':
    case 'truck':
    case 'pulse':
      return stuck.filter(({ where }) => where === waitsFor);
    case 'parts':
      return stuck.filter((each) => each.number === number && each.route !== route);
    case 'crew':
    case 'carrier':
      return stuck.filter(({ keeps = [] }) => keeps.some((each) => lacks.includes(each)));
    case 'supply':
    case 'lot':
      return [];
  }
}

function waits({ route, where, waitsFor, kind }: Stuck, unitRoute: string, name: string): string {
  const place = where === 'outside' || where.startsWith('ahead of ') ? where : `at ${where}`,
    who = `${route === unitRoute ? 'unit' : route} ${name} ${place}`;
  switch (kind) {
    case 'room':
      return `${who} waits for room at ${waitsFor}`;
    case 'pulse':
      return `${who} waits for the pulse, held up at ${waitsFor}`;
    case 'truck':
      return `${who} waits for a truck of ${waitsFor}`;
    case 'lot':
      return `${who} waits for ${waitsFor}`;
    case 'supply':
      return `${who} waits for ${waitsFor}, of which no more will come`;
    case 'crew':
    case 'carrier':
    case 'parts':
      return `${who} waits for ${kind} (${waitsFor})`;
  }
}
