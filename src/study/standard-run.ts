import { parse } from 'yaml';
import { simulate } from '../flow/engine.js';
import { prepare } from '../flow/plan.js';
import { observe } from '../measure/observe.js';
import { compile } from '../scenario/compile.js';
import { scenarioWith } from '../scenario/data.js';

/**
 * A small build with every kind of chance and most rules of the engine, for one purpose: a machine that comes
 * to the same bits of it comes to the same bits of every study. Every number is invented. Its zones change
 * their clocks within the run, so that other rules of time show too.
 */
const SCENARIO = `
scenario: Standard run
programme:
  start: 2027-03-11
  zone: Europe/Oslo
  quantity: 30
  rate: [{ from: 2027-03-11, per day: 2 }, { from: 2027-03-24, per day: 3 }]
  due after: 9 days
  replace scrapped: true
  options: { colour: { red: 60 %, white: 40 % }, long: 30 % }
calendars:
  days: { hours: ["06:00-14:30"], on: Mon-Fri, breaks: ["09:30-09:45"],
        overtime: [{ hours: ["14:30-16:30"], when: { units behind: 2 }, decided: daily }] }
  two: { hours: ["06:00-14:00", "14:00-22:00"], on: Mon-Sat }
costs: { currency: EUR, people: { default: 40 } }
sites:
  works:
    zone: Europe/Helsinki
    calendar: two
    crews: { hands: { headcount: [9, 8], absence: 6 %, hand over: wait } }
    equipment: { hoist: { count: 1, failures: { every: { exponential: { mean: 30 h } }, repair: 20 min } } }
    stations:
      jig: { places: 2, buffer: 2 }
      stall: { places: 2, buffer: 2, people: 3 }
      booth: { buffer: 3, rework buffer: unlimited, changeover: { on: colour, work: 12 min,
            batch: { most: 3, longest wait: 2 days } }, failures: { every: { weibull: { mean: 20 h,
            cv: 0.8 } }, repair: { mean: 50 min, cv: 0.6 } } }
      oven: { places: 3, buffer: unlimited, lot: { least: 2, most: 3, longest wait: 2 h } }
      shut: { buffer: 2 }
      bench: { places: 2, buffer: unlimited }
  yard:
    zone: America/New_York
    calendar: days
    crews: { fitters: 8 }
    stations: { bay: { places: 2, buffer: 2 }, pulse 1: { buffer: 2 }, pulse 2: {}, gate: { places: 3,
          buffer: 3, rework buffer: unlimited }, area: { places: 3, buffer: 2 } }
pulse lines: { line: { stations: [pulse 1, pulse 2], takt: 70 min } }
lanes: { road: { from: works, to: yard, trucks: 2, capacity: 2, load: 15 min, drive: { low: 60 min,
      likely: 90 min, high: 200 min }, unload: 15 min, return: 2 h, leaves: { when full or after: 5 h },
      docks: { from: 1, to: 1 }, arrival bank: 4 } }
carriers: { dollies: { count: 14, from: frame, to: receive, return: { exponential: { mean: 3 h } } } }
teams: { pair: { crew: fitters, people: 2, from: receive, to: trim } }
supplies: { glass: { site: yard, at start: 12, reorder: { level: 6, lot: 10, lead time: { low: 1 days,
      high: 3 days } }, late: { chance: 20 %, by: 1 days } } }
feeders:
  axles: { stock: 3, route: [{ step: build axle, at: bench, crew: { hands: 1 },
        work: { erlang: { mean: 45 min, phases: 3 } } }] }
  doors: { own: true, route: [{ step: trim doors, at: bench, crew: { hands: 1 },
        work: { normal: { mean: 40 min, sd: 9 min, low: 15 min, high: 80 min } } }] }
defects: { flaw: {}, scratch: {} }
route:
  - { step: frame, at: jig, crew: { hands: 2 }, equipment: { hoist: { first: 10 min } },
        work: { low: 55 min, likely: 70 min, high: 120 min }, takes off: doors, parts: { axles: 1 } }
  - { at: stall, side by side: [{ step: pipes, crew: { hands: 1 }, work: { gamma: { mean: 50 min,
        cv: 0.4 } } }, { step: cables, crew: { hands: 2 }, work: { lognormal: { mean: 45 min, cv: 0.5 } },
        learning: { rate: 88 %, floor: 60 % } }] }
  - { step: coat, at: booth, crew: { hands: 2 }, passes: { count: 2, work: { triangular: { low: 20 min,
        likely: 26 min, high: 40 min } }, settle: { low: 6 min, high: 12 min } },
        work factor: { colour: { white: 1.2 } }, creates: { flaw: { usual: 15 %,
        colour: { white: 25 % } } } }
  - { step: bake, at: oven, process: 55 min, finds: { flaw: { chance: 80 %, back to: coat, limit: 3 } } }
  - { step: shut doors, at: shut, when: { long: yes }, crew: { hands: 1 }, work: 15 min }
  - { step: doors on, at: shut, crew: { hands: 1 }, work: 10 min, parts: { doors: own } }
  - { lane: road }
  - { step: receive, at: bay, crew: { fitters: 1 }, work: { discrete: { 10 min: 70 %, 30 min: 30 % } },
        creates: { scratch: 20 % } }
  - { step: trim, at: bay, work: { mean: 60 min, cv: 0.3 }, parts: { glass: 1 } }
  - { step: wire, at: pulse 1, work: { mean: 50 min, sd: 12 min }, learning: { rate: 92 %,
        curve: cumulative mean } }
  - { step: fill, at: pulse 2, crew: { fitters: 2 }, work: { mixture: [{ share: 80 %, time: 30 min },
        { share: 20 %, time: { exponential: { mean: 50 min } } }] } }
  - { step: prove, at: gate, crew: { fitters: 2 }, work: { weibull: { mean: 45 min, cv: 0.4 } },
        sample: { 1 in: 2, by: random }, fails: { chance: 12 %, back to: trim, limit: 2, at limit: scrap },
        finds: { scratch: { chance: 70 %, carry: 25 min } } }
  - { step: clear, at: area, hold: { mend: { usual: 20 min } } }
`;

/** What is observed of the standard run, every bit of it. */
export function standardRun(): Uint8Array {
  const { scenario, findings } = scenarioWith({ files: {} }, parse(SCENARIO));
  if (scenario === undefined) throw new Error(`standard run: ${JSON.stringify(findings)}`);
  return bitsOf(observe(simulate(prepare(compile(scenario), 1), 'standard', 1), 1));
}

/** Numbers as the eight bytes that they are in memory, least first; one NaN for all. */
function bitsOf(value: unknown): Uint8Array {
  const words: (number | string)[] = [];
  flatten(value, words);
  const text = new TextEncoder().encode(words.filter((word) => typeof word === 'string').join('\n')),
    numbers = words.filter((word) => typeof word === 'number'),
    bytes = new Uint8Array(8 * numbers.length + text.length),
    view = new DataView(bytes.buffer);
  numbers.forEach((number, i) => {
    view.setFloat64(8 * i, Number.isNaN(number) ? NaN : number, true);
  });
  bytes.set(text, 8 * numbers.length);
  return bytes;
}

/** Numbers and words of a value in the order in which it holds them; keys, lengths and null are words. */
function flatten(value: unknown, into: (number | string)[]): void {
  if (typeof value === 'number') into.push(value);
  else if (ArrayBuffer.isView(value) || Array.isArray(value)) {
    const all = value as unknown as ArrayLike<unknown>;
    into.push(`[${all.length}`);
    for (let i = 0; i < all.length; i++) flatten(all[i], into);
  } else if (typeof value === 'object' && value !== null) {
    for (const [key, each] of Object.entries(value)) {
      into.push(key);
      flatten(each, into);
    }
  } else into.push(String(value));
}
