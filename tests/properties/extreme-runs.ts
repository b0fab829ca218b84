import { Worker } from 'node:worker_threads';
import { ranOutOfMemory } from '../../src/study/run/out-of-memory.js';
import type { ExtremeCase } from './extreme-cases.js';

/** How a scenario ended. */
export interface Ending {
  readonly name: string;
  readonly how: 'refused' | 'run' | 'too long' | 'no memory' | 'fault';
  /** What was said, or what is wrong. */
  readonly said: string;
}

/** The program as built, so that it can be stopped: a thread reads, compiles, reckons and runs one replication. */
const THREAD = `
import { parentPort, workerData } from 'node:worker_threads';
const built = await import(workerData);
const numbers = (value, path) => {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path + ' is ' + value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbers(inner, path + '.' + key));
};
const RANGE = /^\\S+: expected /;
function ending(yaml) {
  const { scenario, problems } = built.readScenario(yaml, 'x.yaml', () => { throw new Error('no such file'); });
  if (scenario === undefined) return { how: 'refused', said: built.sayProblem(problems[0]) };
  let model;
  try {
    model = built.compile(scenario);
    const table = built.capacity(model, scenario),
      wrong = numbers(table.rows.map(({ load, ...row }) => row), 'capacity');
    if (wrong.length > 0) return { how: 'fault', said: wrong[0] };
  } catch (error) {
    if (error instanceof RangeError && RANGE.test(error.message)) return { how: 'refused', said: error.message };
    throw error;
  }
  if (scenario.programme.findsWarmUp !== undefined) return { how: 'run', said: '' };
  const design = built.simulateDesign({ scenario, file: 'x.yaml', replications: 1, seed: '1', level: 0.95 }),
    gathering = design.gather();
  design.variants.forEach(({ model, read }, v) => {
    if (v === 0) gathering.take(read(built.observe(built.simulate(built.prepare(model), '1', 1), 1)), v);
  });
  // What is kept of the weeks judged is no part of the results.
  const { judged, ...results } = gathering.found(),
    wrong = numbers(results, 'results');
  return wrong.length > 0 ? { how: 'fault', said: wrong.join(', ').slice(0, 300) } : { how: 'run', said: '' };
}
parentPort.on('message', (yaml) => {
  let ended;
  try { ended = ending(yaml); }
  catch (error) { ended = { how: 'fault', said: String(error?.stack ?? error).slice(0, 500) }; }
  parentPort.postMessage(ended);
});
parentPort.postMessage('ready');
`;
const LIBRARY = new URL('../../dist/study/library.js', import.meta.url).href;

/** Runs all, one after the other; what takes longer than \`seconds\` is stopped and a new thread begun. */
export async function endingsOf(cases: readonly ExtremeCase[], seconds: number): Promise<Ending[]> {
  const endings: Ending[] = [];
  let thread: Worker | undefined;
  for (const { name, yaml } of cases) {
    thread ??= await begun();
    const said = await answer(thread, yaml, seconds);
    if (said === undefined || said.how === 'fault') {
      await thread.terminate();
      thread = undefined;
    }
    endings.push({ name, ...(said ?? { how: 'too long', said: '' }) });
  }
  await thread?.terminate();
  return endings;
}

async function begun(): Promise<Worker> {
  const thread = new Worker(new URL(`data:text/javascript,${encodeURIComponent(THREAD)}`), {
    workerData: LIBRARY,
    resourceLimits: { maxOldGenerationSizeMb: 1024 },
  });
  await new Promise((resolve, reject) => {
    thread.once('message', resolve);
    thread.once('error', reject);
  });
  return thread;
}

function answer(thread: Worker, yaml: string, seconds: number): Promise<Omit<Ending, 'name'> | undefined> {
  return new Promise((resolve) => {
    const end = (said: Omit<Ending, 'name'> | undefined): void => {
      clearTimeout(timer);
      thread.off('message', end).off('error', died);
      resolve(said);
    };
    const died = (error: Error): void => {
      // The program says so, and ends with exit code 2.
      end({ how: ranOutOfMemory(error) ? 'no memory' : 'fault', said: String(error) });
    };
    const timer = setTimeout(() => {
      end(undefined);
    }, seconds * 1000);
    thread.on('message', end).on('error', died);
    thread.postMessage(yaml);
  });
}
