/* global Buffer */
// Runs the study of reliefs of the build, once for each seed, in a process of its own (see replicate.mjs). In: { yaml,
// replications, seeds } as JSON; out: the results as JSON.
import { readFileSync, writeSync } from 'node:fs';
import { readScenario, reliefsStudy } from '../../dist/study/library.js';

const { yaml, replications, seeds } = JSON.parse(readFileSync(0, 'utf8'));
const { scenario, problems } = readScenario(yaml, 'check.yaml', () => '');
if (scenario === undefined) throw new Error(`expected a scenario without problems, saw ${JSON.stringify(problems)}`);
const all = [];
for (const seed of seeds) all.push(await reliefsStudy({ scenario, varied: [], file: 'check.yaml', replications, seed, workers: 1 }));
const bytes = Buffer.from(JSON.stringify(all));
for (let written = 0; written < bytes.length;) written += writeSync(1, bytes, written);
