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
    'headcount: [3, 4], absence: 15 %, hand over: wait, calendar: two',
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
  /** What goes into axles and red doors: nothing, or pins built at the same bench, with a full kit or without. */
  pins: fc.constantFrom('', '', 'kit', 'kit', 'no kit'),
  /** Where units of the first site wait for their parts. */
  waits: fc.constantFrom('', '', ', wait for parts: in place', ', wait for parts: in buffer'),
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
  /** Trucks back to the site before, to which units are sent back; 0: to the first step of their own site. */
  home: fc.constantFrom(0, 0, 1, 2),
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

/**
 * The floor at the start; what is drawn for other things decides what is open on it: nothing, an item that
 * nobody has found, one that is noted, and a unit that was sent back.
 */
function floorOf({ standing, sites, dollies, team, home }: RandomScenario): string {
  const { stations } = sites[0],
    last = stations.length - 1,
    { then, kind } = stations[last];
  if (standing === '' || !stations[0].creates || then === 'none' || then === 'fails') return standing;
  if (kind === 'lot' && then === 'repair') return standing;
  const isOpen = then === 'back' || then === 'carry',
    item = `{ defect: flaw 0, made at: do 0-0, ${isOpen ? `found at: do 0-${last}` : 'chance: 50 %'} }`,
    back = then === 'back' && dollies === 0 && !team && home < 2;
  return (
    standing.replaceAll('{ at: end 0', `{ at: end 0, open: [${item}]`) +
    (back
      ? `, { at: do 0-0, open: [${item}]${stations[0].again ? `, sent back by: do 0-${last}` : ''} }`
      : '')
  );
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
    pins,
    waits,
    hold,
    replaced,
    outage,
    pulse,
    dollies,
    team,
    short,
    inRework,
    beside,
    home,
  } = drawn;
  const { hoists, lifts } = equipmentOf(drawn);
  // What is chosen by other draws leaves the drawn scenarios as they are.
  const comes = release.startsWith('rate') && replaced ? AT_TIMES : release;
  const upTo = (end: string): string => `from: begin, to: ${short ? 'do 0-0' : end}${inRework}`;
  // What a part brings is looked for at the end of the first site; an item that is noted comes to a hold, or
  // is shipped with it.
  const flaw = flawedParts ? ', creates: { part flaw: 40 % }' : '',
    seek = flawedParts && (stock > 0 || own) ? ', finds: { part flaw: { chance: 60 %, carry: 6 min } }' : '';
  const lane = (name: string, from: number, to: number, count: number): string =>
    `  ${name}: { from: site ${from}, to: site ${to}, trucks: ${count}, capacity: ${capacity}, load: 5 min, drive: { low: 20 min, high: 60 min }, unload: 5 min, return: 30 min, leaves: ${leaves}${banks} }`;
  const lanes = sites
    .slice(1)
    .flatMap((_, i) => [
      lane(`lane ${i}`, i, i + 1, trucks),
      ...(home > 0 ? [lane(`home ${i}`, i + 1, i, home)] : []),
    ]);
  const kit = pins === 'no kit' ? ', full kit: false' : '',
    hasPins = pins !== '' && (stock > 0 || own),
    taking = (count: number): string => (hasPins ? `, parts: { pins: ${count} }` : '');
  const feeders = [
      ...(stock > 0
        ? [
            `  axles: { stock: ${stock}${kit}, route: [{ step: build axle, at: axle bench${taking(1)}, work: { exponential: { mean: 8 min } }${flaw} }${hasPins ? `, { step: pin axle, at: axle bench, work: 3 min${taking(1)}, fails: { chance: 10 %, back to: build axle, limit: 2, at limit: scrap } }, { step: cap axle, at: axle bench, work: 1 min${taking(1)} }` : ''}] }`,
          ]
        : []),
      ...(own
        ? [
            `  doors: { own: true${kit}, route: [{ step: trim doors, at: door bench, work: { exponential: { mean: 8 min } }${flaw} }${hasPins ? `, { step: pin doors, at: door bench, when: { colour: red }, work: 2 min${taking(2)} }` : ''}] }`,
          ]
        : []),
      ...(hasPins
        ? [
            `  pins: { stock: 3, route: [{ step: turn pin, at: axle bench, work: { exponential: { mean: 3 min } }${flaw} }] }`,
          ]
        : []),
    ],
    taken = parts(0, stock, own, supply !== '');
  return `
scenario: drawn at random
programme: { start: 2027-03-01, ${comes}, quantity: ${quantity}, options: { colour: { red: 40 %, white: 60 % } }, opening: [${quantity >= 7 ? floorOf(drawn) : ''}], replace scrapped: ${replaced}${release.includes('saturated') ? '' : ', due after: 2 h'} }
calendars:
  days: { hours: ["06:00-14:30"], on: Mon-Fri, breaks: ["09:30-09:45", "12:00-12:30"]${release.startsWith('rate') ? `, overtime: [{ hours: ["14:30-16:30"], when: { units behind: 3${outage ? ', due within: 1 h' : ', lead time: 5 h'} }, decided: daily }]` : ''} }
  two: { hours: ["06:00-14:30", "14:30-22:00"], breaks: ["12:00-12:30"], overtime: [{ on: Sat, hours: ["06:00-12:00"] }] }
defects: { ${sites.map((_, s) => `flaw ${s}: {}`).join(', ')}, part flaw: {} }
sites:
${sites
  .map(
    ({ stations, calendar, crew, shifts }, s) => `
  site ${s}:
    ${calendar ? `calendar: ${team && s === 0 && shifts.includes('two') ? 'two' : 'days'}` : 'zone: UTC'}
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
${team && (sites[0].crew === 3 || (sites[0].calendar && sites[0].shifts !== '')) ? `teams: { pair: { crew: hands, people: 1, ${upTo('end 0')} } }` : ''}
route:
  - { step: begin, at: start, work: { low: 2 min, high: 6 min }${own ? ', takes off: doors' : ''} }
${beside === '' ? '' : `  - { at: stall, side by side: [{ step: beside 1, crew: { hands: 1 }, work: { exponential: { mean: 5 min } } }, { step: beside 2, crew: { hands: 1 }, work: 4 min, process: 3 min${hoists === '' ? '' : ', equipment: { hoist: 1 }'} }, { step: beside 3, when: { colour: red }, crew: { hands: 1 }, work: { low: 2 min, high: 9 min } }] }`}
${spare}
${sites
  .map(({ stations }, s) =>
    [
      ...(s > 0 ? [`  - { lane: lane ${s - 1} }`] : []),
      ...stations.flatMap((one, i) =>
        stepTexts(
          one,
          s,
          i,
          stations,
          liftText(one, hoists, lifts[i % lifts.length]),
          home > 0 && s > 0 ? s - 1 : s,
        ),
      ),
      `  - { step: end ${s}, at: done ${s}, work: 3 min${s > 0 ? '' : taken + (taken === '' || pulse ? '' : waits)}${s === 0 ? seek : ''} }`,
      ...(hold && ((s === 0 && seek !== '') || carries(stations))
        ? [
            `  - { step: hold ${s}, at: hold area ${s}, hold: { mend: { usual: 9 min, colour: { red: 4 min } } } }`,
          ]
        : []),
    ].join('\n'),
  )
  .join('\n')}
`;
}

const AT_TIMES = 'arrivals: { at: ["06:30", "07:10", "08:00", "15:00"], units: 6 }',
  MIXTURE = '{ mixture: [{ share: 80 %, time: 8 min }, { share: 20 %, time: { mean: 40 min, cv: 0.5 } }] }';

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

/** Settings, changed by people or by itself: of lots with a changeover, and of colours without one. */
const hasSettings = ({ kind, changeover }: Station): boolean =>
  kind === 'lot' ? changeover : kind === 'colour' && !changeover;

function stationText(one: Station): string {
  const { places, buffer, ownRework, kind, changeover, creates, failures } = one;
  const fails = failures === '' ? '' : `, failures: { ${failures} }`,
    batch = kind === 'lot' || buffer === 'unlimited' ? ', batch: { most: 2 }' : '',
    setting = hasSettings(one)
      ? `, changeover: { on: setting, ${creates ? 'process' : 'work'}: 6 min, from to: { hot: { cold: 9 min } }${batch} }`
      : '';
  if (kind === 'lot')
    return `{ places: 3, buffer: unlimited, lot: { least: 2, most: 3, longest wait: 30 min }${setting}${fails} }`;
  return `{ places: ${places}, buffer: ${buffer}${ownRework ? ', rework buffer: unlimited' : ''}${changeover && kind === 'colour' ? `, changeover: { on: colour, work: 5 min${buffer === 'unlimited' ? ', from to: { red: { white: { exponential: { mean: 8 min } } } }, batch: { most: 2, longest wait: 1 h }' : ''} }` : setting} }`;
}

/**
 * The flaw of a site is made at its first station, if at all, and sought at its last; units go back to the
 * first station of the site `back`.
 */
function stepTexts(
  one: Station,
  s: number,
  i: number,
  stations: readonly Station[],
  lift: string,
  back: number,
): string[] {
  const isFirst = i === 0,
    isLast = i === stations.length - 1,
    head = `at: ${nameOf(s, i)}`,
    drawn = one.again && one.work.includes('cv') ? MIXTURE : one.work;
  const crew = one.crew > 0 && one.kind !== 'lot' ? `, crew: { hands: ${one.crew} }` : '';
  const time =
    one.kind === 'passes'
      ? `, passes: { count: 2, work: ${drawn}, settle: 5 min }`
      : one.kind === 'bake'
        ? `, work: 2 min, process: ${drawn}, attended end: ${one.changeover}`
        : one.kind === 'lot'
          ? `, process: ${drawn}`
          : `, work: ${drawn}${one.kind === 'work' && one.changeover ? ', in one shift: true' : ''}${one.kind === 'colour' ? ', work factor: { colour: { red: 1.3 } }' : ''}`;
  const last = stations[stations.length - 1],
    first = stations[0];
  const seeks = !['none', 'fails'].includes(last.then) && !(last.kind === 'lot' && last.then === 'repair');
  const makes = isFirst && first.creates && seeks ? `, creates: { flaw ${s}: 50 % }` : '';
  const setting = hasSettings(one) ? ', setting: { colour: { red: hot }, usual: cold }' : '';
  // A unit that comes back has to meet the first step again, so a sample stands only where nobody is sent.
  const path = isFirst || isLast ? '' : one.path;
  return [
    `  - { step: do ${s}-${i}, ${head}${path}${crew}${lift}${time}${setting}${makes}${isLast && first.creates && seeks ? finds(last, s, back) : ''}${isLast && last.then === 'fails' ? `, fails: { chance: 20 %, back to: do ${back}-0, limit: 2 }` : ''} }`,
    ...(one.again && (one.kind === 'work' || setting !== '') && !isLast
      ? [`  - { step: more ${s}-${i}, ${head}, work: 4 min${setting === '' ? '' : ', setting: hot'} }`]
      : []),
  ];
}

/** For a part of plain work alone; what fails is not for lots. */
function liftText({ kind, changeover }: Station, hoists: string, lift: string): string {
  const isPlain = kind === 'colour' || (kind === 'work' && !changeover),
    isFit = lift === '1' ? kind !== 'lot' || hoists.length === 1 : isPlain;
  return hoists === '' || lift === '' || !isFit ? '' : `, equipment: { hoist: ${lift} }`;
}

function finds({ then }: Station, s: number, back: number): string {
  const what =
    then === 'repair'
      ? 'repair: { usual: 7 min, colour: { red: { exponential: { mean: 9 min } } } }'
      : then === 'scrap'
        ? 'scrap: true'
        : then === 'carry'
          ? 'carry: { usual: 11 min, colour: { white: 5 min } }'
          : `back to: do ${back}-0, limit: 3`;
  return `, finds: { flaw ${s}: { chance: 80 %, ${what} } }`;
}
