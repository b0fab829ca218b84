// Replications of a scenario with the built engine, of which only throughput per hour, mean WIP and mean lead time in hours
// are kept. In: { yaml, replications, seed } as JSON; out: three numbers a replication, as JSON.
import { readFileSync, writeFileSync } from 'node:fs';
import { compile, observe, prepare, readScenario, simulate, tuneFor } from '../../dist/study/library.js';

const { yaml, replications, seed } = JSON.parse(readFileSync(0, 'utf8'));
const { scenario, problems } = readScenario(yaml, 'check.yaml', () => '');
if (scenario === undefined) throw new Error(`expected a scenario without problems, saw ${JSON.stringify(problems)}`);
const model = compile(scenario);
tuneFor(model);
const plan = prepare(model);
const seen = Array.from({ length: replications }, (_, i) => {
  const { shipped, minutes, wip, leadMean } = observe(simulate(plan, seed, i + 1), i + 1);
  return [(60 * shipped) / minutes, wip, leadMean / 60];
});
writeFileSync(1, JSON.stringify(seen));
