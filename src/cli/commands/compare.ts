import { basename, dirname, resolve } from 'node:path';
import { compareTable } from '../../report/terminal/compare.js';
import { readWhatIfs, type WhatIf } from '../../scenario/what-ifs.js';
import { compareDesign, type CompareAsked } from '../../study/compare/design.js';
import { answerOf } from '../../study/run/fixed-design.js';
import type { Reading } from '../../study/compare/reading.js';
import type { CompareResults } from '../../study/compare/results.js';
import { LEVEL } from '../../study/simulate/simulate.js';
import type { ExitCode } from '../exit-code.js';
import { listenForInterrupt } from '../interrupt.js';
import { readText } from '../files.js';
import { loadToRun, planned, problemsError, readInput } from '../load.js';
import type { CompareRequest } from '../arguments/request.js';
import { runStudy, type StudyCommand } from '../run-study.js';
import { runShard } from '../shard.js';

/** `rateproof compare`: the scenario against named changes of it. */
export async function compare(request: CompareRequest): Promise<ExitCode> {
  const { replications, seed, workers, whatIfsFile, shard, out } = request;
  const interrupt = listenForInterrupt();
  const { scenario, file, warmed } = await loadToRun(request, interrupt);
  const whatIfs = loadWhatIfs(whatIfsFile, request.file).map((each) => ({
    ...each,
    scenario: warmed(each.scenario),
  }));
  const asked = {
    scenario,
    file,
    whatIfs,
    whatIfsFile: basename(whatIfsFile),
    replications,
    seed,
    level: LEVEL,
  };
  const design = compareDesign(asked, (name, plan) => planned(`${whatIfsFile}, ${name}`, plan)),
    stage = `running ${comparison(asked)}`;
  if (shard !== undefined && out !== undefined)
    return runShard({ ...request, shard, out, asked, design, stage }, interrupt);
  return runStudy<CompareResults, Reading>(request, interrupt, {
    ...COMPARE,
    stage,
    identity: design.identity,
    run: (signal, onReplication, journal) => answerOf(design, { workers, journal, signal, onReplication }),
  });
}

/** How its answer is shown. */
export const COMPARE: Pick<StudyCommand<CompareResults>, 'text' | 'drawing' | 'stands'> = {
  text: compareTable,
  drawing: async () => (await import('../../report/files/compare.js')).compareFiles,
  stands: ({ findings }) => findings.length > 0,
};

/** What is run, in words. */
export const comparison = ({ replications, file, whatIfs, seed }: CompareAsked): string =>
  `${replications} replications each of ${file} and ` +
  `${whatIfs.length === 1 ? '1 what-if' : `${whatIfs.length} what-ifs`}, seed ${seed}`;

/** Reads the changes of a scenario that was loaded without a problem. A UsageError tells all problems. */
export function loadWhatIfs(path: string, scenarioPath: string): readonly WhatIf[] {
  const text = readInput(path, 'a file of what-ifs');
  const { whatIfs, problems } = readWhatIfs(
    text,
    path,
    { text: readText(scenarioPath), file: scenarioPath },
    (relative) => readText(resolve(dirname(scenarioPath), relative)),
  );
  if (whatIfs === undefined)
    throw problemsError(path, problems, 'docs/compare.md shows how changes are written');
  return whatIfs;
}
