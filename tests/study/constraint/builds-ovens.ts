import { type Build, build, carrier, crew, HOUR, room, station } from './build.js';

/**
 * The oven is loaded twice a day, at about 7:00 and 11:30 for half an hour and 4 h (the second lot comes out
 * next morning), now and then a third time before 15:00: 8.4 a day in lots of four; 16 are asked. Prime booth
 * 11.7, polish bay 11.4, seats 11.2.
 * - A fifth place that is in the lot too: 10.5 (+ 25 %).
 * - Decoys: a fifth place alone, since a lot has four; the spaces ahead of the oven and the racks, often all
 *   of them full and held by units that wait for it; the baker, who is needed an hour a day; seats sewn
 *   ahead.
 */
export const lot: Build = build(
  'lot',
  station('bake oven'),
  `
scenario: an oven of four, two lots a day
programme: { start: 2027-03-01, until: 2027-07-05, rate: { per day: 16 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  works:
    calendar: days
    crews: { bakers: 1, upholsterers: 1 }
    stations: { prime booth: {}, bake oven: { places: 4, buffer: 8, lot: { least: 2, most: 4, longest wait: 1 h } }, polish bay: { buffer: unlimited }, seat bench: {} }
carriers: { racks: { count: 14, from: prime, to: polish } }
feeders:
  seats:
    stock: 270
    at start: 20
    route: [{ step: sew seats, at: seat bench, crew: { upholsterers: 1 }, work: { gamma: { mean: 43 min, cv: 0.3 } } }]
route:
  - { step: prime, at: prime booth, parts: { seats: 1 }, work: { gamma: { mean: 41 min, cv: 0.3 } } }
  - { step: bake, at: bake oven, crew: { bakers: 1 }, work: { gamma: { mean: 30 min, cv: 0.3 } }, process: { gamma: { mean: 4 h, cv: 0.2 } }, attended end: true }
  - { step: polish, at: polish bay, work: { gamma: { mean: 42 min, cv: 0.3 } } }
`,
  {
    helps: [
      [
        station('bake oven'),
        'a place, in the lot too',
        'places: 4, buffer: 8, lot: { least: 2, most: 4',
        'places: 5, buffer: 8, lot: { least: 2, most: 5',
      ],
    ],
    lesser: [HOUR],
    decoys: [
      [station('bake oven'), 'a place, not in the lot', 'places: 4, buffer: 8', 'places: 5, buffer: 8'],
      [room('bake oven'), 'a space', 'places: 4, buffer: 8', 'places: 4, buffer: 9'],
      [carrier('racks'), 'a carrier', 'count: 14', 'count: 15'],
      [station('prime booth'), 'a place', 'prime booth: {}', 'prime booth: { places: 2 }'],
      [
        station('polish bay'),
        'a place',
        'polish bay: { buffer: unlimited }',
        'polish bay: { buffer: unlimited, places: 2 }',
      ],
      [crew('bakers'), 'a person', 'bakers: 1, uph', 'bakers: 2, uph'],
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
 * Day and night. The oven begins as soon as it is empty, with what stands ahead of it: a unit in its only
 * space and one that is done on the paint line: 2 per 400 min, 7.2 a day; 20 are asked. It could take 8 (28.8
 * a day), the paint line makes one an hour (24), polish bay and seats 12.
 * - A second space: 3 per 400 min, 10.8 (+ 50 %). In a pulse line no place can be added in which a unit would
 *   wait.
 * - Decoys: a ninth place in the oven; the spaces ahead of the paint line, full; seats sewn ahead.
 */
export const spaces: Build = build(
  'room',
  room('cure oven'),
  `
scenario: an oven that gathers what stands ahead of it
programme: { start: 2027-03-01, until: 2027-05-24, rate: { per day: 20 } }
sites:
  works:
    crews: { upholsterers: 1 }
    stations: { spray booth: { buffer: 2 }, flash booth: {}, cure oven: { places: 8, buffer: 1, lot: { least: 1, most: 8 } }, polish bay: { buffer: unlimited }, seat bench: {} }
pulse lines: { paint line: { stations: [spray booth, flash booth], takt: 60 min } }
feeders:
  seats:
    stock: 400
    at start: 20
    route: [{ step: sew seats, at: seat bench, crew: { upholsterers: 1 }, work: { gamma: { mean: 120 min, cv: 0.3 } } }]
route:
  - { step: spray, at: spray booth, parts: { seats: 1 }, work: { gamma: { mean: 40 min, cv: 0.2 } } }
  - { step: flash, at: flash booth, work: { gamma: { mean: 40 min, cv: 0.2 } } }
  - { step: cure, at: cure oven, process: { gamma: { mean: 400 min, cv: 0.2 } } }
  - { step: polish, at: polish bay, work: { gamma: { mean: 120 min, cv: 0.3 } } }
`,
  {
    helps: [[room('cure oven'), 'a space', 'places: 8, buffer: 1', 'places: 8, buffer: 2']],
    decoys: [
      [
        station('cure oven'),
        'a place, in the lot too',
        'places: 8, buffer: 1, lot: { least: 1, most: 8',
        'places: 9, buffer: 1, lot: { least: 1, most: 9',
      ],
      [room('spray booth'), 'a space', 'spray booth: { buffer: 2 }', 'spray booth: { buffer: 3 }'],
      [
        station('polish bay'),
        'a place',
        'polish bay: { buffer: unlimited }',
        'polish bay: { buffer: unlimited, places: 2 }',
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
