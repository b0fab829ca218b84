import type { CompareResults } from '../../study/compare/results.js';
import type { Chart } from '../charts/chart.js';
import { compareDifferences } from '../charts/studies/compare-differences.js';
import { compareThroughput, compareWip } from '../charts/studies/compare-weeks.js';
import { comparePage } from '../page/compare.js';
import { csv } from './csv.js';
import { studyFiles } from './study-files.js';

const CHARTS: Readonly<Record<string, (results: CompareResults) => Chart | null>> = {
  '01-differences': compareDifferences,
  '02-throughput-by-week': compareThroughput,
  '03-wip-by-week': compareWip,
};

/** Every file of a compare report, by name. Ready for `writeFolder`. */
export async function compareFiles(results: CompareResults): Promise<Map<string, string | Buffer>> {
  const files = await studyFiles(results, CHARTS, comparePage);
  files.set('differences.csv', differencesCsv(results));
  files.set('runs.csv', compareRunsCsv(results));
  return files;
}

/** One row a what-if and measure. */
function differencesCsv({ measures, base, whatIfs }: CompareResults): string {
  const head = [
    'what_if',
    'measure',
    'unit',
    'better',
    'base_mean',
    'mean',
    'difference',
    'difference_low',
    'difference_high',
    'level',
    'pairs',
    'pairing_gain',
    'verdict',
  ];
  return csv(
    head,
    whatIfs.flatMap(({ name, compared }) =>
      measures.map((measure, m) => {
        const { value, difference, pairingGain, verdict } = compared[m]!;
        return [
          name,
          measure.name,
          measure.unit,
          measure.better,
          base.values[m]!.value.mean,
          value.mean,
          difference.mean,
          difference.low,
          difference.high,
          difference.level,
          difference.n,
          pairingGain,
          verdict,
        ];
      }),
    ),
  );
}

/** One row a variant and replication, for statistics of the reader's own. */
function compareRunsCsv({ measures, runs }: CompareResults): string {
  return csv(
    ['variant', 'replication', 'outcome', ...measures.map(({ name, unit }) => `${name}, ${unit}`)],
    runs.map(({ variant, replication, outcome, values }) => [variant, replication, outcome, ...values]),
  );
}
