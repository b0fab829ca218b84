import fc from 'fast-check';

/** Companions over stretches of the route, by index of the first station and number of stations after it. */
const stretch = fc.record({
  from: fc.integer({ min: 0, max: 5 }),
  more: fc.integer({ min: 0, max: 3 }),
  isSlow: fc.boolean(),
});

/**
 * One way of up to six stations in one or two plants, with up to three sorts of carriers, three of teams and
 * two pulse lines, every number invented: more than any real line has, so that brackets stand in each
 * other's way if they can.
 */
export const crowdedWay = fc.record({
  stations: fc.array(
    fc.record({ places: fc.constantFrom(1, 2, 10), buffer: fc.constantFrom(0, 1, 10, 'unlimited') }),
    { minLength: 1, maxLength: 6 },
  ),
  isLong: fc.boolean(),
  lane: fc.option(fc.integer({ min: 1, max: 5 }), { nil: undefined }),
  carriers: fc.array(stretch, { maxLength: 3 }),
  teams: fc.array(stretch, { maxLength: 3 }),
  lines: fc.array(stretch, { maxLength: 2 }),
});
export type CrowdedWay = typeof crowdedWay extends fc.Arbitrary<infer T> ? T : never;

/** The scenario as text. */
export function wayYaml({ stations, isLong, lane, carriers, teams, lines }: CrowdedWay): string {
  const cut = lane !== undefined && lane < stations.length ? lane : stations.length,
    ends = ({ from, more }: (typeof carriers)[number]): [number, number] => {
      const first = from % stations.length;
      return [first, Math.min(stations.length - 1, first + more)];
    };
  // A station is on one pulse line, and a pulse line in one plant; none of its stations has spaces.
  const onLine = new Map<number, number>(),
    pulses = lines.flatMap((each, i) => {
      const [from, to] = ends(each),
        own = stations.flatMap((_, s) =>
          s >= from && s <= to && !onLine.has(s) && s < cut === from < cut ? [s] : [],
        );
      if (own.length === 0 || own.some((s, k) => s !== (own[0] ?? 0) + k)) return [];
      for (const s of own) onLine.set(s, i);
      return [`  line ${i}: { stations: [${own.map((s) => `station ${s}`).join(', ')}], takt: 50 min }`];
    });
  const station = (s: number): string => {
    const { places, buffer } = stations[s];
    return onLine.has(s) ? `station ${s}: {}` : `station ${s}: { places: ${places}, buffer: ${buffer} }`;
  };
  const site = (name: string, from: number, to: number): string =>
    `  ${name}:\n    crews: { hands: 9 }\n    stations:\n` +
    Array.from({ length: to - from }, (_, i) => `      ${station(from + i)}`).join('\n');
  const stays = (each: (typeof carriers)[number]): string => {
    const [from, to] = ends(each);
    return `from: begin ${from}, to: end ${to}`;
  };
  const step = (s: number): string[] => [
    `  - { step: begin ${s}, at: station ${s}, work: 10 min }`,
    ...(isLong
      ? [`  - { step: look at what station ${s} has made of it, at: station ${s}, work: 9 min }`]
      : []),
    `  - { step: end ${s}, at: station ${s}, work: 5 min }`,
  ];
  const section = (name: string, rows: readonly string[]): string =>
    rows.length === 0 ? '' : `${name}:\n${rows.join('\n')}\n`;
  return `
scenario: many brackets
programme: { start: 2027-03-01, arrivals: saturated, quantity: 5 }
sites:
${site('first', 0, cut)}
${cut < stations.length ? site('second', cut, stations.length) : ''}
${cut < stations.length ? 'lanes: { road: { from: first, to: second, trucks: 1, capacity: 1, load: 5 min, drive: 1 h, unload: 5 min, return: 1 h, leaves: when full } }' : ''}
${section('pulse lines', pulses)}${section(
  'carriers',
  carriers.map((each, i) => `  cart ${i}: { count: 3, ${stays(each)}${each.isSlow ? ', return: 3 h' : ''} }`),
)}${section(
  'teams',
  teams
    .filter((each) => ends(each)[1] < cut)
    .map((each, i) => `  team ${i}: { crew: hands, people: 2, ${stays(each)} }`),
)}
route:
${stations.flatMap((_, s) => [...(s === cut ? ['  - { lane: road }'] : []), ...step(s)]).join('\n')}
`;
}
