import { basename } from 'node:path';
import type { Observation } from '../../measure/observe.js';
import type { Factors } from '../../scenario/changes/factors.js';
import { LEVEL } from '../../study/asked.js';
import type { FactorsAsked, FactorsResults } from '../../study/factors/results.js';
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

export const factors = command({
  name: 'factors',
  words: { file: FILE, factorsFile: word('FACTORS', 'file of FACTORS', 'two to five of them, YAML') },
  summary: 'which of several things matter, alone and together',
  about: 'what two to five things do alone and two together: combinations of their levels, run in pairs',
  examples: [
    [
      'rateproof factors line.yaml factors.yaml',
      'which of two to five things matter, alone and two together, and the best combination',
    ],
    'rateproof factors line.yaml factors.yaml --replications 100 --out out/factors',
    'rateproof factors line.yaml factors.yaml --shard 1/4 --out out/shard-1   (and so on; then merge)',
    'factors.yaml: { factors: { booths: { change: sites.hall.stations.booth.places, levels: [1, 2] }, ' +
      'spread: { scale: spread, levels: [1, 1.5] } } }',
  ],
  options: {
    ...RUN,
    replications: replications('replications of each combination', 40, 2),
    zone: ZONES,
    shard: SHARD,
  },
  request: (given) => {
    checkShard(given);
    return given;
  },
  run: async (request) => {
    const { dataToVary, loadToRun, planned } = await import('../load.js');
    const { factorsDesign } = await import('../../study/factors/design.js');
    const { replications, seed, factorsFile, zone: zones, shard, out } = request;
    const interrupt = listenForInterrupt();
    const { scenario, file, warmed } = await loadToRun(request, interrupt);
    const read = await loadFactors(factorsFile, request.file);
    const asked: FactorsAsked = {
      ...read,
      combinations: read.combinations.map((each) => ({ ...each, scenario: warmed(each.scenario) })),
      data: dataToVary(request.file, scenario),
      offers: await offersOf(request.file, scenario, read.combinations),
      ...{ scenario, file, replications, seed, zones, level: LEVEL },
      factorsFile: basename(factorsFile),
    };
    const design = factorsDesign(asked, (name, plan) => planned(`${factorsFile}, ${name}`, plan)),
      stage = `running ${experiment(asked)}`;
    if (shard !== undefined && out !== undefined) {
      const { runShard } = await import('../shard.js');
      return runShard({ ...request, shard, out, asked, design, stage }, interrupt);
    }
    const { runStudy } = await import('../run-study.js');
    const { answerOf } = await import('../../study/run/fixed-design.js');
    const { withConstraint } = await import('../../study/factors/with-constraint.js');
    return runStudy<FactorsResults, Reading | Observation | number>(request, interrupt, {
      ...factorsShown(asked),
      stage,
      identity: design.identity,
      run: async (how) => withConstraint(await answerOf(design, how), asked, how),
    });
  },
});

/** How its answer is shown: with a map of the scenario, on which is marked what each factor changes. */
export const factorsShown = ({
  scenario,
  factors: all,
  combinations,
}: FactorsAsked): Pick<Study<FactorsResults>, 'text' | 'drawing' | 'stands'> => ({
  text: async () => (await import('../../report/terminal/factors.js')).factorsTable,
  drawing: async () => {
    const { compile } = await import('../../scenario/compile.js'),
      { changedByEach } = await import('../../study/factors/changed.js'),
      { factorsFiles } = await import('../../report/files/factors.js'),
      { markedFactors } = await import('../../report/map/marked.js');
    const changed = changedByEach(all.length, combinations);
    return onMap(factorsFiles, scenario, compile(scenario), (found) => markedFactors(found, changed));
  },
  stands: ({ findings }) => findings.length > 0,
});

/** What is run, in words. */
export const experiment = ({ replications, file, combinations, seed }: FactorsAsked): string =>
  `${count(replications, 'replication')} each of ${file} and ${combinations.length} combinations, ` +
  `seed ${seed}`;

/** Reads factors of a scenario that was loaded without a problem. A UsageError tells all problems. */
async function loadFactors(path: string, scenarioPath: string): Promise<Factors> {
  const { loadChanges } = await import('../load.js');
  const { readFactors } = await import('../../scenario/changes/factors.js');
  const { factors: found } = loadChanges(
    path,
    scenarioPath,
    ['a file of factors', 'docs/factors.md'],
    readFactors,
  );
  if (found === undefined) throw new Error('expected factors where there is no problem, got none');
  return found;
}
