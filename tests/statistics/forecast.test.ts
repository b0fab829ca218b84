import { beforeAll, describe, expect, it } from 'vitest';
import { built } from './built.js';

const { buildsAhead, compile, eventsOfRun, floorLog, prepare, readScenario, runSpan } = built;

/**
 * Invented: two plants with a lane between, a feeder, rework by two loops, a test that fails, repairs of
 * hours. The logs are those of the model itself, so a forecast from them must be calibrated: what happened
 * then is one more build of the same (Dawid 1984, J. R. Statist. Soc. A 147, 278-292; from memory).
 */
const YAML = `
scenario: Two plants
programme: { start: 2027-03-01, rate: { per day: 4 }, quantity: 60, due after: 5 days, options: { cab: { long: 40 %, short: 60 % } } }
calendars: { day: { hours: ['06:00-14:30'], on: [Mon, Tue, Wed, Thu, Fri], breaks: ['09:30-10:00'] } }
defects: { dirt: {}, gap: {}, rattle: {} }
sites:
  body shop:
    zone: UTC
    calendar: day
    crews: { welders: 3, painters: 4, inspectors: 1 }
    stations:
      weld bay: { places: 2, buffer: 8 }
      booth: { places: 1, buffer: 8, rework buffer: unlimited }
      oven: { places: 3, buffer: 2, unattended: true }
      tunnel: { places: 1, buffer: unlimited }
      axle bench: { places: 2, buffer: 2 }
  final shop:
    zone: UTC
    calendar: day
    crews: { fitters: 5, inspectors: 1 }
    stations:
      fit bay: { places: 2, buffer: 8, rework buffer: unlimited }
      wire bay: { places: 2, buffer: 8 }
      track: { places: 1, buffer: unlimited }
      gate: { places: 2, buffer: unlimited }
lanes:
  road: { from: body shop, to: final shop, trucks: 2, capacity: 2, drive: { low: 2 h, high: 4 h }, return: 3 h, leaves: { when full or after: 4 h } }
feeders:
  axles: { stock: 4, at start: 2, route: [{ step: build axle, at: axle bench, crew: { welders: 1 }, work: { mean: 70 min, cv: 0.3 }, creates: { rattle: 10 % } }] }
route:
  - { step: weld, at: weld bay, crew: { welders: 1 }, work: { mean: 170 min, cv: 0.25 }, creates: { gap: 20 % } }
  - { step: coat, at: booth, crew: { painters: 2 }, work: { mean: 90 min, cv: 0.2 }, creates: { dirt: 25 % } }
  - { step: bake, at: oven, process: 3 h }
  - step: inspect
    at: tunnel
    crew: { inspectors: 1 }
    work: { mean: 40 min, cv: 0.3 }
    finds:
      dirt: { chance: 70 %, back to: coat, limit: 3 }
      gap: { chance: 50 %, repair: 60 min }
  - { lane: road }
  - { step: fit, at: fit bay, crew: { fitters: 1 }, parts: { axles: 1 }, work: { mean: 180 min, cv: 0.3 } }
  - { step: wire, at: wire bay, crew: { fitters: 1 }, work: { mean: 130 min, cv: 0.3 } }
  - { step: drive, at: track, crew: { inspectors: 1 }, work: { mean: 45 min, cv: 0.3 }, finds: { rattle: { chance: 80 %, back to: fit } }, fails: { chance: 8 %, back to: wire } }
  - { step: last look, at: gate, crew: { inspectors: 1 }, work: { mean: 30 min, cv: 0.2 }, finds: { dirt: { chance: 90 %, repair: 3 h }, gap: { chance: 90 %, repair: 3 h } } }
`;
const LOGS = 400,
  BUILDS = 60,
  DAY = 1440;

interface Told {
  /** Of the builds, those in which the unit is out by the time at which it really was. */
  readonly rank: number;
  /** Share of the builds in which it is late; whether it was. */
  readonly late: number;
  readonly wasLate: boolean;
  readonly stood: boolean;
}

/** One unit of each log, so that they do not hang on one another; cut at midnight and in the middle of a shift. */
async function tellAll(): Promise<Told[]> {
  const { scenario } = readScenario(YAML, 'plants.yaml', () => '');
  if (scenario === undefined) throw new Error('expected a scenario without problems, got some');
  const model = compile(scenario),
    plan = prepare(model),
    { origin } = runSpan(scenario),
    told: Told[] = [];
  for (let i = 1; i <= LOGS; i++) {
    const events = [...eventsOfRun(floorLog(plan, 'truth', i).happenings, model, origin)],
      out = new Map(
        events.flatMap(({ kind, object, at }) => (kind === 'ship' ? [[object, at] as const] : [])),
      ),
      minutes = origin + (8 + (i % 5)) * DAY + (i % 2) * 600;
    const { units } = await buildsAhead({
      scenario,
      log: {
        file: 'made.csv',
        read: (take) => {
          take(events);
          return Promise.resolve(null);
        },
      },
      at: { minutes, isLocal: false },
      seed: `ahead ${i}`,
      replications: BUILDS,
    });
    // Three that stand on the floor to one that is to come.
    const which = units.filter(({ at }) => (at !== null) === i % 4 < 3),
      unit = which.at((7 * i) % which.length),
      was = unit === undefined ? undefined : out.get(unit.unit);
    if (unit === undefined || was === undefined) throw new Error('expected a unit that is shipped, got none');
    told.push({
      rank: unit.shippedAt.filter((at) => at < was).length / BUILDS,
      late: unit.shippedAt.filter((at) => at > unit.dueAt).length / BUILDS,
      wasLate: was > unit.dueAt,
      stood: unit.at !== null,
    });
  }
  return told;
}

/** Four standard errors of a share of n. */
const room = (share: number, n: number): number => 4 * Math.sqrt((share * (1 - share)) / n);

describe('the forecast of units whose fate is known', () => {
  let told: Told[] = [];
  beforeAll(async () => {
    told = await tellAll();
  }, 180_000);

  it.each([
    ['that stood on the floor', (stood: boolean) => stood],
    ['that were to come', (stood: boolean) => !stood],
    ['all', () => true],
  ])('half are out by the time told as half, four in five by that: units %s', (_, isOf) => {
    const those = told.filter(({ stood }) => isOf(stood));
    expect(those.length).toBeGreaterThan(90);
    for (const share of [0.2, 0.5, 0.8]) {
      const out = those.filter(({ rank }) => rank < share).length / those.length;
      expect(Math.abs(out - share), `${share}: ${out}`).toBeLessThan(room(share, those.length) + 1 / BUILDS);
    }
    // Uniform on 0..1: mean 1/2, sd 0.289.
    const mean = those.reduce((sum, { rank }) => sum + rank, 0) / those.length;
    expect(Math.abs(mean - 0.5)).toBeLessThan((4 * 0.289) / Math.sqrt(those.length) + 0.5 / BUILDS);
  });

  it.each([
    [0, 1 / 3],
    [1 / 3, 2 / 3],
    [2 / 3, 1.001],
  ])('as many are late as it tells, where it tells %f to %f', (from, to) => {
    const those = told.filter(({ late }) => late >= from && late < to),
      said = those.reduce((sum, { late }) => sum + late, 0) / those.length,
      were = those.filter(({ wasLate }) => wasLate).length / those.length;
    expect(those.length).toBeGreaterThan(20);
    expect(Math.abs(said - were), `${said}, ${were}`).toBeLessThan(
      room(Math.max(0.05, Math.min(0.95, said)), those.length),
    );
  });
});
