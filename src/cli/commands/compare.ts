import { basename } from 'node:path';
import type { Observation } from '../../measure/observe.js';
import type { WhatIf } from '../../scenario/what-ifs.js';
import { LEVEL } from '../../study/asked.js';
import type { CompareAsked } from '../../study/compare/design.js';
import type { CompareResults } from '../../study/compare/results.js';
import { count } from '../../study/format.js';
import type { Reading } from '../../study/sample/reading.js';
import { command } from '../arguments/command.js';
import { word } from '../arguments/option.js';
import { FILE, RUN, replications } from '../arguments/options.js';
import { checkShard, SHARD } from '../arguments/shard.js';
import { ZONES } from '../arguments/zone.js';
import { listenForInterrupt } from '../interrupt.js';
import type { Study } from '../run-study.js';
import { onMap } from './map.js';
import { offersOf } from './offers.js';

export const compare = command({
  name: 'compare',
  words: { file: FILE, whatIfsFile: word('WHATIFS', 'file of WHATIFS', 'named changes of it, YAML') },
  summary: 'the scenario against named changes of it',
  about: 'the effect of named changes on rate, lead time, WIP, end and cost',
  examples: [
    [
      'rateproof compare line.yaml what-ifs.yaml',
      'the same for named changes of it, each against the scenario',
    ],
    'rateproof compare line.yaml what-ifs.yaml --replications 100 --out out/what-ifs',
    'rateproof compare line.yaml what-ifs.yaml --zone "2 %" --zone "cost 0.5 %"',
    'rateproof compare line.yaml what-ifs.yaml --shard 1/4 --out out/shard-1   (and so on; then merge)',
    'what-ifs.yaml: { second booth: { changes: [{ sites.hall.stations.booth.places: 2 }] } }',
  ],
  options: {
    ...RUN,
    replications: replications('replications of each variant', 40, 2),
    zone: ZONES,
    shard: SHARD,
  },
  request: (given) => {
    checkShard(given);
    return given;
  },
  run: async (request) => {
    const { dataToVary, loadToRun, planned } = await import('../load.js');
    const { compareDesign } = await import('../../study/compare/design.js');
    const { replications, seed, whatIfsFile, zone: zones, shard, out } = request;
    const interrupt = listenForInterrupt();
    const { scenario, file, warmed } = await loadToRun(request, interrupt);
    const whatIfs = (await loadWhatIfs(whatIfsFile, request.file)).map((each) => ({
      ...each,
      scenario: warmed(each.scenario),
    }));
    const asked = {
      scenario,
      data: dataToVary(request.file, scenario),
      offers: await offersOf(request.file, scenario, whatIfs),
      file,
      whatIfs,
      whatIfsFile: basename(whatIfsFile),
      replications,
      seed,
      level: LEVEL,
      zones,
    };
    const design = compareDesign(asked, (name, plan) => planned(`${whatIfsFile}, ${name}`, plan)),
      stage = `running ${comparison(asked)}`;
    if (shard !== undefined && out !== undefined) {
      const { runShard } = await import('../shard.js');
      return runShard({ ...request, shard, out, asked, design, stage }, interrupt);
    }
    const { runStudy } = await import('../run-study.js');
    const { answerOf } = await import('../../study/run/fixed-design.js');
    const { withConstraint } = await import('../../study/compare/with-constraint.js');
    return runStudy<CompareResults, Reading | Observation | number>(request, interrupt, {
      ...compareShown(asked),
      stage,
      identity: design.identity,
      run: async (how) => withConstraint(await answerOf(design, how), asked, how),
    });
  },
});

/** How its answer is shown: with a map of the scenario, on which is marked what each what-if changes. */
export const compareShown = ({
  scenario,
  whatIfs,
}: CompareAsked): Pick<Study<CompareResults>, 'text' | 'drawing' | 'stands'> => ({
  text: async () => (await import('../../report/terminal/compare.js')).compareTable,
  drawing: async () => {
    const { compile } = await import('../../scenario/compile.js'),
      { changedThings } = await import('../../study/route/changed.js'),
      { compareFiles } = await import('../../report/files/compare.js'),
      { markedWhatIfs } = await import('../../report/map/marked.js');
    const changed = new Map(whatIfs.map((each) => [each.name, changedThings(scenario, each.scenario)]));
    return onMap(compareFiles, scenario, compile(scenario), (found) => markedWhatIfs(found, changed));
  },
  stands: ({ findings }) => findings.length > 0,
});

/** What is run, in words. */
export const comparison = ({ replications, file, whatIfs, seed }: CompareAsked): string =>
  `${count(replications, 'replication')} each of ${file} and ` +
  `${whatIfs.length === 1 ? '1 what-if' : `${whatIfs.length} what-ifs`}, seed ${seed}`;

/** Reads the changes of a scenario that was loaded without a problem. A UsageError tells all problems. */
export async function loadWhatIfs(path: string, scenarioPath: string): Promise<readonly WhatIf[]> {
  const { loadChanges } = await import('../load.js');
  const { readWhatIfs } = await import('../../scenario/what-ifs.js');
  const page = ['a file of what-ifs', 'docs/compare.md'] as const;
  return loadChanges(path, scenarioPath, page, readWhatIfs).whatIfs ?? [];
}
