// The reference line as a planner would write it, through the general engine.
import { compile, observe, prepare, readScenario, simulate, tuneFor } from '../dist/study/library.js';

const STATIONS = 22,
  // States of a place, in the order of flow/floor/states.ts.
  STATES = 11;

const text = (hours, warmUp, stations) => `
scenario: reference line
programme: { arrivals: saturated, length: ${hours} h, warm up: ${warmUp} h }
defects: { fault: {} }
sites:
  plant:
    stations:
${Array.from({ length: stations }, (_, i) => `      S${i + 1}: { buffer: ${i === 0 ? 0 : 2}${i === stations - 5 ? ', rework buffer: unlimited' : ''} }`).join('\n')}
route:
${Array.from({ length: stations }, (_, i) => `  - { step: W${i + 1}, at: S${i + 1}, work: { mean: 1 h, cv: 0.3 }${i === stations - 1 ? `, fails: { chance: 8 %, back to: W${stations - 4}, limit: 1000 }` : ''} }`).join('\n')}
`;

const plans = new Map();
/** Read, compiled and made ready, once. */
export function plannedLine(hours, warmUp, stations = STATIONS) {
  const key = `${hours}/${warmUp}/${stations}`;
  if (!plans.has(key)) {
    const read = readScenario(text(hours, warmUp, stations), 'reference-line.yaml', () => {
      throw new Error('no file is read');
    });
    if (read.problems) throw new Error(JSON.stringify(read.problems, null, 1));
    const model = compile(read.scenario);
    tuneFor(model); // as every study does
    plans.set(key, prepare(model));
  }
  return plans.get(key);
}

/**
 * @returns {{completions: number, throughput: number, wip: number, leadTime: number, leadTimeP95: number,
 * working: number[], blocked: number[], starved: number[], seed: number}} hours and units an hour
 */
export function engineLine(hours, warmUp, seed, stations = STATIONS) {
  const plan = plannedLine(hours, warmUp, stations),
    run = simulate(plan, String(seed), 0),
    seen = observe(run, 0);
  const shares = (state) =>
    Array.from({ length: stations }, (_, s) => seen.stationShares[s * STATES + state]);
  return {
    // Visits begun in the time observed, and those of warm-up at the same rate: what the loop counts too.
    completions: seen.stepVisits.reduce((a, b) => a + b, 0) * (1 + warmUp / hours),
    throughput: seen.shipped / hours,
    wip: seen.wip,
    leadTime: seen.leadMean / 60,
    leadTimeP95: seen.leadP95 / 60,
    working: shares(0),
    blocked: shares(7),
    starved: shares(8),
    seed,
  };
}
