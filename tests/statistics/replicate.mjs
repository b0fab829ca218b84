// Runs replications of a scenario with the built engine, in a process of its own: the test runner wraps every import of a
// module it transforms, which makes the inner loop five times slower. In: { yaml, replications, seed } as JSON; out: the
// observations, serialised with their typed arrays.
import { readFileSync, writeSync } from 'node:fs';
import { serialize } from 'node:v8';
import { compile, observe, prepare, readScenario, simulate, tuneFor } from '../../dist/study/library.js';

const { yaml, replications, seed } = JSON.parse(readFileSync(0, 'utf8'));
const { scenario, problems } = readScenario(yaml, 'check.yaml', () => '');
if (scenario === undefined) throw new Error(`expected a scenario without problems, saw ${JSON.stringify(problems)}`);
const model = compile(scenario);
tuneFor(model); // as every study does
const plan = prepare(model);
const bytes = serialize(Array.from({ length: replications }, (_, i) => observe(simulate(plan, seed, i + 1), i + 1)));
for (let written = 0; written < bytes.length;) written += writeSync(1, bytes, written);
