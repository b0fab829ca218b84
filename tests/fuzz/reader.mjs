// Reads, plans and runs scenarios with the program as built, in a process of its own: what hangs or eats all memory can
// be ended from outside. Each stage is told as it ends.
import { posix } from 'node:path';
import process from 'node:process';
import * as built from '../../dist/study/library.js';

const told = (message) => new Promise((done) => process.send(message, done));

process.on('message', async ({ text, file, files, base, run }) => {
  let stage = 'read';
  const tell = async (more) => told({ stage, ...more });
  try {
    const readFile = (path) => {
      const found = Object.hasOwn(files, posix.normalize(path)) ? files[posix.normalize(path)] : undefined;
      if (found === undefined) throw new Error('no such file or folder');
      return found;
    };
    const read =
        base === undefined
          ? built.readScenario(text, file, readFile)
          : built.readWhatIfs(text, file, base, readFile),
      scenarios = base === undefined ? [read.scenario] : (read.whatIfs ?? []).map(({ scenario }) => scenario);
    if (read.problems !== undefined) {
      if (scenarios.some((scenario) => scenario !== undefined))
        throw new Error('both a scenario and problems');
      await told({ end: 'refused', problems: read.problems.map(built.sayProblem) });
      return;
    }
    await tell();
    stage = 'plan';
    const plans = [];
    for (const scenario of scenarios) plans.push(planned(scenario));
    if (plans.some(({ refusal }) => refusal !== undefined)) {
      await told({ end: 'unplanned', problems: plans.flatMap(({ refusal }) => refusal ?? []) });
      return;
    }
    await tell();
    stage = 'run';
    if (run) for (const { scenario } of plans) runOnce(scenario, file);
    await told({ end: run ? 'run' : 'accepted' });
  } catch (error) {
    await told({
      end: 'thrown',
      stage,
      error: error instanceof Error ? (error.stack ?? error.message) : String(error),
    });
  }
});

/** As the command line does, with a run whose warm-up would be found given none. */
function planned(read) {
  const scenario = read.programme.findsWarmUp === undefined ? read : built.withWarmUp(read, 0);
  try {
    const model = built.compile(scenario);
    built.capacity(model, scenario);
    return { scenario };
  } catch (error) {
    if (error instanceof RangeError && /^(\S+): expected /.test(error.message))
      return { refusal: error.message };
    throw error;
  }
}

function runOnce(scenario, file) {
  const design = built.simulateDesign({ scenario, file, replications: 1, seed: 'fuzz', level: 0.95 }),
    gathering = design.gather();
  for (const [index, { model, read }] of design.variants.entries())
    gathering.take(read(built.observe(built.simulate(built.prepare(model), design.seed, 1), 1)), index);
  // Values that come later are reckoned as they are written.
  JSON.stringify(gathering.found());
}
