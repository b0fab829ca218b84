import { basename, dirname, resolve } from 'node:path';
import { compareTable } from '../report/compare-terminal.js';
import { readWhatIfs, type WhatIf } from '../scenario/what-ifs.js';
import { compareDesign, compareStudy } from '../study/compare.js';
import type { ExitCode } from './exit-code.js';
import { listenForInterrupt } from './interrupt.js';
import { readText } from './file.js';
import { loadScenario, planned, problemsError, readInput } from './load.js';
import type { CompareRequest } from './request.js';
import { runStudy } from './run-study.js';

/** `rateproof compare`: the scenario against named changes of it. */
export async function compare(request: CompareRequest): Promise<ExitCode> {
  const { replications, seed, workers, whatIfsFile } = request;
  const interrupt = listenForInterrupt();
  const { scenario, file } = loadScenario(request.file);
  const design = compareDesign(scenario, loadWhatIfs(whatIfsFile, request.file), replications, (name, plan) => planned(`${whatIfsFile}, ${name}`, plan));
  return runStudy(request, interrupt, {
    stage: `running ${replications} replications each of ${file} and ${design.variants.length === 2 ? '1 what-if' : `${design.variants.length - 1} what-ifs`}, seed ${seed}`,
    run: (signal, onReplication) => compareStudy({ design, file, whatIfsFile: basename(whatIfsFile), seed, workers, signal, onReplication }),
    text: compareTable,
    drawing: async () => (await import('../report/compare-files.js')).compareFiles,
    stands: ({ findings }) => findings.length > 0,
  });
}

/** Reads the changes of a scenario that was loaded without a problem. A UsageError tells all problems. */
export function loadWhatIfs(path: string, scenarioPath: string): readonly WhatIf[] {
  const text = readInput(path, 'a file of what-ifs');
  const { whatIfs, problems } = readWhatIfs(text, path, { text: readText(scenarioPath), file: scenarioPath }, (relative) => readText(resolve(dirname(scenarioPath), relative)));
  if (whatIfs === undefined) throw problemsError(path, problems, 'docs/compare.md shows how changes are written');
  return whatIfs;
}
