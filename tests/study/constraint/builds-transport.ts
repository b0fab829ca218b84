import { type Build, build, carrier, crew, HOUR, lane, room, station } from './build.js';

/**
 * A cart is away for the drive of 5 h and the way back of 44 h, with the hours that trucks are loaded and
 * units unloaded in about 2.2 working days: four carts 1.8 a day; 8 are asked. Cut bench 4.8, finish bay 3.2,
 * seats 3.4, six trucks over 5.
 * - A fifth cart: a quarter more.
 * - Decoys: five skids are held nearly all the time, by units that wait for a cart, so that the cut bench is
 *   short of carriers as well; more spaces ahead of the frame bench, where they wait; seats are sewn ahead.
 */
export const carts: Build = build(
  'carrier',
  carrier('carts'),
  `
scenario: four carts on a long way
programme: { start: 2027-03-01, until: 2027-07-05, rate: { per day: 8 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  works:
    calendar: days
    crews: { upholsterers: 1 }
    stations: { cut bench: {}, frame bench: { buffer: 6 }, seat bench: {} }
  plant:
    calendar: days
    stations: { unload bay: { buffer: unlimited }, finish bay: { buffer: unlimited } }
lanes: { road: { from: works, to: plant, trucks: 6, capacity: 1, load: 20 min, drive: { gamma: { mean: 5 h, cv: 0.2 } }, unload: 20 min, return: 5 h } }
carriers:
  carts: { count: 4, from: set up frame, to: unload, return: { gamma: { mean: 44 h, cv: 0.2 } } }
  skids: { count: 5, from: cut, to: set up frame }
feeders:
  seats:
    stock: 180
    at start: 20
    route: [{ step: sew seats, at: seat bench, crew: { upholsterers: 1 }, work: { gamma: { mean: 140 min, cv: 0.3 } } }]
route:
  - { step: cut, at: cut bench, parts: { seats: 1 }, work: { gamma: { mean: 100 min, cv: 0.3 } } }
  - { step: set up frame, at: frame bench, work: { gamma: { mean: 4 min, cv: 0.3 } } }
  - { lane: road }
  - { step: unload, at: unload bay, work: { gamma: { mean: 10 min, cv: 0.3 } } }
  - { step: finish, at: finish bay, work: { gamma: { mean: 150 min, cv: 0.3 } } }
`,
  {
    helps: [[carrier('carts'), 'a carrier', 'carts: { count: 4', 'carts: { count: 5']],
    lesser: [HOUR],
    decoys: [
      [carrier('skids'), 'a carrier', 'skids: { count: 5', 'skids: { count: 6'],
      [room('frame bench'), 'a space', 'frame bench: { buffer: 6 }', 'frame bench: { buffer: 7 }'],
      [station('cut bench'), 'a place', 'cut bench: {}', 'cut bench: { places: 2 }'],
      [
        station('frame bench'),
        'a place',
        'frame bench: { buffer: 6 }',
        'frame bench: { buffer: 6, places: 2 }',
      ],
      [lane('road'), 'a truck', 'trucks: 6', 'trucks: 7'],
      [
        station('unload bay'),
        'a place',
        'unload bay: { buffer: unlimited }',
        'unload bay: { buffer: unlimited, places: 2 }',
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
    ],
  },
);

/**
 * A trip takes half an hour to load, 5 h, half an hour to unload, 6 h back: over 8 h, so a truck is loaded
 * once a day. Two trucks with two units: 4 a day; 10 are asked. Weld bay 7.4, paint booth 6.9, finish bay
 * 5.9, seats 6.2.
 * - A third truck: 6, so that the finish bay is next, with 5.85 (+ 46 %).
 * - Decoys: the bank of 6 and the spaces ahead of the paint booth are mostly full; the dollies are held by
 *   units that are blocked; weld bay and paint booth are blocked; seats are sewn ahead. An hour more is no
 *   trip more.
 */
export const trucks: Build = build(
  'lane',
  lane('road'),
  `
scenario: two trucks, a trip a day each
programme: { start: 2027-03-01, until: 2027-07-05, rate: { per day: 10 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  works:
    calendar: days
    crews: { upholsterers: 1 }
    stations: { weld bay: {}, paint booth: { buffer: 4 }, seat bench: {} }
  plant:
    calendar: days
    stations: { finish bay: { buffer: unlimited } }
lanes: { road: { from: works, to: plant, trucks: 2, capacity: 2, load: 30 min, drive: { gamma: { mean: 5 h, cv: 0.2 } }, unload: 30 min, return: 6 h, bank: 6 } }
carriers: { dollies: { count: 6, from: weld, to: paint, return: { gamma: { mean: 30 min, cv: 0.3 } } } }
feeders:
  seats:
    stock: 220
    at start: 20
    route: [{ step: sew seats, at: seat bench, crew: { upholsterers: 1 }, work: { gamma: { mean: 78 min, cv: 0.3 } } }]
route:
  - { step: weld, at: weld bay, parts: { seats: 1 }, work: { gamma: { mean: 65 min, cv: 0.3 } } }
  - { step: paint, at: paint booth, work: { gamma: { mean: 70 min, cv: 0.3 } } }
  - { lane: road }
  - { step: finish, at: finish bay, work: { gamma: { mean: 82 min, cv: 0.3 } } }
`,
  {
    helps: [[lane('road'), 'a truck', 'trucks: 2', 'trucks: 3']],
    decoys: [
      HOUR,
      [room('road'), 'a space', 'bank: 6', 'bank: 7'],
      [carrier('dollies'), 'a carrier', 'count: 6', 'count: 7'],
      [station('weld bay'), 'a place', 'weld bay: {}', 'weld bay: { places: 2 }'],
      [
        station('paint booth'),
        'a place',
        'paint booth: { buffer: 4 }',
        'paint booth: { buffer: 4, places: 2 }',
      ],
      [room('paint booth'), 'a space', 'paint booth: { buffer: 4 }', 'paint booth: { buffer: 5 }'],
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
    ],
  },
);

/**
 * Two departures a day with two units, and one dock, so that one truck goes at a time: 4 a day; 10 are asked.
 * Of five trucks most stand. Weld bay 7.4, paint booth 6.9, finish bay 5.9, seats 6.2.
 * - A third departure: 6, so that the finish bay is next, with 5.85 (+ 46 %).
 * - Decoys: a truck of the same lane; the bank of 8, always full; weld bay and paint booth, blocked; seats
 *   sewn ahead.
 */
export const departures: Build = build(
  'timetable',
  lane('ferry'),
  `
scenario: two departures a day, trucks that stand
programme: { start: 2027-03-01, until: 2027-07-05, rate: { per day: 10 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  works:
    calendar: days
    crews: { upholsterers: 1 }
    stations: { weld bay: {}, paint booth: { buffer: 4 }, seat bench: {} }
  plant:
    calendar: days
    stations: { finish bay: { buffer: unlimited } }
lanes: { ferry: { from: works, to: plant, trucks: 5, capacity: 2, load: 30 min, drive: { gamma: { mean: 2 h, cv: 0.2 } }, unload: 30 min, return: 2 h, bank: 8, docks: { from: 1 }, leaves: { at: ["08:00", "13:00"] } } }
feeders:
  seats:
    stock: 220
    at start: 20
    route: [{ step: sew seats, at: seat bench, crew: { upholsterers: 1 }, work: { gamma: { mean: 78 min, cv: 0.3 } } }]
route:
  - { step: weld, at: weld bay, parts: { seats: 1 }, work: { gamma: { mean: 65 min, cv: 0.3 } } }
  - { step: paint, at: paint booth, work: { gamma: { mean: 70 min, cv: 0.3 } } }
  - { lane: ferry }
  - { step: finish, at: finish bay, work: { gamma: { mean: 82 min, cv: 0.3 } } }
`,
  {
    helps: [[lane('ferry'), 'a departure', '"08:00", "13:00"', '"08:00", "10:30", "13:00"']],
    decoys: [
      HOUR,
      [lane('ferry'), 'a truck', 'trucks: 5', 'trucks: 6'],
      [room('ferry'), 'a space', 'bank: 8', 'bank: 9'],
      [station('weld bay'), 'a place', 'weld bay: {}', 'weld bay: { places: 2 }'],
      [
        station('paint booth'),
        'a place',
        'paint booth: { buffer: 4 }',
        'paint booth: { buffer: 4, places: 2 }',
      ],
      [room('paint booth'), 'a space', 'paint booth: { buffer: 4 }', 'paint booth: { buffer: 5 }'],
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
    ],
  },
);

/**
 * Five departures a day, of trucks for four, take what stands in the bank, and that is one: 5 a day; 14 are
 * asked. In the 105 min from one to the next weld bay and paint booth can make 2.8 units, 13 a day; finish
 * bay 8, seats 9.1.
 * - A second space: 10, so that the finish bay is next, with 8 (+ 60 %).
 * - A sixth departure helps too: 6 (+ 20 %).
 * - Decoys: the trucks, which leave three quarters empty; weld bay and paint booth, blocked; the full buffer
 *   between them; seats sewn ahead.
 */
export const bank: Build = build(
  'room',
  room('ferry'),
  `
scenario: a bank of one that the timetable fills
programme: { start: 2027-03-01, until: 2027-07-05, rate: { per day: 14 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  works:
    calendar: days
    crews: { upholsterers: 1 }
    stations: { weld bay: {}, paint booth: { buffer: 4 }, seat bench: {} }
  plant:
    calendar: days
    stations: { finish bay: { buffer: unlimited } }
lanes: { ferry: { from: works, to: plant, trucks: 5, capacity: 4, load: 10 min, drive: { gamma: { mean: 1 h, cv: 0.2 } }, unload: 10 min, return: 1 h, bank: 1, leaves: { at: ["07:30", "09:15", "11:00", "12:45", "14:30"] } } }
feeders:
  seats:
    stock: 380
    at start: 20
    route: [{ step: sew seats, at: seat bench, crew: { upholsterers: 1 }, work: { gamma: { mean: 53 min, cv: 0.3 } } }]
route:
  - { step: weld, at: weld bay, parts: { seats: 1 }, work: { gamma: { mean: 36 min, cv: 0.3 } } }
  - { step: paint, at: paint booth, work: { gamma: { mean: 38 min, cv: 0.2 } } }
  - { lane: ferry }
  - { step: finish, at: finish bay, work: { gamma: { mean: 60 min, cv: 0.3 } } }
`,
  {
    helps: [[room('ferry'), 'a space', 'bank: 1', 'bank: 2']],
    lesser: [[lane('ferry'), 'a departure', '"07:30", "09:15"', '"07:30", "08:20", "09:15"']],
    decoys: [
      HOUR,
      [lane('ferry'), 'a truck', 'trucks: 5', 'trucks: 6'],
      [station('weld bay'), 'a place', 'weld bay: {}', 'weld bay: { places: 2 }'],
      [
        station('paint booth'),
        'a place',
        'paint booth: { buffer: 4 }',
        'paint booth: { buffer: 4, places: 2 }',
      ],
      [room('paint booth'), 'a space', 'paint booth: { buffer: 4 }', 'paint booth: { buffer: 5 }'],
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
    ],
  },
);
