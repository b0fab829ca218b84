import type { Effect, ReliefsResults } from '../../study/reliefs/results.js';
import type { Chart } from '../charts/chart.js';
import { reliefGains } from '../charts/studies/reliefs-gains.js';
import { reliefTornado } from '../charts/studies/reliefs-tornado.js';
import { csv } from './csv.js';
import { reliefsPage } from '../page/reliefs.js';
import { studyFiles } from './study-files.js';

const CHARTS: Readonly<Record<string, (results: ReliefsResults) => Chart | null>> = {
  '01-reliefs': reliefGains,
  '02-measure-next': reliefTornado,
};

/** Every file of a `reliefs` report, by name. */
export async function reliefsFiles(results: ReliefsResults): Promise<Map<string, string | Buffer>> {
  return (await studyFiles(results, CHARTS, reliefsPage))
    .set('reliefs.csv', reliefsCsv(results))
    .set('assumptions.csv', assumptionsCsv(results));
}

const EFFECT = [
  'gain_mean',
  'gain_low',
  'gain_high',
  'cost_mean',
  'cost_low',
  'cost_high',
  'replications',
  'out',
];
const cells = ({ gain, costPerUnit: cost, replications, out }: Effect) => [
  gain.mean,
  gain.low,
  gain.high,
  cost?.mean ?? null,
  cost?.low ?? null,
  cost?.high ?? null,
  replications,
  out,
];

/** One row a relief, by rank: gain in units a working day, change of the cost of a unit, gain per cost. */
export function reliefsCsv({ reliefs }: ReliefsResults): string {
  return csv(
    [
      'rank',
      'kind',
      'relief',
      ...EFFECT,
      'gain_per_cost_mean',
      'gain_per_cost_low',
      'gain_per_cost_high',
      'rank_per_cost',
    ],
    reliefs.map((each) => [
      each.rank,
      each.kind,
      each.text,
      ...cells(each),
      each.gainPerCost?.mean ?? null,
      each.gainPerCost?.low ?? null,
      each.gainPerCost?.high ?? null,
      each.rankPerCost,
    ]),
  );
}

/** One row an end of an assumption. */
function assumptionsCsv({ assumptions }: ReliefsResults): string {
  return csv(
    ['path', 'basis', 'value', 'end', 'varied', ...EFFECT],
    assumptions.flatMap(({ path, basis, value, low, high }) =>
      [['low', low] as const, ['high', high] as const].flatMap(([end, each]) =>
        each === null ? [] : [[path, basis, value, end, each.value, ...cells(each)]],
      ),
    ),
  );
}
