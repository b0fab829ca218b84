// The demo of version 0.3.1, frozen in bench/demo: crews, passes, carriers, calendars, feeders and lanes, where the
// reference line has only plain steps. A process of its own, which runs it when it is told a seed: V8 makes machine
// code for what it has seen, and the code of the line would have to serve both.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { compile, observe, prepare, readScenario, simulate, tuneFor } from '../dist/study/library.js';

const FOLDER = join(import.meta.dirname, 'demo'),
  FILE = 'rescue-tender.yaml',
  read = (name) => readFileSync(join(FOLDER, name), 'utf8'),
  /** In one timed run: about as long as one of the reference line. */
  REPLICATIONS = 12;

let plan;
function planned() {
  if (plan !== undefined) return plan;
  const { scenario, problems } = readScenario(read(FILE), FILE, read);
  if (problems) throw new Error(JSON.stringify(problems, null, 1));
  const model = compile(scenario);
  tuneFor(model); // as every study does
  return (plan = prepare(model));
}

/** Some replications: how many visits to steps were begun in all. Each is a completion, but for those inside at the end. */
function demoRuns(seed) {
  const start = performance.now();
  let completions = 0;
  for (let replication = 1; replication <= REPLICATIONS; replication++)
    completions += observe(simulate(planned(), String(seed), replication), replication).stepVisits.reduce(
      (a, b) => a + b,
      0,
    );
  return { completions, replications: REPLICATIONS, seconds: (performance.now() - start) / 1000 };
}

process.on('message', (seed) => process.send(demoRuns(seed)));
