import { type DateQuantile } from '../../../src/study/programme/dates.js';
import type { CaughtUp } from '../../../src/study/programme/recovery.js';
import type { UnusualCause, UnusualWeek } from '../../../src/study/programme/unusual-weeks.js';
import { type BottleneckResult } from '../../../src/study/sections/bottlenecks.js';
import { type BufferResult } from '../../../src/study/sections/buffers.js';
import { type InspectionResult } from '../../../src/study/sections/inspections.js';
import type { RecoveryResult } from '../../../src/study/sections/outages.js';
import { PLACE_STATES, type PlaceState, type StationResult } from '../../../src/study/sections/stations.js';
import { type Results } from '../../../src/study/simulate/results.js';
import { type Estimate } from '../../../src/study/statistics/estimate.js';
import { proportion } from '../../../src/study/statistics/proportion.js';
import { sampleChangeovers } from './changeovers.js';
import { sampleConstraint } from './constraint.js';
import { sampleJourney, samplePlan } from './programme.js';

/**
 * Results in the shape of a real study, for looking at reports. Every name and number is invented; none was
 * simulated. The same options always give the same results.
 */
export interface SampleOptions {
  readonly stations?: number;
  readonly weeks?: number;
  readonly replications?: number;
  readonly names?: (index: number) => string;
}

const SITES = ['coachworks north', 'paint and finishing works', 'final plant'];
const WORK = [
  'weld cab floor and tunnel',
  'seal seams underbody',
  'prime booth',
  'bake oven',
  'sand and mask panels',
  'top coat booth',
  'hang doors and flaps left side',
  'fit wiring harness to roof frame',
  'marry chassis to cab',
  'fit pump and pipework',
  'equip lockers with drawers and trays',
  'road test preparation bay',
  'leak test chamber',
  'upholstery and headliner trim',
];

export function sampleResults({
  stations: stationCount = 45,
  weeks = 60,
  replications = 40,
  names = stationName,
}: SampleOptions = {}): Results {
  const random = mixer(12345);
  const around = (mean: number, halfWidth: number): Estimate =>
    replications < 2
      ? { mean, low: null, high: null, level: 0.95, n: replications }
      : { mean, low: mean - halfWidth, high: mean + halfWidth, level: 0.95, n: replications };
  const siteOf = (index: number): string =>
    SITES[Math.min(SITES.length - 1, Math.floor((index * SITES.length) / stationCount))] ?? '';
  const places = Array.from({ length: stationCount }, (_, index) => ({
    name: names(index),
    site: siteOf(index),
  }));

  const stations: StationResult[] = places.map(({ name, site }, index) => {
    const weights = STATES.map((state) => weightOf(state, index) * (0.4 + random()));
    const onShift = weights.slice(0, -1).reduce((sum, weight) => sum + weight, 0);
    const share = Object.fromEntries(
      STATES.map((state, column) => {
        const mean = state === 'off shift' ? 0.05 : (0.95 * (weights[column] ?? 0)) / onShift;
        return [state, around(mean, mean * 0.04)];
      }),
    ) as Record<State, Estimate>;
    const shareOnShift = Object.fromEntries(
      STATES.filter((state) => state !== 'off shift').map((state) => [
        state,
        around(share[state].mean / 0.95, share[state].mean * 0.04),
      ]),
    ) as Record<Exclude<State, 'off shift'>, Estimate>;
    return {
      name,
      site,
      places: 1 + (index % 3),
      share,
      shareOnShift,
      visitsPerUnit: around(1 + random() * 0.2, 0.01),
    };
  });

  const buffers: BufferResult[] = places.map(({ name, site }, index) => {
    const kind = index % 15 === 14 ? 'bank' : 'buffer';
    const spaces = index % 11 === 10 ? null : 1 + (index % 6);
    const levels = geometric(spaces ?? 12, 0.3 + 0.5 * random());
    const mean = levels.reduce((sum, share, level) => sum + share * level, 0);
    return {
      name: kind === 'bank' ? `bank before ${name}` : name,
      kind,
      site,
      spaces,
      mean: around(mean, 0.05 * mean + 0.01),
      full: spaces === null ? null : around(levels.at(-1) ?? 0, 0.06 * (levels.at(-1) ?? 0)),
      levels,
    };
  });

  const inspections: InspectionResult[] = Array.from({ length: Math.min(8, stationCount) }, (_, index) => {
    const right = 0.98 - 0.035 * index - 0.03 * random();
    return {
      name: `${names(Math.floor((index * stationCount) / 8))} inspection`,
      site: siteOf(Math.floor((index * stationCount) / 8)),
      ftt: around(right, 0.008),
      inspectedPerUnit: around(1.1, 0.02),
      sentBackPer100: around(60 * (1 - right), 0.7),
      repairedPer100: around(39 * (1 - right), 0.5),
      scrappedPer100: around(1 - right, 0.1),
      escapedPer100: around(2 + index / 3, 0.3),
    };
  });

  const bottlenecks: BottleneckResult[] = [
    0.575, 0.225, 0.1, 0.05, 0.05, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0,
  ]
    .slice(0, stationCount + 1)
    .map((share, index): BottleneckResult => {
      const crew = index === 1;
      return {
        name: crew ? 'electricians' : names((index * 7 + 5) % stationCount),
        kind: crew ? 'crew' : 'station',
        site: siteOf((index * 7 + 5) % stationCount),
        share: wilson(Math.round(share * replications), replications),
        activePeriodHours: around(30 / (index + 1), 1),
        active: around(0.93 - index * 0.03, 0.01),
        sole: around(0.3 / (index + 1), 0.01),
        shifting: around(0.1 / (index + 1), 0.005),
      };
    })
    .filter((item, index, all) => all.findIndex((other) => other.name === item.name) === index);

  const calendar = Array.from({ length: weeks }, (_, week) => {
    const monday = new Date(Date.UTC(2027, 2, 1 + 7 * week));
    const days =
      week === 19 || week === 20 || week === 43
        ? 0
        : week === 42 || week === weeks - 1
          ? 1
          : week === 12
            ? 4
            : 5;
    return { monday, days, label: isoWeek(monday), asked: week < 14 ? 2 : 4 };
  });
  const rate = calendar.map(({ days }, week) =>
    days === 0
      ? 0
      : Math.max(0, Math.min(3.4, 0.25 * (week - 4)) + (random() - 0.5) * 0.4 - (week > weeks - 4 ? 1.5 : 0)),
  );
  const half = (value: number): number => (value === 0 ? 0 : 0.12 + 0.03 * value);

  const runs = Array.from({ length: replications }, (_, index) => ({
    replication: index + 1,
    shipped: 420,
    scrapped: Math.floor(random() * 4),
    heldPerDay: 3.2 + 0.4 * random(),
    wip: 58 + 8 * random(),
    leadMeanDays: 30 + 4 * random(),
    leadP50Days: 29 + 3 * random(),
    leadP90Days: 45 + 5 * random(),
    lastShipped: `2028-04-${String(10 + Math.floor(random() * 15)).padStart(2, '0')}`,
    bottleneck: bottlenecks[index % 3]?.name ?? null,
  }));
  const held = around(3.38, 0.09);
  const window =
    calendar.length <= 14
      ? null
      : { from: day(calendar[14].monday), to: day(calendar.at(-1)?.monday ?? new Date(0)) };

  const sample: Results = {
    constraint: null,
    weakest: null,
    format: 'rateproof results',
    version: 1,
    program: '0.1.0',
    study: 'simulate',
    scenario: {
      name: 'Rescue tender, four a day',
      note: 'Every number in this scenario is invented.',
      file: 'rescue-tender.yaml',
      digest: 'sha256:5f0c7d3a9b1e4c88',
    },
    seed: 'spring',
    replications,
    level: 0.95,
    rateUnit: { per: 'day', workingDays: 1 },
    programme: {
      kind: 'programme',
      start: '2027-03-01',
      zone: 'Europe/Oslo',
      quantity: 420,
      phases: [
        { from: '2027-03-01', perDay: 2 },
        { from: '2027-06-07', perDay: 4 },
      ],
      observedDays: weeks * 7,
    },
    assumptions: [],
    levers: [],
    answer: {
      verdict: 'falls short',
      keptUp: proportion(0, 40, 0.95),
      canShip: null,
      askedPerDay: 4,
      heldPerDay: held,
      asked: 4,
      held,
      window,
      unusual:
        window === null
          ? null
          : {
              unit: 'week',
              judged: calendar.length - 14,
              weeks: sampleUnusual(calendar.map(({ monday, ...week }) => ({ ...week, start: day(monday) }))),
              othersPerDay: around(3.45, 0.05),
            },
      counting: { loads: [], isWhole: true, upsetUnits: 0 },
      sentence:
        'No: four a day does not hold; from 7 June 2027 the build ships 3.38 a day (95 % CI 3.29 to 3.47, 40 replications), and the top coat booth stops it.',
    },
    series: {
      unit: 'week',
      labels: calendar.map((week) => week.label),
      starts: calendar.map((week) => day(week.monday)),
      workingDays: calendar.map((week) => week.days),
      asked: calendar.map((week) => week.asked),
      released: calendar.map((week) => around(week.days * Math.min(week.asked, 3.6), 0)),
      shipped: calendar.map((week, index) =>
        around(week.days * (rate[index] ?? 0), week.days * half(rate[index] ?? 0)),
      ),
      shippedPerDay: rate.map((value) => around(value, half(value))),
      shippedOverLoads: null,
    },
    wip: {
      total: around(61.4, 1.9),
      places: [
        ...SITES.map((name) => ({ name, kind: 'site' as const })),
        ...['coachworks to paint', 'paint to final plant'].map((name) => ({ name, kind: 'lane' as const })),
      ].map((place, index) => {
        const level = [12.5, 26.1, 17.2, 3.2, 2.4][index] ?? 1;
        return {
          ...place,
          mean: around(level, level * 0.04),
          series: rate.map((_, week) => {
            const value = level * (1.15 - Math.exp(-week / (6 + 4 * index))) * (0.95 + 0.1 * random());
            return around(value, value * 0.06);
          }),
        };
      }),
    },
    leadTime: {
      unit: 'days',
      mean: around(31.9, 0.6),
      p50: around(30.2, 0.5),
      p90: around(46.8, 1.4),
      edges: Array.from({ length: 41 }, (_, index) => 10 + index * 2),
      counts: Array.from({ length: 40 }, (_, index) =>
        Math.round(1500 * ((index + 1) / 8) ** 3 * Math.exp(-(index + 1) / 3.2) * (0.9 + 0.2 * random())),
      ),
    },
    throughput: { perDay: around(2.96, 0.05), perHour: around(0.391, 0.006) },
    stations,
    changeovers: sampleChangeovers(
      places.map(({ name }) => name),
      around,
      mixer(54321),
    ),
    buffers,
    crews: ['welders', 'painters', 'fitters', 'electricians', 'testers'].map((name, index) => ({
      name,
      site: SITES[index % 3] ?? '',
      headcount: 4 + 3 * index,
      headcounts: index === 1 ? [7, 4] : null,
      busy: around(0.55 + 0.09 * index, 0.01),
      usualHours: around((4 + 3 * index) * 40 * weeks, 12 * index),
      overtimeHours: index === 2 ? around(310, 22) : around(0, 0),
      series: {
        engaged: calendar.map(({ days }, week) =>
          days === 0
            ? { ...around(0, 0), n: 0 }
            : around((4 + 3 * index) * Math.min(1, 0.2 + 0.03 * week) * (0.55 + 0.09 * index), 0.2),
        ),
        present: calendar.map(({ days }) =>
          days === 0
            ? { ...around(0, 0), n: 0 }
            : around((4 + 3 * index) * (index === 3 ? 0.94 : 1), index === 3 ? 0.1 : 0),
        ),
        overtimeHours: calendar.map((_, week) =>
          index === 2 && week > 20 && week < 32 ? around(28, 3) : around(0, 0),
        ),
      },
    })),
    overtime: [],
    shutdowns: [],
    inspections,
    rty: around(
      inspections.reduce((product, inspection) => product * inspection.ftt.mean, 1),
      0.012,
    ),
    lanes: ['coachworks to paint', 'paint to final plant'].map((name, index) => ({
      name,
      trips: around(210 - 40 * index, 3),
      fill: around(0.81, 0.02),
      waitHours: around(5.5 + index, 0.4),
      truckBusy: around(0.44, 0.02),
      truckBlocked: around(0.06, 0.01),
      truckFree: around(0.5, 0.02),
    })),
    costs: {
      currency: 'EUR',
      perUnit: around(12340, 160),
      total: around(5182800, 60000),
      parts: [
        { name: 'people', perUnit: around(7500, 120), share: 7500 / 12340 },
        { name: 'trucks', perUnit: around(1900, 30), share: 1900 / 12340 },
        { name: 'units in work', perUnit: around(1640, 60), share: 1640 / 12340 },
        { name: 'floor', perUnit: around(900, 12), share: 900 / 12340 },
        { name: 'send-backs', perUnit: around(180, 14), share: 180 / 12340 },
        { name: 'scrap', perUnit: around(220, 90), share: 220 / 12340 },
      ],
      rework: { hoursPerUnit: around(9.4, 0.5), costPerUnit: around(830, 100) },
    },
    supplies: [
      {
        name: 'power packs',
        site: 'final plant',
        by: 'reorder',
        stock: around(5.2, 0.2),
        out: around(0.04, 0.01),
        least: around(0.3, 0.2),
        lots: around(52, 1),
        lateLots: around(5, 1),
        onOrder: around(9, 0.4),
        waits: around(14, 3),
        waitHours: around(20, 4),
      },
    ],
    feeders: ['axles', 'cab doors'].map((name, index) => ({
      name,
      target: 3 + index,
      stock: around(1.9 + index, 0.1),
      out: around(0.06, 0.01),
    })),
    defects: [
      {
        kind: 'dirt in primer',
        madeAt: 'prime booth',
        made: around(75, 2),
        repairHours: around(52, 2),
        shippedWith: around(0.04, 0.01),
        shippedNoted: around(0, 0),
        foundAt: [
          {
            step: 'prime inspection',
            then: 'repaired',
            share: around(0.8, 0.02),
            repairHours: around(40, 2),
          },
          {
            step: 'final inspection',
            then: 'carried',
            share: around(0.16, 0.02),
            repairHours: around(12, 1),
          },
        ],
      },
    ],
    escapes: [
      {
        site: SITES[0] ?? '',
        madePerUnit: around(0.5, 0.01),
        foundHerePerUnit: around(0.4, 0.01),
        foundElsewherePerUnit: around(0.08, 0.01),
        shippedWithPerUnit: around(0.02, 0.01),
      },
    ],
    holds: [
      {
        name: 'hold before release',
        site: SITES[2] ?? '',
        heldShare: around(0.3, 0.02),
        units: around(2.1, 0.1),
        daysMean: around(0.9, 0.05),
        daysP95: around(2.4, 0.2),
        mended: around(160, 5),
      },
    ],
    comparisons: [
      {
        first: 'measure wheels',
        second: 'measure wheels again',
        units: around(420, 0),
        goodGood: around(0.85, 0.02),
        goodBad: around(0.05, 0.01),
        badGood: around(0.04, 0.01),
        badBad: around(0.06, 0.01),
        agreement: around(0.91, 0.02),
        extraHours: around(25, 2),
      },
    ],
    rework: [{ crew: 'painters', site: SITES[1] ?? '', hours: around(310, 12) }],
    failures: places.slice(0, 2).map(({ name, site }, index) => ({
      name,
      site,
      places: 1 + index,
      failures: around(31 + 9 * index, 2),
      downHours: around(4.1, 0.4),
      longestDownHours: around(15, 2),
      availability: around(0.93, 0.005),
    })),
    outages: [
      {
        name: 'new paint line',
        stations: ['top coat booth 6'],
        lanes: [],
        from: '2027-08-09T00:00:00',
        to: '2027-08-21T00:00:00',
        days: 12,
      },
    ],
    recoveries: [sampleRecovery(around(40, 0.6), replications)],
    pulseLines: [
      {
        name: 'final line',
        stations: [names(0), names(1)],
        taktHours: 4,
        moves: around(420, 2),
        hoursBetween: around(4.3, 0.1),
        late: around(0.31, 0.02),
        lateHours: around(126, 9),
        charged: [
          { station: names(0), lateHours: around(40, 4) },
          { station: names(1), lateHours: around(86, 7) },
          { station: null, lateHours: around(0, 0) },
        ],
      },
    ],
    carriers: [
      {
        name: 'body dollies',
        site: 'coachworks north to final plant',
        count: 12,
        inUse: around(8.2, 0.2),
        comingBack: around(1.4, 0.1),
        free: around(2.4, 0.2),
        noneFree: around(0.11, 0.02),
        holdHours: around(31.5, 0.8),
      },
    ],
    teams: [
      {
        name: 'power team',
        site: 'final plant',
        crew: 'electricians',
        people: 2,
        inUse: around(1.3, 0.05),
        holdHours: around(6.1, 0.2),
      },
    ],
    precision: null,
    warmUp: {
      replications: Math.min(10, replications),
      partHours: 5,
      wip: Array.from({ length: 300 }, (_, part) => 60 * (1 - Math.exp(-part / 20)) + random()),
      givenHours: 120,
      isFound: false,
      cutHours: 300,
      advisedHours: 3 * 20,
      bias: { left: { mean: -0.6, low: -0.8, high: -0.4, level: 0.99, n: 20 }, matters: 0.05 },
      verdict: 'too short',
    },
    bottleneckByArithmetic: bottlenecks[0]?.name ?? null,
    bottlenecks,
    lastUnit: [0.5, 0.8, 0.95].map(
      (p, index): DateQuantile =>
        p === 0.95 && replications < 72
          ? {
              p,
              date: null,
              low: null,
              high: null,
              why: `a 95 % interval for P95 needs 72 replications, there are ${replications}`,
            }
          : {
              p,
              date: `2028-04-${14 + 4 * index}`,
              low: `2028-04-${12 + 4 * index}`,
              high: `2028-04-${16 + 4 * index}`,
              why: null,
            },
    ),
    units: Array.from({ length: 420 }, (_, index) => ({
      number: index + 1,
      build: String(index + 1),
      due: null,
      late: null,
      leadDays: around(30, 1),
      shipped: [0.5, 0.8, 0.95].map((p) =>
        p > 0.9
          ? { p, date: null, low: null, high: null }
          : { p, date: '2027-09-01', low: '2027-08-30', high: '2027-09-03' },
      ),
    })),
    due: null,
    plan: samplePlan(weeks),
    journey: sampleJourney(places),
    scrapped: around(1.6, 0.4),
    standstill: null,
    findings: [
      {
        kind: 'rate not held',
        text: '4 a day is not held: 3.38 a day are shipped while it is asked',
        replications,
      },
    ],
    runs,
  };
  return { ...sample, constraint: sampleConstraint(sample, window, around) };
}

/** Two weeks down, 40 units behind at their end, 70 days to make them good. */
function sampleRecovery(most: Estimate, replications: number): RecoveryResult {
  const days = Array.from({ length: 14 + 12 + 77 }, (_, index) => index - 14),
    day = (after: number): string => new Date(Date.UTC(2027, 7, 9 + after)).toISOString().slice(0, 10),
    behind = days.map((each) => 40 * Math.max(0, each < 12 ? each / 12 : 1 - (each - 12) / 70));
  const caughtUp = (p: number, after: number): CaughtUp =>
    replications < 17
      ? {
          ...{ p, days: null, low: null, high: null, date: null, lowDate: null, highDate: null },
          why: `there are ${replications}`,
        }
      : {
          ...{ p, days: after, low: after - 3, high: after + 4 },
          ...{ date: day(11 + after), lowDate: day(8 + after), highDate: day(15 + after) },
          why: null,
        };
  return {
    names: ['new paint line'],
    from: '2027-08-09T00:00:00',
    to: '2027-08-21T00:00:00',
    sentence: 'The outage "new paint line" (2027-08-09 to 2027-08-20) puts the build 40 units behind.',
    replications: Math.min(20, replications),
    changed: Math.min(20, replications),
    behindMost: { date: day(12), units: most },
    behindJudged: {
      date: '2027-11-28',
      units: { ...most, mean: 0, low: 0, high: 0 },
      perDay: { ...most, mean: 0, low: 0, high: 0 },
    },
    behindAtEnd: { ...most, mean: 0, low: 0, high: 0 },
    daysLater: { ...most, mean: 1.2, low: 1.1, high: 1.3 },
    caughtUp: wilson(Math.min(20, replications), Math.min(20, replications)),
    caughtUpBy: [caughtUp(0.5, 70), caughtUp(0.8, 74)],
    byDay: {
      dates: days.map(day),
      days,
      behind,
      behindP10: behind.map((each) => Math.max(0, each - 3)),
      behindP90: behind.map((each) => (each > 0 ? each + 3 : 0)),
      shippedWith: days.map((each) => (each < 0 ? 20 : each < 12 ? 0 : 24)),
      shippedWithout: days.map(() => 20),
    },
  };
}

/** From week 14 on: two weeks of shutdown, two weeks of outage. */
function sampleUnusual(
  calendar: readonly { readonly label: string; readonly start: string; readonly days: number }[],
): UnusualWeek[] {
  return calendar.flatMap(({ label, start, days }, bucket): UnusualWeek[] => {
    const outage: UnusualCause = { kind: 'outage', what: '"new paint line"' },
      shutdown: UnusualCause = { kind: 'shutdown', what: '"new oven"' },
      causes = [
        ...(bucket > 14 && days === 0 ? [shutdown] : []),
        ...(bucket === 23 || bucket === 24 ? [outage] : []),
      ];
    return causes.length === 0 ? [] : [{ bucket, label, start, workingDays: days, usualDays: 5, causes }];
  });
}

function stationName(index: number): string {
  return `${WORK[index % WORK.length]} ${index + 1}`;
}

/** No site of the sample shares equipment. */
type State = Exclude<PlaceState, 'short of equipment'>;
const STATES = PLACE_STATES.filter((state): state is State => state !== 'short of equipment');

/** How much of a place's time each state takes, before chance: each station gets a leaning of its own. */
function weightOf(state: State, index: number): number {
  const lean = STATES[3 + (index % 6)];
  const base: Record<State, number> = {
    working: 6,
    changeover: index % 4 === 2 ? 0.8 : 0,
    unattended: index % 5 === 3 ? 3 : 0,
    'short of crew': 0.5,
    'short of parts': 0.3,
    'short of carrier': 0.2,
    blocked: 0.9,
    starved: 1.2,
    down: 0.3,
    'off shift': 0,
  };
  return base[state] * (state === lean ? 4 : 1);
}

function geometric(top: number, ratio: number): number[] {
  const raw = Array.from({ length: top + 1 }, (_, level) => ratio ** level);
  const total = raw.reduce((sum, value) => sum + value, 0);
  return raw.map((value) => value / total);
}

function wilson(hits: number, n: number): BottleneckResult['share'] {
  const z = 1.959964,
    p = hits / n,
    middle = p + (z * z) / (2 * n),
    half = z * Math.sqrt((p * (1 - p)) / n + (z * z) / (4 * n * n)),
    scale = 1 + (z * z) / n;
  return {
    share: p,
    low: Math.max(0, (middle - half) / scale),
    high: Math.min(1, (middle + half) / scale),
    level: 0.95,
    count: hits,
    n,
  };
}

function isoWeek(monday: Date): string {
  const thursday = new Date(monday.getTime() + 3 * 86400000);
  const week =
    Math.floor((thursday.getTime() - Date.UTC(thursday.getUTCFullYear(), 0, 1)) / (7 * 86400000)) + 1;
  return `${thursday.getUTCFullYear()}-W${String(week).padStart(2, '0')}`;
}

function day(date: Date): string {
  return date.toISOString().slice(0, 10);
}

/** A small fixed sequence in [0, 1): Park & Miller (1988), multiplier 48271. */
function mixer(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}
