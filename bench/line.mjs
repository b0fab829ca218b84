// The engine against the hand-written loop on the same line, and on the demo, in turn: `npm run bench`. Stops with exit
// code 1 if either misses the known values of the line or the engine's memory grows with the length of a run.
import { fork } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { engineLine } from './engine-line.mjs';
import { checkRuns, HOURS, ROUNDS, WARM_UP } from './known-values.mjs';
import { tightLine } from './tight-line.mjs';

const GROWTH_LIMIT_MB = 60;
const MB = 1024 * 1024;

const sides = [
  { name: 'engine', run: engineLine, rates: [], runs: [] },
  { name: 'tight loop', run: tightLine, rates: [], runs: [] },
];
const demo = { name: 'engine, demo', rates: [], replications: [] };
const failures = [];

/**
 * Memory now held and the most ever held, MB. The first counts garbage not yet collected too; the second also
 * sees what a run took and gave back. Peak resident memory is in kilobytes on every platform of Node.
 */
function memory() {
  const { heapUsed, external } = process.memoryUsage(); // external includes typed arrays
  return { held: (heapUsed + external) / MB, peak: process.resourceUsage().maxRSS / 1024 };
}

/** Growth from a tenth of the length to the whole, after the code is warm. */
function checkMemory({ name, run }) {
  run(HOURS / 10, WARM_UP, 101);
  run(HOURS / 10, WARM_UP, 102);
  const before = memory();
  run(HOURS, WARM_UP, 103);
  const after = memory();
  const held = after.held - before.held,
    peak = after.peak - before.peak;
  console.log(
    `${name}: heap growth over a run ten times as long ${held.toFixed(1)} MB, peak resident ${peak.toFixed(1)} MB`,
  );
  if (Math.max(held, peak) >= GROWTH_LIMIT_MB)
    failures.push(`${name}: memory grows with the run, limit ${GROWTH_LIMIT_MB} MB`);
}

function timeRun(side, seed) {
  const start = performance.now();
  const run = side.run(HOURS, WARM_UP, seed);
  const seconds = (performance.now() - start) / 1000;
  side.runs.push(run);
  side.rates.push(run.completions / seconds / 1e6);
}

const demoProcess = fork(join(import.meta.dirname, 'demo.mjs'));
async function demoRuns(seed) {
  demoProcess.send(seed);
  const [runs] = await once(demoProcess, 'message');
  return runs;
}

async function timeDemo(seed) {
  const { completions, replications, seconds } = await demoRuns(seed);
  demo.rates.push(completions / seconds / 1e6);
  demo.replications.push(replications / seconds);
}

function checkValues({ name, runs }) {
  console.log(`${name}, mean of ${runs.length} runs of ${HOURS} h:`);
  for (const { name: what, value, tolerance, seen, right } of checkRuns(runs)) {
    console.log(
      `  ${what.padEnd(32)}${seen.toFixed(4).padStart(9)}  known ${value.toFixed(4)} +- ${tolerance}${right ? '' : '  WRONG'}`,
    );
    if (!right)
      failures.push(`${name}: ${what} is ${seen.toFixed(4)}, expected ${value.toFixed(4)} +- ${tolerance}`);
  }
}

const median = (values) => values.toSorted((a, b) => a - b)[values.length >> 1];

// also warms both up; the engine first, so that its peak is its own
for (const side of sides) checkMemory(side);
for (let seed = -3; seed < 0; seed++) await demoRuns(seed);
for (let round = 1; round <= ROUNDS; round++) {
  const order = round % 2 === 1 ? sides : sides.toReversed();
  for (const side of order) timeRun(side, round);
  await timeDemo(round);
}
demoProcess.disconnect();
for (const side of sides) checkValues(side);
for (const { name, rates } of [...sides, demo]) {
  const all = rates.map((rate) => rate.toFixed(2)).join(', ');
  console.log(`${name}: ${median(rates).toFixed(2)} million completions a second, median of ${all}`);
}
if (failures.length > 0) {
  for (const failure of failures) console.error(`bench failed: ${failure}`);
  process.exitCode = 1;
}
console.log(`demo: ${median(demo.replications).toFixed(1)} replications a second`);
// Of one round, since a machine may be busier in one than in another.
const ratio = ({ rates }) => median(rates.map((rate, round) => rate / sides[1].rates[round]));
console.log(
  `ratio to the tight loop, by completions a second: line ${ratio(sides[0]).toFixed(2)}, demo ${ratio(demo).toFixed(3)}`,
);
