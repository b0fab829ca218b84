import {
  type Build,
  build,
  carrier,
  crew,
  feeder,
  HOUR,
  hours,
  lane,
  room,
  station,
  step,
  team,
} from './build.js';

/**
 * Two fitters do 2 x 480 / 100 = 9.6 a day in the four places of the fit bay, which could hold 19.2; 16 are
 * asked. Frame bench, test bay and tester 480 / 37 = 13.0, seats 13.3.
 * - A third fitter: 14.4, so that frame and test are next, with 13.0 (+ 35 %).
 * - Decoys: seats are sewn ahead (stock 340 is never reached), so the upholsterer is engaged all day; the
 *   tester follows what comes, three quarters of the day; the ten spaces ahead of the fit bay are mostly
 *   full.
 */
export const fitters: Build = build(
  'crew',
  crew('fitters'),
  `
scenario: two fitters for four places
programme: { start: 2027-03-01, until: 2027-07-05, rate: { per day: 16 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  works:
    calendar: days
    crews: { fitters: 2, testers: 1, upholsterers: 1 }
    stations: { frame bench: {}, fit bay: { places: 4, buffer: 10 }, test bay: { buffer: unlimited }, seat bench: {} }
feeders:
  seats:
    stock: 340
    at start: 20
    route: [{ step: sew seats, at: seat bench, crew: { upholsterers: 1 }, work: { gamma: { mean: 36 min, cv: 0.3 } } }]
route:
  - { step: frame, at: frame bench, work: { gamma: { mean: 37 min, cv: 0.3 } } }
  - { step: fit, at: fit bay, crew: { fitters: 1 }, parts: { seats: 1 }, work: { gamma: { mean: 100 min, cv: 0.5 } } }
  - { step: test, at: test bay, crew: { testers: 1 }, work: { gamma: { mean: 37 min, cv: 0.3 } } }
`,
  {
    helps: [[crew('fitters'), 'a person', 'fitters: 2, testers', 'fitters: 3, testers']],
    lesser: [HOUR],
    decoys: [
      [station('fit bay'), 'a place', 'places: 4, buffer: 10', 'places: 5, buffer: 10'],
      [room('fit bay'), 'a space', 'places: 4, buffer: 10', 'places: 4, buffer: 11'],
      [station('frame bench'), 'a place', 'frame bench: {}', 'frame bench: { places: 2 }'],
      [
        station('test bay'),
        'a place',
        'test bay: { buffer: unlimited }',
        'test bay: { buffer: unlimited, places: 2 }',
      ],
      [crew('testers'), 'a person', 'testers: 1, upholsterers', 'testers: 2, upholsterers'],
      [station('seat bench'), 'a place', 'seat bench: {}', 'seat bench: { places: 2 }'],
      [
        crew('upholsterers'),
        'a person',
        'upholsterers: 1 }\n    stations',
        'upholsterers: 2 }\n    stations',
      ],
      [feeder('seats'), 'one in stock', 'stock: 340', 'stock: 341'],
    ],
  },
);

/**
 * Six technicians are three teams. A team stays with its unit for 70 + 380 + 50 min, and for the night, in
 * which the seal cures on: 1.1 units a day, three teams 3.2; 8 are asked. Frame bench 6.0 a day, clean bay
 * 5.9, seats 5.1.
 * - A fourth team (two people more): a third more.
 * - Decoys: a person more makes no team. The seal oven, in which the units with a team sit most of the time,
 *   has four places, so that one is always free; battery bay and start bay have three, one for each team.
 *   Units wait ahead of the battery bay for a team; seats are sewn ahead.
 */
export const teams: Build = build(
  'team',
  team('power team'),
  `
scenario: three teams that wait at the oven
programme: { start: 2027-03-01, until: 2027-07-05, rate: { per day: 8 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  works:
    calendar: days
    crews: { technicians: 6, upholsterers: 1 }
    stations: { frame bench: {}, battery bay: { places: 3, buffer: 6 }, seal oven: { places: 4 }, start bay: { places: 3, buffer: 4 }, clean bay: { buffer: unlimited }, seat bench: {} }
teams: { power team: { crew: technicians, people: 2, from: fit battery, to: first start } }
feeders:
  seats:
    stock: 210
    at start: 20
    route: [{ step: sew seats, at: seat bench, crew: { upholsterers: 1 }, work: { gamma: { mean: 95 min, cv: 0.3 } } }]
route:
  - { step: frame, at: frame bench, work: { gamma: { mean: 80 min, cv: 0.3 } } }
  - { step: fit battery, at: battery bay, work: { gamma: { mean: 70 min, cv: 0.3 } } }
  - { step: cure seal, at: seal oven, process: { gamma: { mean: 380 min, cv: 0.2 } } }
  - { step: first start, at: start bay, work: { gamma: { mean: 50 min, cv: 0.3 } } }
  - { step: clean, at: clean bay, parts: { seats: 1 }, work: { gamma: { mean: 82 min, cv: 0.3 } } }
`,
  {
    accepted: [crew('technicians')],
    helps: [[team('power team'), 'a team', 'technicians: 6', 'technicians: 8']],
    lesser: [HOUR],
    decoys: [
      [crew('technicians'), 'a person, too few for a team', 'technicians: 6', 'technicians: 7'],
      [station('seal oven'), 'a place', 'seal oven: { places: 4 }', 'seal oven: { places: 5 }'],
      [station('battery bay'), 'a place', 'places: 3, buffer: 6', 'places: 4, buffer: 6'],
      [room('battery bay'), 'a space', 'places: 3, buffer: 6', 'places: 3, buffer: 7'],
      [
        station('start bay'),
        'a place',
        'start bay: { places: 3, buffer: 4 }',
        'start bay: { places: 4, buffer: 4 }',
      ],
      [station('frame bench'), 'a place', 'frame bench: {}', 'frame bench: { places: 2 }'],
      [
        station('clean bay'),
        'a place',
        'clean bay: { buffer: unlimited }',
        'clean bay: { buffer: unlimited, places: 2 }',
      ],
      [station('seat bench'), 'a place', 'seat bench: {}', 'seat bench: { places: 2 }'],
      [
        crew('upholsterers'),
        'a person',
        'upholsterers: 1 }\n    stations',
        'upholsterers: 2 }\n    stations',
      ],
    ],
  },
);

/**
 * Two welds in five fail and are done again: 60 / (1 - 0.4) = 100 min a unit, 4.8 a day; 10 are asked. By the
 * time of a single visit the weld bay could do 8, more than the paint booth with 480 / 68 = 7.1, fit bay 7.7,
 * seats 7.4, cut bench 8.6; x-ray 25 / 0.6 min a unit, 11.5.
 * - A second place: 9.6, so that the paint booth is next, with 7.1 (+ 47 %).
 * - Decoys: paint booth (70 % busy), cut bench (blocked), the full buffer ahead of the weld bay, and seats
 *   sewn ahead.
 */
export const reworked: Build = build(
  'rework',
  station('weld bay'),
  `
scenario: two welds in five are done again
programme: { start: 2027-03-01, until: 2027-07-05, rate: { per day: 10 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  works:
    calendar: days
    crews: { upholsterers: 1 }
    stations: { cut bench: {}, weld bay: { buffer: 8, rework buffer: unlimited }, x-ray bay: { buffer: unlimited }, paint booth: { buffer: unlimited }, seat bench: {}, fit bay: { buffer: unlimited } }
feeders:
  seats:
    stock: 230
    at start: 20
    route: [{ step: sew seats, at: seat bench, crew: { upholsterers: 1 }, work: { gamma: { mean: 65 min, cv: 0.3 } } }]
route:
  - { step: cut, at: cut bench, work: { gamma: { mean: 56 min, cv: 0.3 } }, rework: skip }
  - { step: weld, at: weld bay, work: { gamma: { mean: 60 min, cv: 0.3 } } }
  - { step: x-ray, at: x-ray bay, work: { gamma: { mean: 25 min, cv: 0.3 } }, fails: { chance: 40 %, back to: weld, limit: 20 } }
  - { step: paint, at: paint booth, work: { gamma: { mean: 68 min, cv: 0.3 } } }
  - { step: fit, at: fit bay, parts: { seats: 1 }, work: { gamma: { mean: 62 min, cv: 0.3 } } }
`,
  {
    accepted: [step('weld')],
    helps: [[station('weld bay'), 'a place', 'buffer: 8, rework', 'places: 2, buffer: 8, rework']],
    lesser: [HOUR],
    decoys: [
      [
        station('paint booth'),
        'a place',
        'paint booth: { buffer: unlimited }',
        'paint booth: { buffer: unlimited, places: 2 }',
      ],
      [
        station('x-ray bay'),
        'a place',
        'x-ray bay: { buffer: unlimited }',
        'x-ray bay: { buffer: unlimited, places: 2 }',
      ],
      [station('cut bench'), 'a place', 'cut bench: {}', 'cut bench: { places: 2 }'],
      [room('weld bay'), 'a space', 'buffer: 8, rework', 'buffer: 9, rework'],
      [
        station('fit bay'),
        'a place',
        'fit bay: { buffer: unlimited }',
        'fit bay: { buffer: unlimited, places: 2 }',
      ],
      [station('seat bench'), 'a place', 'seat bench: {}', 'seat bench: { places: 2 }'],
      [
        crew('upholsterers'),
        'a person',
        'upholsterers: 1 }\n    stations',
        'upholsterers: 2 }\n    stations',
      ],
    ],
  },
);

/**
 * Four stations with 20 min for each unit: 24 a day each; 40 are asked.
 * - An hour more: 27 (+ 12.5 %).
 * - Decoys: each station by itself, all of them busy 99 % of the time: the other three stay at 24. By chance
 *   one of the four is the slowest in some weeks, so that relieving it is worth up to half a per cent.
 */
export const balanced: Build = build(
  'hours',
  hours('days'),
  `
scenario: four stations with as much to do
programme: { start: 2027-03-01, until: 2027-07-05, rate: { per day: 40 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  works:
    calendar: days
    crews: { testers: 1 }
    stations: { frame bench: {}, weld bay: { buffer: 60 }, trim bay: { buffer: 60 }, test bay: { buffer: 60 } }
route:
  - { step: frame, at: frame bench, work: { gamma: { mean: 20 min, cv: 0.2 } } }
  - { step: weld, at: weld bay, work: { gamma: { mean: 20 min, cv: 0.2 } } }
  - { step: trim, at: trim bay, work: { gamma: { mean: 20 min, cv: 0.2 } } }
  - { step: test, at: test bay, crew: { testers: 1 }, work: { gamma: { mean: 20 min, cv: 0.2 } } }
`,
  {
    helps: [HOUR],
    decoys: [
      [station('frame bench'), 'a place', 'frame bench: {}', 'frame bench: { places: 2 }'],
      [station('weld bay'), 'a place', 'weld bay: { buffer: 60 }', 'weld bay: { buffer: 60, places: 2 }'],
      [station('trim bay'), 'a place', 'trim bay: { buffer: 60 }', 'trim bay: { buffer: 60, places: 2 }'],
      [station('test bay'), 'a place', 'test bay: { buffer: 60 }', 'test bay: { buffer: 60, places: 2 }'],
      [crew('testers'), 'a person', 'testers: 1 }\n', 'testers: 2 }\n'],
      [room('weld bay'), 'a space', 'weld bay: { buffer: 60 }', 'weld bay: { buffer: 61 }'],
      [room('test bay'), 'a space', 'test bay: { buffer: 60 }', 'test bay: { buffer: 61 }'],
    ],
  },
);

/**
 * Four a day are asked, and four are shipped. Frame bench 5.3 a day, fit bay and fitters 2 x 480 / 190 =
 * 5.05, seal oven 2 per 100 min day and night, three trucks that go twice a day 6, finish bay 5.05, packs 25
 * a week, seats 5.6.
 * - Nothing brings anything, not even an hour a day: only a higher rate would.
 * - Decoys: seats are sewn ahead, so bench and crew are busy all day; fitters are engaged 80 % of theirs.
 */
export const nothing: Build = build(
  'nothing',
  { kind: 'release', name: '' },
  `
scenario: four a day are asked of a line for five
programme: { start: 2027-03-01, until: 2027-07-05, rate: { per day: 4 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  works:
    calendar: days
    crews: { fitters: 2, upholsterers: 1 }
    stations: { frame bench: { buffer: 6 }, fit bay: { places: 2, buffer: 6 }, seal oven: { places: 2, buffer: 6, unattended: true, lot: { least: 1, most: 2 } }, seat bench: {} }
  plant:
    calendar: days
    stations: { finish bay: { buffer: unlimited } }
lanes: { road: { from: works, to: plant, trucks: 3, capacity: 1, load: 20 min, drive: { gamma: { mean: 2 h, cv: 0.2 } }, unload: 20 min, return: 2 h, bank: 6 } }
supplies: { packs: { site: works, at start: 12, deliveries: { lot: 25, every: 7 days, from: 2027-03-08 } } }
carriers: { dollies: { count: 9, from: frame, to: fit, return: { gamma: { mean: 4 h, cv: 0.3 } } } }
feeders:
  seats:
    stock: 170
    at start: 20
    route: [{ step: sew seats, at: seat bench, crew: { upholsterers: 1 }, work: { gamma: { mean: 85 min, cv: 0.3 } } }]
route:
  - { step: frame, at: frame bench, work: { gamma: { mean: 90 min, cv: 0.3 } } }
  - { step: fit, at: fit bay, crew: { fitters: 1 }, parts: { packs: 1, seats: 1 }, work: { gamma: { mean: 190 min, cv: 0.3 } } }
  - { step: cure, at: seal oven, process: { gamma: { mean: 100 min, cv: 0.2 } } }
  - { lane: road }
  - { step: finish, at: finish bay, work: { gamma: { mean: 95 min, cv: 0.3 } } }
`,
  {
    helps: [],
    decoys: [
      HOUR,
      [
        station('frame bench'),
        'a place',
        'frame bench: { buffer: 6 }',
        'frame bench: { buffer: 6, places: 2 }',
      ],
      [station('fit bay'), 'a place', 'places: 2, buffer: 6 }', 'places: 3, buffer: 6 }'],
      [crew('fitters'), 'a person', 'fitters: 2, uph', 'fitters: 3, uph'],
      [
        station('seal oven'),
        'a place, in the lot too',
        'places: 2, buffer: 6, unattended: true, lot: { least: 1, most: 2 }',
        'places: 3, buffer: 6, unattended: true, lot: { least: 1, most: 3 }',
      ],
      [
        station('finish bay'),
        'a place',
        'finish bay: { buffer: unlimited }',
        'finish bay: { buffer: unlimited, places: 2 }',
      ],
      [station('seat bench'), 'a place', 'seat bench: {}', 'seat bench: { places: 2 }'],
      [
        crew('upholsterers'),
        'a person',
        'upholsterers: 1 }\n    stations',
        'upholsterers: 2 }\n    stations',
      ],
      [carrier('dollies'), 'a carrier', 'count: 9', 'count: 10'],
      [lane('road'), 'a truck', 'trucks: 3', 'trucks: 4'],
    ],
  },
);
