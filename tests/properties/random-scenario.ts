import fc from 'fast-check';

/**
 * Small scenarios drawn at random, every number invented: one to three sites joined by lanes, one to three
 * stations in each, with buffers, places, crews, shared equipment, passes, lots, conditions, samples, defects with all that may
 * follow, feeders, carriers, teams, steps side by side, calendars. They may end in gridlock; that is an
 * answer too.
 */
const station = fc.record({
  places: fc.integer({ min: 1, max: 3 }),
  buffer: fc.constantFrom(0, 0, 1, 'unlimited'),
  ownRework: fc.constantFrom(true, false, false, false),
  kind: fc.constantFrom('work', 'work', 'passes', 'bake', 'lot', 'colour'),
  work: fc.constantFrom(
    '10 min',
    '{ exponential: { mean: 10 min } }',
    '{ low: 5 min, likely: 8 min, high: 20 min }',
    '{ mean: 12 min, cv: 0.5 }',
  ),
  crew: fc.integer({ min: 0, max: 2 }),
  again: fc.boolean(),
  path: fc.constantFrom(
    '',
    '',
    ', when: { colour: red }',
    ', sample: 1 in 3',
    ', sample: { 1 in: 2, by: random }',
  ),
  creates: fc.boolean(),
  then: fc.constantFrom('none', 'repair', 'back', 'back', 'back', 'scrap', 'fails', 'carry'),
  changeover: fc.boolean(),
  failures: fc.constantFrom(
    '',
    '',
    '',
    '',
    'every: { exponential: { mean: 40 min } }, repair: 9 min',
    'every: 50 min, by: calendar time, repair: { exponential: { mean: 15 min } }',
  ),
});
const site = fc.record({
  stations: fc.array(station, { minLength: 1, maxLength: 3 }),
  calendar: fc.boolean(),
  crew: fc.integer({ min: 2, max: 3 }),
  /** Of a site with a calendar: what its crew does from shift to shift. */
  shifts: fc.constantFrom(
    '',
    '',
    'headcount: [3, 2], calendar: two',
    'headcount: [2, 3], absence: 20 %, calendar: two',
    'headcount: 3, hand over: wait, calendar: two',
    'headcount: 3, absence: 10 %',
  ),
});

export const randomScenario = fc.record({
  sites: fc.array(site, { minLength: 1, maxLength: 3 }),
  release: fc.constantFrom(
    'rate: { per day: 40 }',
    'arrivals: saturated',
    'arrivals: { exponential: { mean: 15 min } }',
  ),
  quantity: fc.constantFrom(1, 7, 25, 40, 40),
  leaves: fc.constantFrom(
    'when full',
    '{ when full or after: 40 min }',
    '{ at: ["08:00", "12:00", "20:00"] }',
  ),
  trucks: fc.integer({ min: 1, max: 2 }),
  capacity: fc.integer({ min: 1, max: 3 }),
  banks: fc.constantFrom(
    '',
    ', bank: 3',
    ', arrival bank: 1',
    ', arrival bank: unlimited',
    ', docks: { from: 1, to: 1 }, bank: 3, hours: days',
  ),
  stock: fc.integer({ min: 0, max: 3 }),
  own: fc.boolean(),
  supply: fc.constantFrom(
    '',
    '',
    '',
    'reorder: { level: 1, lot: 3, lead time: { exponential: { mean: 30 min } } }, late: { chance: 30 %, by: { low: 5 min, high: 90 min } }',
    'deliveries: { lot: 40, every: 1 days }, late: { chance: 30 %, by: 3 h }',
  ),
  flawedParts: fc.boolean(),
  hold: fc.boolean(),
  // Of a quantity of 7 and more, one or two units stand at the first or the last step of the first site;
  // orders may be built again.
  standing: fc.constantFrom(
    '',
    '',
    '{ at: begin }',
    '{ at: end 0, build: RT-1 }',
    '{ at: end 0 }, { at: begin }',
  ),
  replaced: fc.boolean(),
  outage: fc.constantFrom(false, false, true),
  pulse: fc.constantFrom(false, false, false, true),
  dollies: fc.constantFrom(0, 0, 1, 2, 4),
  team: fc.constantFrom(false, false, false, true),
  /** Steps side by side: none, without a limit, with one. */
  beside: fc.constantFrom('', '', '', ' ', ', people: 2', ', people: 3'),
  /** Carriers and teams stay up to the first step of a station only, and what units sent back to it do. */
  short: fc.boolean(),
  inRework: fc.constantFrom('', ', in rework: without', ', in rework: again', ', in rework: again'),
});
export type RandomScenario = typeof randomScenario extends fc.Arbitrary<infer T> ? T : never;
type Station = RandomScenario['sites'][number]['stations'][number];

/**
 * The hoists of each site, and what of them the steps at its stations claim, in turn: chosen by what is drawn
 * for other things, so that these stay as they were drawn without them.
 */
const HOISTS = [
  '',
  '1',
  '2',
  '{ count: 1, failures: { every: { exponential: { mean: 50 min } }, repair: 12 min } }',
  '',
  '{ count: 2, failures: { every: 70 min, by: calendar time, repair: { exponential: { mean: 20 min } } } }',
];
const LIFTS = ['1', '{ first: 5 min }', '', '{ last: { exponential: { mean: 5 min } } }'];
function equipmentOf({ quantity, own, hold, replaced, standing, sites }: RandomScenario) {
  const turn =
    quantity + 2 * Number(own) + 3 * Number(hold) + Number(replaced) + standing.length + sites.length;
  return {
    hoists: HOISTS[turn % HOISTS.length],
    lifts: LIFTS.map((_, i) => LIFTS[(turn + i) % LIFTS.length]),
  };
}

/** The scenario as text. `spare` goes in after the first step: a line of the route, or nothing. */
export function toYaml(drawn: RandomScenario, spare = ''): string {
  const {
    sites,
    release,
    quantity,
    leaves,
    trucks,
    capacity,
    banks,
    stock,
    own,
    supply,
    flawedParts,
    hold,
    standing,
    replaced,
    outage,
    pulse,
    dollies,
    team,
    short,
    inRework,
    beside,
  } = drawn;
  const { hoists, lifts } = equipmentOf(drawn);
  const upTo = (end: string): string => `from: begin, to: ${short ? 'do 0-0' : end}${inRework}`;
  // What a part brings is looked for at the end of the first site; an item that is noted comes to a hold, or
  // is shipped with it.
  const flaw = flawedParts ? ', creates: { part flaw: 40 % }' : '',
    seek = flawedParts && (stock > 0 || own) ? ', finds: { part flaw: { chance: 60 %, carry: 6 min } }' : '';
  const lanes = sites
    .slice(1)
    .map(
      (_, i) =>
        `  lane ${i}: { from: site ${i}, to: site ${i + 1}, trucks: ${trucks}, capacity: ${capacity}, load: 5 min, drive: { low: 20 min, high: 60 min }, unload: 5 min, return: 30 min, leaves: ${leaves}${banks} }`,
    );
  const feeders = [
    ...(stock > 0
      ? [
          `  axles: { stock: ${stock}, route: [{ step: build axle, at: axle bench, work: { exponential: { mean: 8 min } }${flaw} }] }`,
        ]
      : []),
    ...(own
      ? [
          `  doors: { own: true, route: [{ step: trim doors, at: door bench, work: { exponential: { mean: 8 min } }${flaw} }] }`,
        ]
      : []),
  ];
  return `
scenario: drawn at random
programme: { start: 2027-03-01, ${release}, quantity: ${quantity}, options: { colour: { red: 40 %, white: 60 % } }, opening: [${quantity >= 7 ? standing : ''}], replace scrapped: ${replaced}${release.includes('saturated') ? '' : ', due after: 2 h'} }
calendars:
  days: { hours: ["06:00-14:30"], on: Mon-Fri, breaks: ["09:30-09:45", "12:00-12:30"]${release.startsWith('rate') ? ', overtime: [{ hours: ["14:30-16:30"], when: { units behind: 3, lead time: 5 h }, decided: daily }]' : ''} }
  two: { hours: ["06:00-14:30", "14:30-22:00"], breaks: ["12:00-12:30"], overtime: [{ on: Sat, hours: ["06:00-12:00"] }] }
defects: { ${sites.map((_, s) => `flaw ${s}: {}`).join(', ')}, part flaw: {} }
sites:
${sites
  .map(
    ({ stations, calendar, crew, shifts }, s) => `
  site ${s}:
    ${calendar ? 'calendar: days' : 'zone: UTC'}
    crews: { hands: ${calendar && shifts !== '' ? `{ ${shifts} }` : crew} }
${hoists === '' ? '' : `    equipment: { hoist: ${hoists} }\n`}    stations:
${stations.map((one, i) => `      ${nameOf(s, i)}: ${stationText(one)}`).join('\n')}
      done ${s}: { buffer: 1 }
      hold area ${s}: { places: 2, buffer: 1 }
${
  s > 0
    ? ''
    : `      axle bench: { places: 2, buffer: unlimited }
      door bench: { buffer: unlimited }
      spare bay: {}
      start: { places: 2 }
      stall: { places: 2${beside} }`
}`,
  )
  .join('')}
${lanes.length > 0 ? `lanes:\n${lanes.join('\n')}` : ''}
${supply !== '' ? `supplies: { bolts: { site: site 0, at start: 2, ${supply} } }` : ''}
${feeders.length > 0 ? `feeders:\n${feeders.join('\n')}` : ''}
${pulse ? 'pulse lines: { line: { stations: [done 0], takt: 7 min } }' : ''}
${outage ? `outages: [{ site: site 0, ${lanes.length > 0 ? 'lanes: lane 0, ' : ''}from: 2027-03-01 07:00, to: 2027-03-01 08:30 }, { stations: station 0-0, from: 2027-03-01 08:00, to: 2027-03-02 }]` : ''}
${dollies > 0 ? `carriers: { dollies: { count: ${dollies}, ${upTo(`end ${sites.length - 1}`)}, return: { exponential: { mean: 10 min } } } }` : ''}
${team && sites[0].crew === 3 && (!sites[0].calendar || sites[0].shifts === '') ? `teams: { pair: { crew: hands, people: 1, ${upTo('end 0')} } }` : ''}
route:
  - { step: begin, at: start, work: { low: 2 min, high: 6 min }${own ? ', takes off: doors' : ''} }
${beside === '' ? '' : `  - { at: stall, side by side: [{ step: beside 1, crew: { hands: 1 }, work: { exponential: { mean: 5 min } } }, { step: beside 2, crew: { hands: 1 }, work: 4 min, process: 3 min${hoists === '' ? '' : ', equipment: { hoist: 1 }'} }, { step: beside 3, when: { colour: red }, crew: { hands: 1 }, work: { low: 2 min, high: 9 min } }] }`}
${spare}
${sites
  .map(({ stations }, s) =>
    [
      ...(s > 0 ? [`  - { lane: lane ${s - 1} }`] : []),
      ...stations.flatMap((one, i) =>
        stepTexts(one, s, i, stations, liftText(one, hoists, lifts[i % lifts.length])),
      ),
      `  - { step: end ${s}, at: done ${s}, work: 3 min${parts(s, stock, own, supply !== '')}${s === 0 ? seek : ''} }`,
      ...(hold && ((s === 0 && seek !== '') || carries(stations))
        ? [`  - { step: hold ${s}, at: hold area ${s}, hold: { mend: 9 min } }`]
        : []),
    ].join('\n'),
  )
  .join('\n')}
`;
}

const nameOf = (site: number, i: number): string => `station ${site}-${i}`;

const carries = (stations: readonly Station[]): boolean =>
  stations[0].creates && stations[stations.length - 1].then === 'carry';

function parts(site: number, stock: number, own: boolean, supply: boolean): string {
  const wanted = [
    ...(stock > 0 ? ['axles: 1'] : []),
    ...(own ? ['doors: own'] : []),
    ...(supply ? ['bolts: 2'] : []),
  ];
  return site === 0 && wanted.length > 0 ? `, parts: { ${wanted.join(', ')} }` : '';
}

function stationText({ places, buffer, ownRework, kind, changeover, failures }: Station): string {
  const fails = failures === '' ? '' : `, failures: { ${failures} }`;
  if (kind === 'lot')
    return `{ places: 3, buffer: unlimited, lot: { least: 2, most: 3, longest wait: 30 min }${fails} }`;
  return `{ places: ${places}, buffer: ${buffer}${ownRework ? ', rework buffer: unlimited' : ''}${changeover && kind === 'colour' ? `, changeover: { on: colour, work: 5 min${buffer === 'unlimited' ? ', from to: { red: { white: { exponential: { mean: 8 min } } } }, batch: { most: 2, longest wait: 1 h }' : ''} }` : ''} }`;
}

/** The flaw of a site is made at its first station, if at all, and sought at its last. */
function stepTexts(one: Station, s: number, i: number, stations: readonly Station[], lift: string): string[] {
  const isFirst = i === 0,
    isLast = i === stations.length - 1,
    head = `at: ${nameOf(s, i)}`;
  const crew = one.crew > 0 && one.kind !== 'lot' ? `, crew: { hands: ${one.crew} }` : '';
  const time =
    one.kind === 'passes'
      ? `, passes: { count: 2, work: ${one.work}, settle: 5 min }`
      : one.kind === 'bake'
        ? `, work: 2 min, process: ${one.work}, attended end: ${one.changeover}`
        : one.kind === 'lot'
          ? `, process: ${one.work}`
          : `, work: ${one.work}${one.kind === 'work' && one.changeover ? ', in one shift: true' : ''}${one.kind === 'colour' ? ', work factor: { colour: { red: 1.3 } }' : ''}`;
  const last = stations[stations.length - 1],
    first = stations[0];
  const seeks = !['none', 'fails'].includes(last.then) && !(last.kind === 'lot' && last.then === 'repair');
  const makes = isFirst && first.creates && seeks ? `, creates: { flaw ${s}: 50 % }` : '';
  // A unit that comes back has to meet the first step again, so a sample stands only where nobody is sent.
  const path = isFirst || isLast ? '' : one.path;
  return [
    `  - { step: do ${s}-${i}, ${head}${path}${crew}${lift}${time}${makes}${isLast && first.creates && seeks ? finds(last, s) : ''}${isLast && last.then === 'fails' ? `, fails: { chance: 20 %, back to: do ${s}-0, limit: 2 }` : ''} }`,
    ...(one.again && one.kind === 'work' && !isLast
      ? [`  - { step: more ${s}-${i}, ${head}, work: 4 min }`]
      : []),
  ];
}

/** For a part of plain work alone; what fails is not for lots. */
function liftText({ kind, changeover }: Station, hoists: string, lift: string): string {
  const isPlain = kind === 'colour' || (kind === 'work' && !changeover),
    isFit = lift === '1' ? kind !== 'lot' || hoists.length === 1 : isPlain;
  return hoists === '' || lift === '' || !isFit ? '' : `, equipment: { hoist: ${lift} }`;
}

function finds({ then }: Station, s: number): string {
  const what =
    then === 'repair'
      ? 'repair: 7 min'
      : then === 'scrap'
        ? 'scrap: true'
        : then === 'carry'
          ? 'carry: 11 min'
          : `back to: do ${s}-0, limit: 3`;
  return `, finds: { flaw ${s}: { chance: 80 %, ${what} } }`;
}
