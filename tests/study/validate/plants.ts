/** Invented: two sites in two zones, a lane, a feeder with a stock, two shifts, absence, inspections, rework. */
export const twoPlants = `
scenario: Two plants
programme: { start: 2027-03-01, until: 2027-06-20, rate: { per day: 5 }, quantity: 350, options: { trim: { plain: 70 %, full: 30 % } } }
calendars:
  days: { hours: ["06:30-15:00"], breaks: ["09:00-09:15", "11:30-12:00"], holidays: [2027-03-29, 2027-05-17] }
  two shifts: { hours: ["06:00-14:00", "14:00-22:00"] }
defects: { run: {}, dirt: {}, leak: {} }
sites:
  hull works:
    zone: Europe/Helsinki
    calendar: two shifts
    crews: { welders: { headcount: [4, 3] }, painters: { headcount: [5, 4], absence: 4 % }, paint inspectors: 1 }
    stations:
      weld bay: { places: 4, buffer: 4 }
      booth: { places: 2, buffer: 6, rework buffer: unlimited, failures: { every: { exponential: { mean: 60 h } }, repair: { low: 20 min, likely: 1 h, high: 3 h }, hours: two shifts } }
      light bay: { places: 1, buffer: 6, rework buffer: 4 }
  fit-out works:
    zone: Europe/Oslo
    calendar: days
    crews: { fitters: 11, bench builders: 3, inspectors: 3 }
    stations:
      bench: { places: 3, buffer: unlimited }
      fit bay: { places: 5, buffer: 6 }
      pipe bay: { places: 4, buffer: 6, rework buffer: unlimited }
      gate: { places: 3, buffer: unlimited, rework buffer: unlimited }
lanes:
  ferry: { from: hull works, to: fit-out works, trucks: 2, capacity: 3, load: 30 min, drive: { low: 3 h, likely: 4 h, high: 6 h }, unload: 20 min, return: 4 h, leaves: { when full or after: 6 h }, bank: 8, arrival bank: 8 }
feeders:
  consoles:
    stock: 5
    at start: 3
    route:
      - { step: build console, at: bench, crew: { bench builders: 1 }, work: { mean: 170 min, cv: 0.25 }, creates: { leak: 10 % } }
      - { step: try console, at: bench, crew: { bench builders: 1 }, work: 30 min, finds: { leak: { chance: 60 %, repair: 40 min } } }
route:
  - { step: weld, at: weld bay, crew: { welders: 1 }, work: { mean: 300 min, cv: 0.2 } }
  - { step: coat, at: booth, crew: { painters: 2 }, work: { mean: 130 min, cv: 0.2 }, work factor: { trim: { full: 1.2 } }, creates: { run: 12 %, dirt: 25 % } }
  - { step: inspect finish, at: light bay, crew: { paint inspectors: 1 }, work: { mean: 50 min, cv: 0.3 }, finds: { run: { chance: 85 %, back to: coat, limit: 3 }, dirt: { chance: 75 %, repair: 25 min } } }
  - { lane: ferry }
  - { step: fit console, at: fit bay, crew: { fitters: 2 }, parts: { consoles: 1 }, work: { mean: 200 min, cv: 0.25 } }
  - { step: fit pipes, at: pipe bay, crew: { fitters: 1 }, work: { mean: 240 min, cv: 0.25 }, creates: { leak: 15 % } }
  - { step: last look, at: gate, crew: { inspectors: 1 }, work: { mean: 75 min, cv: 0.3 }, finds: { run: { chance: 70 %, repair: 1 h }, dirt: { chance: 80 %, repair: 20 min }, leak: { chance: 90 %, back to: fit pipes, limit: 3 } } }
`;

/**
 * Invented: own parts, a team, an oven in lots, steps side by side, a pulse line, a carrier, learning, a step
 * by option, a sample, and a place more from a date on.
 */
export const chassisWorks = `
scenario: Chassis works
programme: { start: 2027-03-01, until: 2027-06-06, rate: { per day: 4 }, quantity: 260, options: { cab: { long: 35 %, short: 65 % } } }
calendars: { days: { hours: ["06:00-14:30"], breaks: ["10:00-10:30"], overtime: [{ on: Sat, hours: ["06:00-12:00"], when: { units behind: 3, lead time: 7 days } }] } }
defects: { scratch: {} }
sites:
  works:
    zone: Europe/Stockholm
    calendar: days
    crews: { painters: 4, fitters: 10, electricians: 6, technicians: 6, testers: 2 }
    stations:
      strip bay: { places: 1, buffer: 4 }
      booth: { places: 2, buffer: 4 }
      oven: { places: 4, buffer: unlimited, unattended: true, lot: { least: 1, most: 3, longest wait: 2 h } }
      door bench: { places: 2, buffer: unlimited }
      floor bay: { buffer: 4 }
      axle bay: {}
      brake bay: {}
      dress bay: { places: 2, buffer: 3 }
      door bay: { places: 1, buffer: 3 }
      seat bay: { places: 2, buffer: 3 }
      test road: { places: 2, buffer: unlimited }
teams: { seat team: { crew: technicians, people: 2, from: fit seats, to: hand over } }
carriers: { dollies: { count: 30, from: strip, to: fit seats, return: 2 h } }
pulse lines: { chassis line: { stations: [floor bay, axle bay, brake bay], takt: 100 min } }
feeders:
  doors:
    own: true
    route: [{ step: trim doors, at: door bench, crew: { fitters: 1 }, work: { mean: 90 min, cv: 0.3 }, work factor: { cab: { long: 1.5 } }, creates: { scratch: 15 % } }]
costs:
  currency: EUR
  changes:
    second door place: { price: 1000, changes: [{ sites.works.stations.door bay.places: 2 }], made: 2027-04-12 }
route:
  - { step: strip, at: strip bay, crew: { fitters: 1 }, work: { mean: 45 min, cv: 0.3 }, takes off: doors }
  - { step: coat, at: booth, crew: { painters: 2 }, work: { mean: 110 min, cv: 0.2 } }
  - { step: bake, at: oven, process: 90 min }
  - { step: lay floor, at: floor bay, crew: { fitters: 2 }, work: { low: 70 min, likely: 82 min, high: 110 min } }
  - { step: fit axles, at: axle bay, crew: { fitters: 2 }, work: { low: 70 min, likely: 80 min, high: 110 min } }
  - { step: fit brakes, at: brake bay, crew: { fitters: 1 }, work: { low: 60 min, likely: 78 min, high: 110 min } }
  - at: dress bay
    side by side:
      - { step: route cables, crew: { electricians: 2 }, work: { mean: 120 min, cv: 0.25 }, learning: { rate: 92 %, floor: 60 %, built before: 3 } }
      - { step: fit boards, crew: { fitters: 1 }, work: { mean: 90 min, cv: 0.3 } }
  - { step: refit doors, at: door bay, crew: { fitters: 1 }, parts: { doors: own }, work: { mean: 70 min, cv: 0.3 }, finds: { scratch: { chance: 70 %, repair: 30 min } } }
  - { step: fit rack, at: door bay, when: { cab: long }, crew: { fitters: 2 }, work: { mean: 40 min, cv: 0.3 } }
  - { step: fit seats, at: seat bay, work: { mean: 100 min, cv: 0.25 } }
  - { step: hand over, at: seat bay, work: { mean: 60 min, cv: 0.25 } }
  - { step: road test, at: test road, sample: 1 in 3, crew: { testers: 1 }, work: { mean: 80 min, cv: 0.3 }, fails: { chance: 12 %, repair: 1 h } }
  - { step: final look, at: test road, crew: { testers: 1 }, work: { mean: 50 min, cv: 0.3 }, finds: { scratch: { chance: 90 %, repair: 20 min } } }
`;

/** A scenario with one thing put in the place of another. */
export function changedIn(yaml: string, from: string, to: string): string {
  if (yaml.split(from).length !== 2) throw new Error(`expected ${JSON.stringify(from)} once`);
  return yaml.replace(from, to);
}
