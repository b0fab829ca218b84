import fc from 'fast-check';

/**
 * Small floors on which most builds stand still sooner or later, every number invented: a bench that builds
 * looms and the dashboards that take them, own parts and looms that ride the unit's lanes, send-backs into
 * places without room, claims for people whom teams hold, carriers, a supply that ends, lots of units.
 */
export const crowdedScenario = fc.record({
  places: fc.integer({ min: 1, max: 3 }),
  buffer: fc.constantFrom(0, 1, 'unlimited'),
  fails: fc.boolean(),
  looms: fc.integer({ min: 1, max: 3 }),
  taken: fc.integer({ min: 1, max: 2 }),
  stand: fc.boolean(),
  ride: fc.boolean(),
  bolts: fc.constantFrom(
    '',
    '',
    'deliveries: { lot: 10, every: 1 days, from: 2027-03-01, to: 2027-03-02 }',
    'reorder: { level: 2, lot: 5, lead time: 30 min }',
  ),
  boltsAtStart: fc.integer({ min: 0, max: 30 }),
  lanes: fc.boolean(),
  leaves: fc.constantFrom('when full', '{ when full or after: 30 min }'),
  capacity: fc.integer({ min: 1, max: 2 }),
  doors: fc.constantFrom('none', 'none', 'here', 'away'),
  /** People of the crew, or by shift; those wanted at each step, as far as the largest shift has them. */
  crew: fc.constantFrom(
    '1',
    '2',
    '3',
    '[1, 3]',
    '[2, 1]',
    '[3, 2], absence: 20 %',
    '[3, 3], hand over: wait',
    '[2, 2], absence: 30 %, hand over: wait',
  ),
  wanted: fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 6, maxLength: 6 }),
  team: fc.boolean(),
  dollies: fc.integer({ min: 0, max: 3 }),
  back: fc.constantFrom('repair: 3 min', 'back to: cut, limit: 2', 'back to: bend, limit: 2'),
  ownRework: fc.boolean(),
  line: fc.constantFrom(
    'places: 1',
    'places: 2',
    'people: 2',
    'lot: { least: 1, most: 1 }',
    'lot: { least: 2, most: 2 }',
  ),
  release: fc.constantFrom('20 min', 'saturated', '{ exponential: { mean: 12 min } }'),
  until: fc.constantFrom('', ', until: 2027-03-02'),
});
export type CrowdedScenario = typeof crowdedScenario extends fc.Arbitrary<infer T> ? T : never;

export function toCrowdedYaml(drawn: CrowdedScenario): string {
  const { looms, ride, bolts, lanes, doors, crew, line, stand } = drawn,
    byShift = crew.startsWith('['),
    most =
      Math.max(
        ...crew
          .replace(/absence.*/, '')
          .match(/\d/g)!
          .map(Number),
      ) - (drawn.team ? 1 : 0);
  const people = (step: number): string =>
      drawn.wanted[step] > 0 && drawn.wanted[step] <= most ? `, crew: { hands: ${drawn.wanted[step]} }` : '',
    work = (mean: number): string => `work: { exponential: { mean: ${mean} min } }`,
    away = ', { lane: over }, { step: look NAME, at: shelf, work: 1 min }, { lane: home }';
  const dashboards = `parts: { dashboards: ${Math.min(drawn.taken, looms)} }`,
    fit = line.startsWith('people')
      ? `at: line, side by side: [{ step: fit, ${dashboards}, ${work(4)}${people(4)} }, { step: wire, ${work(5)}${people(5)} }]`
      : `step: fit, at: line, ${dashboards}, ${work(5)}${people(4)}`;
  const lane = `trucks: 1, capacity: ${drawn.capacity}, bank: ${drawn.capacity}, drive: 10 min, return: 10 min, leaves: ${drawn.leaves}`;
  return `
scenario: crowded
programme: { start: 2027-03-01, arrivals: ${drawn.release}, quantity: 30${drawn.until} }
calendars: { two: { hours: ["00:00-12:00", "12:00-24:00"] } }
defects: { gap: {} }
sites:
  near:
    crews: { hands: ${byShift ? `{ headcount: ${crew}, calendar: two }` : crew} }
    stations:
      bench: { places: ${drawn.places}, buffer: ${drawn.buffer}${drawn.fails ? ', failures: { every: { exponential: { mean: 60 min } }, repair: 20 min }' : ''} }
      stand: {}
      saw: {}
      press: { ${drawn.ownRework ? 'rework buffer: 1' : ''} }
      line: { ${line.includes('2, most') ? 'places: 2, ' : ''}${line} }
      check: {}
  far: { stations: { yard: {}, shelf: {} } }
${lanes || ride || doors === 'away' ? `lanes: { over: { from: near, to: far, ${lane} }, home: { from: far, to: near, ${lane} } }` : ''}
${bolts === '' ? '' : `supplies: { bolts: { site: near, at start: ${drawn.boltsAtStart}, ${bolts} } }`}
${drawn.dollies > 0 ? `carriers: { dolly: { count: ${drawn.dollies}, from: cut, to: check, return: 5 min } }` : ''}
${drawn.team ? 'teams: { pair: { crew: hands, people: 1, from: cut, to: bend } }' : ''}
feeders:
  looms: { stock: ${looms}, route: [{ step: bind, at: bench, ${work(8)}${people(0)} }${ride ? away.replace('NAME', 'loom') : ''}${stand ? `, { step: dry, at: stand, ${work(5)} }` : ''}] }
  dashboards: { stock: ${looms}, route: [{ step: build, at: bench, parts: { looms: ${Math.min(drawn.taken, looms)}${bolts === '' ? '' : ', bolts: 1'} }, ${work(6)}${people(1)} }] }
${doors === 'none' ? '' : `  doors: { own: true, route: [{ step: trim, at: stand, ${work(5)} }${doors === 'away' ? away.replace('NAME', 'door') : ''}, { step: seal, at: press, ${work(3)} }] }`}
route:
  - { step: cut, at: saw, ${work(6)}${people(2)}${doors === 'none' ? '' : ', takes off: doors'}, creates: { gap: 40 % } }
  - { step: bend, at: press, ${work(6)}${people(3)} }
${lanes ? '  - { lane: over }\n  - { step: turn, at: yard, work: 3 min }\n  - { lane: home }' : ''}
  - { ${fit} }
  - { step: check, at: check, ${work(5)}${doors === 'none' ? '' : ', parts: { doors: own }'}, finds: { gap: { chance: 80 %, ${lanes ? 'repair: 3 min' : drawn.back} } } }
`;
}
