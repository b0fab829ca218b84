import { type Build, build, carrier, crew, feeder, HOUR, room, station, supply } from './build.js';

/**
 * Ten packs every 7 days are 2 a working day; 4 are asked. s can do 480 / 70 = 6.9 a day, t 8, the seat bench
 * 4.
 * - One more in each lot is 2.2 a day, a delivery every 4 days 3.5.
 * - Decoys: the seats are sewn ahead (120 min each for 2 a day) to a stock of 220 that is never full, so that
 *   their bench and crew are busy all day; the spaces ahead of t are always full, and t is short of parts.
 *   None of them can make a pack come.
 */
export const packs: Build = build(
  'supply',
  supply('packs'),
  `
scenario: parts are short
programme: { start: 2027-04-05, quantity: 200, rate: { per day: 4 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  a:
    calendar: days
    crews: { upholsterers: 1 }
    stations: { s: { buffer: 4 }, t: { buffer: 4 }, seat bench: {} }
supplies: { packs: { site: a, at start: 5, deliveries: { lot: 10, every: 7 days, from: 2027-04-12 } } }
feeders:
  seats:
    stock: 220
    at start: 5
    route: [{ step: sew seats, at: seat bench, crew: { upholsterers: 1 }, work: { gamma: { mean: 120 min, cv: 0.3 } } }]
route:
  - { step: one, at: s, work: { mean: 70 min, cv: 0.3 } }
  - { step: two, at: t, work: { mean: 60 min, cv: 0.3 }, parts: { packs: 1, seats: 1 } }
`,
  {
    helps: [
      [supply('packs'), 'a part more in each lot', 'lot: 10,', 'lot: 11,'],
      [supply('packs'), 'a delivery more', 'every: 7 days', 'every: 4 days'],
    ],
    decoys: [
      HOUR,
      [station('s'), 'a place', 's: { buffer: 4 }', 's: { buffer: 4, places: 2 }'],
      [station('t'), 'a place', 't: { buffer: 4 }', 't: { buffer: 4, places: 2 }'],
      [room('t'), 'a space', 't: { buffer: 4 }', 't: { buffer: 5 }'],
      [station('seat bench'), 'a place', 'seat bench: {}', 'seat bench: { places: 2 }'],
      [
        crew('upholsterers'),
        'a person',
        'upholsterers: 1 }\n    stations',
        'upholsterers: 2 }\n    stations',
      ],
      [feeder('seats'), 'one in stock', 'stock: 220', 'stock: 221'],
    ],
  },
);

/**
 * Of castings there are never more on order than reorder level and a lot, and those that wait for one: in the
 * mean 20 + 3.5 + 2 = 25.5, which come after 14 days by the clock: 1.8 a calendar day, 2.5 a working day; 6
 * are asked. Weld bench 480 / 100 = 4.8, fit bay 6.4, trim bay 10.7, rail bench 3.8.
 * - A lot more on order (the level higher by one): 31.5 / 25.5, a quarter more.
 * - Decoys: the 8 dollies are held, most of the time all of them, by the unit at the weld bench and the 7
 *   that stand in and ahead of the fit bay for want of a casting; rails are bent ahead all day. (A place more
 *   at the fit bay is no decoy: a unit more that waits is a casting more on order.)
 */
export const castings: Build = build(
  'supply',
  supply('castings'),
  `
scenario: castings with a long lead time
programme: { start: 2027-03-01, until: 2027-07-05, rate: { per day: 6 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  works:
    calendar: days
    crews: { welders: 1, fitters: 2 }
    stations: { weld bench: { buffer: 2 }, fit bay: { places: 2, buffer: 5 }, trim bay: { buffer: unlimited }, rail bench: {} }
supplies:
  castings: { site: works, at start: 8, reorder: { level: 20, lot: 6, lead time: { gamma: { mean: 14 days, cv: 0.5 } } } }
carriers: { dollies: { count: 8, from: weld frame, to: fit casting } }
feeders:
  rails:
    stock: 180
    at start: 10
    route: [{ step: bend rails, at: rail bench, work: { gamma: { mean: 125 min, cv: 0.4 } } }]
route:
  - { step: weld frame, at: weld bench, crew: { welders: 1 }, work: { gamma: { mean: 100 min, cv: 0.3 } } }
  - { step: fit casting, at: fit bay, crew: { fitters: 1 }, work: { gamma: { mean: 150 min, cv: 0.3 } }, parts: { castings: 1, rails: 1 } }
  - { step: trim, at: trim bay, work: { gamma: { mean: 45 min, cv: 0.3 } } }
`,
  {
    helps: [[supply('castings'), 'a lot more on order', 'level: 20', 'level: 26']],
    decoys: [
      [carrier('dollies'), 'a carrier', 'count: 8', 'count: 9'],
      [room('fit bay'), 'a space', 'places: 2, buffer: 5', 'places: 2, buffer: 6'],
      [room('weld bench'), 'a space', 'weld bench: { buffer: 2 }', 'weld bench: { buffer: 3 }'],
      [station('weld bench'), 'a place', 'weld bench: { buffer: 2 }', 'weld bench: { buffer: 2, places: 2 }'],
      [
        station('trim bay'),
        'a place',
        'trim bay: { buffer: unlimited }',
        'trim bay: { buffer: unlimited, places: 2 }',
      ],
      [station('rail bench'), 'a place', 'rail bench: {}', 'rail bench: { places: 2 }'],
      [crew('welders'), 'a person', 'welders: 1, fitters', 'welders: 2, fitters'],
      [crew('fitters'), 'a person', 'fitters: 2 }', 'fitters: 3 }'],
      [feeder('rails'), 'one in stock', 'stock: 180', 'stock: 181'],
    ],
  },
);

/**
 * An axle takes 75 min at the axle bench: 6.4 a day; 12 are asked. Axle paint does 10, frame bench 10.4, join
 * bay 13.7, check bay 8.9, seat bench 9.4.
 * - A second place at the axle bench: 12.8, so that the check bay is next, with 8.9 (+ 39 %).
 * - Decoys: one more in the stock of axles, which is empty anyway; seats, the other feeder, are sewn ahead
 *   and their bench and crew are as busy as the axle bench; the join bay is short of axles and the spaces
 *   ahead of it are full, so the frame bench is blocked a third of its time.
 */
export const axles: Build = build(
  'feeder',
  feeder('axles'),
  `
scenario: axles come too slowly
programme: { start: 2027-03-01, until: 2027-07-05, rate: { per day: 12 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  works:
    calendar: days
    crews: { upholsterers: 1 }
    stations: { frame bench: {}, join bay: { places: 2, buffer: 8 }, check bay: { buffer: unlimited }, axle bench: {}, axle paint: { buffer: 4 }, seat bench: {} }
feeders:
  axles:
    stock: 6
    at start: 2
    route:
      - { step: weld axle, at: axle bench, work: { gamma: { mean: 75 min, cv: 0.4 } } }
      - { step: paint axle, at: axle paint, work: { gamma: { mean: 48 min, cv: 0.3 } } }
  seats:
    stock: 280
    at start: 20
    route: [{ step: sew seats, at: seat bench, crew: { upholsterers: 1 }, work: { gamma: { mean: 51 min, cv: 0.3 } } }]
route:
  - { step: frame, at: frame bench, work: { gamma: { mean: 46 min, cv: 0.3 } } }
  - { step: join, at: join bay, parts: { axles: 1, seats: 1 }, work: { gamma: { mean: 70 min, cv: 0.3 } } }
  - { step: check, at: check bay, work: { gamma: { mean: 54 min, cv: 0.3 } } }
`,
  {
    accepted: [station('axle bench')],
    helps: [[station('axle bench'), 'a place', 'axle bench: {}', 'axle bench: { places: 2 }']],
    lesser: [HOUR],
    decoys: [
      [feeder('axles'), 'one in stock', 'stock: 6\n', 'stock: 7\n'],
      [feeder('seats'), 'one in stock', 'stock: 280', 'stock: 281'],
      [station('axle paint'), 'a place', 'axle paint: { buffer: 4 }', 'axle paint: { buffer: 4, places: 2 }'],
      [room('axle paint'), 'a space', 'axle paint: { buffer: 4 }', 'axle paint: { buffer: 5 }'],
      [station('seat bench'), 'a place', 'seat bench: {}', 'seat bench: { places: 2 }'],
      [
        crew('upholsterers'),
        'a person',
        'upholsterers: 1 }\n    stations',
        'upholsterers: 2 }\n    stations',
      ],
      [station('frame bench'), 'a place', 'frame bench: {}', 'frame bench: { places: 2 }'],
      [station('join bay'), 'a place', 'places: 2, buffer: 8', 'places: 3, buffer: 8'],
      [room('join bay'), 'a space', 'places: 2, buffer: 8', 'places: 2, buffer: 9'],
      [
        station('check bay'),
        'a place',
        'check bay: { buffer: unlimited }',
        'check bay: { buffer: unlimited, places: 2 }',
      ],
    ],
  },
);
