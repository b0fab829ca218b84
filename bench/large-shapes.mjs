/** Scenarios of `n` things of one sort: name of the shape -> its files, text by name; the first is the scenario. */

const HEAD = (name, programme = 'start: 2027-03-01, quantity: 5, rate: { per day: 1 }') =>
  `scenario: ${name}\nprogramme: { ${programme} }\n`;
const list = (n, line) => Array.from({ length: n }, (_, i) => line(i)).join('\n');
const row = (n, word) => Array.from({ length: n }, (_, i) => word(i)).join(' ');
const one = (name, { programme, site = '', stations = 's: { buffer: unlimited }', sections = '', route }) =>
  `${HEAD(name, programme)}${sections}
sites:
  hall:
${site}
    stations:
      ${stations}
route:
${route}
`;
const stations = (n, text = '{}') => list(n, (i) => `${i === 0 ? '' : '      '}s${i}: ${text}`);
const plain = '  - { step: work, at: s, work: 5 min }';
const DAYS = 'calendars: { days: { hours: ["06:00-14:00"], on: every day } }';
const date = (i) => new Date(Date.UTC(2027, 2, 1 + i)).toISOString().slice(0, 10);

export const SHAPES = {
  'steps of one station': (n) =>
    one('steps', { route: list(n, (i) => `  - { step: t${i}, at: s, work: 1 min }`) }),
  'steps with stations': (n) =>
    one('stations', {
      stations: stations(n),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min }`),
    }),
  'steps with crews': (n) =>
    one('crews', {
      sections: DAYS,
      site: `    calendar: days\n    crews:\n${list(n, (i) => `      c${i}: { headcount: 2, absence: 5 % }`)}`,
      stations: stations(n),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, crew: { c${i}: 1 }, work: 1 min }`),
    }),
  'steps with all crews of a site': (n) =>
    one('many needs', {
      site: `    crews:\n${list(n, (i) => `      c${i}: 2`)}`,
      route: `  - { step: t, at: s, crew: { ${row(n, (i) => `c${i}: 1,`)} }, work: 1 min }`,
    }),
  'steps with passes': (n) =>
    one('passes', {
      stations: stations(n),
      route: list(
        n,
        (i) =>
          `  - { step: t${i}, at: s${i}, passes: { count: 3, work: 1 min, settle: 1 min }, process: 2 min }`,
      ),
    }),
  'steps with learning': (n) =>
    one('learning', {
      stations: stations(n),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min, learning: { rate: 90 % } }`),
    }),
  'steps with work of chance': (n) =>
    one('chance', {
      stations: stations(n),
      route: list(
        n,
        (i) => `  - { step: t${i}, at: s${i}, work: { low: 1 min, likely: 2 min, high: 3 min } }`,
      ),
    }),
  'steps with a condition': (n) =>
    one('conditions', {
      programme:
        'start: 2027-03-01, quantity: 5, rate: { per day: 1 }, options: { stripe: 30 %, colour: { red: 50 %, blue: 50 % } }',
      stations: stations(n),
      route:
        list(
          n,
          (i) =>
            `  - { step: t${i}, at: s${i}, work: 1 min, when: { colour: red }, work factor: { stripe: { yes: 2 } } }`,
        ) + '\n  - { step: last, at: s0, work: 1 min }',
    }),
  'steps with an option of their own': (n) =>
    one('options', {
      programme: `start: 2027-03-01, quantity: 5, rate: { per day: 1 }, options: { ${row(n, (i) => `o${i}: 30 %,`)} }`,
      route: list(n, (i) => `  - { step: t${i}, at: s, work: 1 min, when: o${i} }`) + `\n${plain}`,
    }),
  'options that nothing asks for': (n) =>
    one('options', {
      programme: `start: 2027-03-01, quantity: 5, rate: { per day: 1 }, options: { ${row(n, (i) => `o${i}: 30 %,`)} }`,
      route: plain,
    }),
  'values of an option': (n) =>
    one('values', {
      programme: `start: 2027-03-01, quantity: 5, rate: { per day: 1 }, options: { colour: { ${row(n, (i) => `v${i}: ${1 / n},`)} } }`,
      stations: 's: { buffer: unlimited, changeover: { on: colour, work: 1 min } }',
      route: plain,
    }),
  'work factors of an option': (n) =>
    one('factors', {
      programme: `start: 2027-03-01, quantity: 5, rate: { per day: 1 }, options: { colour: { ${row(n, (i) => `v${i}: ${1 / n},`)} } }`,
      route: `  - { step: work, at: s, work: 5 min, work factor: { colour: { ${row(n, (i) => `v${i}: 1.5,`)} } } }`,
    }),
  'pairs of a changeover': (n) => {
    const k = Math.max(2, Math.floor(Math.sqrt(n)));
    return one('pairs', {
      programme: `start: 2027-03-01, quantity: 5, rate: { per day: 1 }, options: { colour: { ${row(k, (i) => `v${i}: ${1 / k},`)} } }`,
      stations: `s: { buffer: unlimited, changeover: { on: colour, work: 1 min, from to: { ${row(k, (i) => `v${i}: { ${row(k, (j) => (j === i ? '' : `v${j}: 2 min,`))} },`)} } } }`,
      route: plain,
    });
  },
  'steps with a changeover': (n) =>
    one('changeovers', {
      programme:
        'start: 2027-03-01, quantity: 5, rate: { per day: 1 }, options: { colour: { red: 50 %, blue: 50 % } }',
      stations: stations(
        n,
        '{ buffer: 4, changeover: { on: colour, work: 1 min, batch: { most: 3, longest wait: 1 h } } }',
      ),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min }`),
    }),
  'tests that repair': (n) =>
    one('tests', {
      stations: stations(n),
      route: list(
        n,
        (i) => `  - { step: t${i}, at: s${i}, work: 1 min, fails: { chance: 0.0001, repair: 1 min } }`,
      ),
    }),
  'tests that send back one step': (n) =>
    one('back', {
      stations: stations(n, '{ rework buffer: unlimited, buffer: 2 }'),
      route: list(
        n,
        (i) =>
          `  - { step: t${i}, at: s${i}, work: 1 min, fails: { chance: 0.0001, back to: t${Math.max(0, i - 1)} } }`,
      ),
    }),
  'tests that send back to the first': (n) =>
    one('far back', {
      stations: stations(n, '{ rework buffer: unlimited, buffer: unlimited }'),
      route: list(
        n,
        (i) => `  - { step: t${i}, at: s${i}, work: 1 min, fails: { chance: 0.00001, back to: t0 } }`,
      ),
    }),
  'tests that carry, holds': (n) =>
    one('holds', {
      stations: stations(n),
      route: list(n, (i) =>
        i % 2 === 0
          ? `  - { step: t${i}, at: s${i}, work: 1 min, fails: { chance: 0.01, carry: 1 min } }`
          : `  - { step: t${i}, at: s${i}, hold: true }`,
      ),
    }),
  'second measurements': (n) =>
    one('second', {
      stations: stations(n),
      route: list(
        n,
        (i) =>
          `  - { step: t${i}, at: s${i}, work: 1 min, fails: { chance: 0.01, repair: 1 min }${i % 2 ? `, compares with: { step: t${i - 1}, if it differs: 2 min }` : ''} }`,
      ),
    }),
  'steps of a sample': (n) =>
    one('samples', {
      stations: stations(n),
      route:
        list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min, sample: { 1 in: 5, by: random } }`) +
        '\n  - { step: last, at: s0, work: 1 min }',
    }),
  'steps in one shift': (n) =>
    one('shift', {
      sections: DAYS,
      site: '    calendar: days\n    crews: { c: 3 }',
      stations: stations(n),
      route: list(
        n,
        (i) => `  - { step: t${i}, at: s${i}, work: 1 min, crew: { c: 1 }, in one shift: true }`,
      ),
    }),
  'steps side by side': (n) =>
    one('beside', {
      stations: 's: { buffer: unlimited, people: 5 }',
      route: `  - at: s\n    side by side:\n${list(n, (i) => `      - { step: t${i}, work: 1 min }`)}`,
    }),
  'groups side by side': (n) =>
    one('groups', {
      stations: stations(n, '{ buffer: unlimited, people: 5 }'),
      route: list(
        n,
        (i) =>
          `  - { at: s${i}, side by side: [{ step: a${i}, work: 1 min }, { step: b${i}, work: 1 min }] }`,
      ),
    }),
  'defects of one step': (n) =>
    one('defects', {
      sections: `defects: { ${row(n, (i) => `d${i}: {},`)} }`,
      route: `  - { step: work, at: s, work: 5 min, creates: { ${row(n, (i) => `d${i}: 0.00001,`)} } }
  - { step: look, at: s, work: 5 min, finds: { ${row(n, (i) => `d${i}: { chance: 50 %, repair: 1 min },`)} } }`,
    }),
  'defects of a step each': (n) =>
    one('defects', {
      sections: `defects: { ${row(n, (i) => `d${i}: {},`)} }`,
      stations: stations(n),
      route:
        list(
          n,
          (i) =>
            `  - { step: t${i}, at: s${i}, work: 5 min, creates: { d${i}: 0.001 }${i === 0 ? '' : `, finds: { d${i - 1}: { chance: 50 %, repair: 1 min } }`} }`,
        ) +
        `\n  - { step: last, at: s0, work: 1 min, finds: { d${n - 1}: { chance: 50 %, repair: 1 min } } }`,
    }),
  'one defect of every step': (n) =>
    one('one defect', {
      sections: 'defects: { d: {} }',
      stations: stations(n),
      route: list(
        n,
        (i) =>
          `  - { step: t${i}, at: s${i}, work: 5 min, creates: { d: 0.001 }, finds: { d: { chance: 50 %, repair: 1 min } } }`,
      ),
    }),
  'defects with send-back': (n) =>
    one('defects', {
      sections: `defects: { ${row(n, (i) => `d${i}: {},`)} }`,
      stations: stations(n, '{ buffer: unlimited }'),
      route: list(
        n,
        (i) =>
          `  - { step: t${i}, at: s${i}, work: 5 min, creates: { d${i}: 0.001 }, finds: { d${i}: { chance: 50 %, back to: t${i} } } }`,
      ),
    }),
  'defects by option': (n) =>
    one('defects', {
      programme:
        'start: 2027-03-01, quantity: 5, rate: { per day: 1 }, options: { colour: { red: 50 %, blue: 50 % } }',
      sections: `defects: { ${row(n, (i) => `d${i}: {},`)} }`,
      route: `  - { step: work, at: s, work: 5 min, creates: { ${row(n, (i) => `d${i}: { usual: 0.00001, colour: { red: 0.00002 } },`)} } }
  - { step: look, at: s, work: 5 min, finds: { ${row(n, (i) => `d${i}: { chance: 50 %, repair: 1 min },`)} } }`,
    }),
  'stations nobody visits': (n) =>
    one('spare', { stations: `${stations(n)}\n      s: { buffer: unlimited }`, route: plain }),
  'stations with failures': (n) =>
    one('failures', {
      stations: stations(n, '{ failures: { every: { exponential: { mean: 60 h } }, repair: 4 h } }'),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min }`),
    }),
  'failures of one station': (n) =>
    one('ways to fail', {
      stations: `s: { buffer: unlimited, failures: [ ${row(n, () => '{ every: { exponential: { mean: 800000 h } }, repair: 1 h },')} ] }`,
      route: plain,
    }),
  'stations with lots': (n) =>
    one('lots', {
      stations: stations(n, '{ places: 4, buffer: 4, lot: { least: 1, most: 4, longest wait: 10 min } }'),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, process: 1 min }`),
    }),
  'stations with many places': (n) =>
    one('places', {
      stations: stations(n, '{ places: 100, buffer: 100 }'),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min }`),
    }),
  'sites with lanes': (n) =>
    `${HEAD('sites')}lanes:\n${list(n - 1, (i) => `  l${i}: { from: h${i}, to: h${i + 1}, trucks: 2, capacity: 1, drive: 1 h, return: 1 h, load: 5 min, arrival bank: 2 }`)}
sites:\n${list(n, (i) => `  h${i}: { zone: Europe/Oslo, stations: { s${i}: { buffer: unlimited } } }`)}
route:\n${list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min }\n${i < n - 1 ? `  - lane: l${i}` : ''}`)}\n`,
  'lanes by timetable': (n) =>
    `${HEAD('sites')}${DAYS}\nlanes:\n${list(n - 1, (i) => `  l${i}: { from: h${i}, to: h${i + 1}, trucks: 2, capacity: 1, drive: 1 h, leaves: { at: ["08:00", "12:00"] }, hours: days }`)}
sites:\n${list(n, (i) => `  h${i}: { zone: Europe/Oslo, calendar: days, stations: { s${i}: { buffer: unlimited } } }`)}
route:\n${list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min }\n${i < n - 1 ? `  - lane: l${i}` : ''}`)}\n`,
  'carriers, nested': (n) =>
    one('carriers', {
      sections: `carriers:\n${list(31, (i) => `  c${i}: { count: 2, from: t${i}, to: t${n - 1 - i}, return: 1 h }`)}`,
      stations: stations(n),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min }`),
    }),
  'carriers over all steps': (n) =>
    one('long carriers', {
      sections: `carriers:\n${list(31, (i) => `  c${i}: { count: 2, from: t0, to: t${n - 1}, return: 1 h }`)}`,
      stations: stations(n),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min }`),
    }),
  'too many teams': (n) =>
    one('teams', {
      sections: `teams:\n${list(n, (i) => `  m${i}: { crew: c${i}, people: 1, from: t${i}, to: t${i} }`)}`,
      site: `    crews:\n${list(n, (i) => `      c${i}: 2`)}`,
      stations: stations(n),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min }`),
    }),
  'feeders for stock': (n) =>
    one('feeders', {
      sections: `feeders:\n${list(n, (i) => `  f${i}: { stock: 2, at start: 2, route: [{ step: b${i}, at: s${i}, work: 1 h }] }`)}`,
      stations: stations(n, '{ buffer: unlimited }'),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min, parts: { f${i}: 1 } }`),
    }),
  'feeders in a chain': (n) =>
    one('chain', {
      sections: `feeders:\n${list(n, (i) => `  f${i}: { stock: 2, at start: 2, route: [{ step: b${i}, at: s${i}, work: 1 h${i === n - 1 ? '' : `, parts: { f${i + 1}: 1 }`} }] }`)}`,
      stations: `${stations(n, '{ buffer: unlimited }')}\n      s: { buffer: unlimited }`,
      route: '  - { step: t, at: s, work: 1 min, parts: { f0: 1 } }',
    }),
  'feeders with a defect each': (n) =>
    one('feeders', {
      sections: `defects: { ${row(n, (i) => `d${i}: {},`)} }\nfeeders:\n${list(n, (i) => `  f${i}: { stock: 2, at start: 2, route: [{ step: b${i}, at: s${i}, work: 1 h, creates: { d${i}: 0.1 } }] }`)}`,
      stations: stations(n, '{ buffer: unlimited }'),
      route: list(
        n,
        (i) =>
          `  - { step: t${i}, at: s${i}, work: 1 min, parts: { f${i}: 1 }, finds: { d${i}: { chance: 50 %, repair: 1 min } } }`,
      ),
    }),
  supplies: (n) =>
    one('supplies', {
      sections: `supplies:\n${list(n, (i) => `  p${i}: { site: hall, at start: 6, reorder: { level: 4, lot: 8, lead time: 15 days }, late: { chance: 10 %, by: 2 days } }`)}`,
      stations: stations(n),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min, parts: { p${i}: 1 } }`),
    }),
  'supplies of one step': (n) =>
    one('supplies', {
      sections: `supplies:\n${list(n, (i) => `  p${i}: { site: hall, at start: 6, deliveries: { lot: 10, every: 7 days } }`)}`,
      route: `  - { step: t, at: s, work: 1 min, parts: { ${row(n, (i) => `p${i}: 1,`)} } }`,
    }),
  'deliveries of one supply': (n) =>
    one('deliveries', {
      sections: `${DAYS}\nsupplies: { p: { site: hall, at start: 6, deliveries: [ ${row(n, (i) => `{ on: ${date(i)}, lot: 2 },`)} ] } }`,
      site: '    calendar: days',
      route: '  - { step: t, at: s, work: 1 min, parts: { p: 1 } }',
    }),
  outages: (n) =>
    one('outages', {
      sections: `outages:\n${list(n, (i) => `  - { stations: [s${i}], from: 2027-03-02, to: 2027-03-03 }`)}`,
      stations: stations(n),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min }`),
    }),
  'outages of one station': (n) =>
    one('outages', {
      sections: `outages:\n${list(n, (i) => `  - { stations: [s], from: ${date(2 * i)}, to: ${date(2 * i)} }`)}`,
      route: plain,
    }),
  'outage of many stations': (n) =>
    one('outages', {
      sections: `outages: [{ site: hall, from: 2027-03-02, to: 2027-03-03 }, { stations: [ ${row(n, (i) => `s${i},`)}], from: 2027-04-02, to: 2027-04-03 }]`,
      stations: stations(n),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min }`),
    }),
  'calendars of a station each': (n) =>
    one('calendars', {
      sections: `calendars:\n${list(n, (i) => `  k${i}: { hours: ["06:00-14:00"], breaks: ["09:30-09:45"] }`)}`,
      stations: list(n, (i) => `${i === 0 ? '' : '      '}s${i}: { calendar: k${i} }`),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min }`),
    }),
  'holidays of a calendar': (n) =>
    one('holidays', {
      sections: `calendars: { days: { hours: ["06:00-14:00"], on: every day, holidays: [ ${row(n, (i) => `${date(3 * i)},`)}] } }`,
      site: '    calendar: days',
      route: plain,
    }),
  'shutdowns of a calendar': (n) =>
    one('shutdowns', {
      sections: `calendars: { days: { hours: ["06:00-14:00"], on: every day, shutdowns: [ ${row(n, (i) => `{ from: ${date(3 * i)}, to: ${date(3 * i)} },`)}] } }`,
      site: '    calendar: days',
      route: plain,
    }),
  'overtime of a calendar': (n) =>
    one('overtime', {
      sections: `calendars: { days: { hours: ["06:00-14:00"], on: every day, overtime: [ ${row(n, (i) => `{ from: ${date(3 * i)}, to: ${date(3 * i)}, hours: ["15:00-17:00"] },`)}] } }`,
      site: '    calendar: days',
      route: plain,
    }),
  'overtime by rules': (n) =>
    one('overtime', {
      sections: `calendars: { days: { hours: ["06:00-14:00"], on: every day, overtime: [ ${row(n, (i) => `{ from: ${date(7 * i)}, to: ${date(7 * i)}, hours: ["15:00-17:00"], when: { units behind: 3, lead time: 2 days } },`)}] } }`,
      site: '    calendar: days',
      route: plain,
    }),
  'shifts of a crew': (n) => {
    const k = Math.min(n, 700),
      at = (i) =>
        `${String(Math.floor((2 * i) / 60)).padStart(2, '0')}:${String((2 * i) % 60).padStart(2, '0')}`;
    return one('shifts', {
      sections: `calendars: { days: { hours: [ ${row(k, (i) => `"${at(i)}-${at(i).slice(0, 3)}${String(((2 * i) % 60) + 1).padStart(2, '0')}",`)}] } }`,
      site: `    calendar: days\n    crews: { c: { headcount: [ ${row(k, () => '2,')}], absence: 5 % } }`,
      route: '  - { step: work, at: s, crew: { c: 1 }, work: 1 min }',
    });
  },
  'rates of a ramp': (n) =>
    one('ramp', {
      programme: `start: 2027-03-01, quantity: ${n}, rate: [ ${row(n, (i) => `{ from: ${date(i)}, per day: ${1 + (i % 2)} },`)}]`,
      sections: DAYS,
      site: '    calendar: days',
      route: plain,
    }),
  'weeks of a ramp': (n) =>
    one('weeks', {
      programme: `start: 2027-03-01, quantity: ${n}, rate: [ ${row(n, (i) => `{ from: ${date(7 * i)}, per week: ${5 + (i % 2)} },`)}]`,
      sections: DAYS,
      site: '    calendar: days',
      route: plain,
    }),
  'units of an opening': (n) =>
    one('opening', {
      programme: `start: 2027-03-01, quantity: ${n + 2}, rate: { per day: 1 }, opening: [ ${row(n, (i) => `{ at: t${i}, build: B-${i} },`)}]`,
      stations: stations(n),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min }`),
    }),
  'opening at one step': (n) =>
    one('opening', {
      programme: `start: 2027-03-01, quantity: ${n + 2}, rate: { per day: 1 }, opening: [ ${row(n, (i) => `{ at: work, build: B-${i} },`)}]`,
      route: plain,
    }),
  'build list': (n) => ({
    'main.yaml': one('list', {
      programme:
        'start: 2027-03-01, rate: { per day: 100 }, build list: list.csv, options: { colour: { red: 50 %, blue: 50 % } }',
      route: plain,
    }),
    'list.csv': `build,due,colour\n${list(n, (i) => `B-${i},2028-01-01,red`)}\n`,
  }),
  'pulse line': (n) =>
    one('pulse', {
      sections: `pulse lines: { p: { takt: 1 h, stations: [ ${row(n, (i) => `s${i},`)}] } }`,
      stations: stations(n),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min }`),
    }),
  'pulse lines': (n) =>
    one('pulses', {
      sections: `pulse lines:\n${list(n, (i) => `  p${i}: { takt: 1 h, stations: [s${i}] }`)}`,
      stations: stations(n),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, work: 1 min }`),
    }),
  prices: (n) =>
    one('prices', {
      sections: `costs: { currency: EUR, people: { ${row(n, (i) => `c${i}: 40,`)} }, changeovers: { ${row(n, (i) => `s${i}: 4,`)} } }`,
      site: `    crews:\n${list(n, (i) => `      c${i}: 2`)}`,
      programme:
        'start: 2027-03-01, quantity: 5, rate: { per day: 1 }, options: { colour: { red: 50 %, blue: 50 % } }',
      stations: stations(n, '{ changeover: { on: colour, work: 1 min } }'),
      route: list(n, (i) => `  - { step: t${i}, at: s${i}, crew: { c${i}: 1 }, work: 1 min }`),
    }),
  assumptions: (n) =>
    one('assumptions', {
      stations: stations(n),
      route: list(
        n,
        (i) => `  - { step: t${i}, at: s${i}, work: { value: 1 min, basis: guess, note: asked ${i} } }`,
      ),
    }),
  'observed times': (n) => ({
    'main.yaml': one('observed', {
      route: '  - { step: work, at: s, work: { observed: t.csv, column: minutes, unit: min } }',
    }),
    't.csv': `minutes\n${list(n, (i) => `${1 + (i % 50)}`)}\n`,
  }),
  'observed times of many steps': (n) => ({
    'main.yaml': one('observed', {
      stations: stations(n),
      route: list(
        n,
        (i) => `  - { step: t${i}, at: s${i}, work: { observed: t.csv, column: minutes, unit: min } }`,
      ),
    }),
    't.csv': `minutes\n${list(1000, (i) => `${1 + (i % 50)}`)}\n`,
  }),
  'discrete times': (n) =>
    one('discrete', {
      route: `  - { step: work, at: s, work: { discrete: { ${row(n, (i) => `${i + 1} min: ${1 / n},`)} } } }`,
    }),
  includes: (n) => ({
    'main.yaml': `${HEAD('includes')}sites: { hall: { stations: { s: { buffer: unlimited } } } }\nroute:\n${list(n, (i) => `  - include: p${i}.yaml`)}\n`,
    ...Object.fromEntries(
      Array.from({ length: n }, (_, i) => [
        `p${i}.yaml`,
        `route:\n${list(100, (k) => `  - { step: t${i}-${k}, at: s, work: 1 min }`)}\n`,
      ]),
    ),
  }),
  'problems of names': (n) =>
    one('bad', { route: list(n, (i) => `  - { step: t${i}, at: z${i}, work: 1 min }`) }),
  'problems of shape': (n) => one('bad', { route: list(n, (i) => `  - { step: t${i}, at: s, wrok: ${i} }`) }),
  'names given twice': (n) => one('bad', { route: list(n, () => '  - { step: t, at: s, work: 1 min }') }),
};
