import { bounds, mean } from '../../study/format.js';
import type { ReachResults } from '../../study/reach/results.js';
import { setText } from '../../study/reach/sentence.js';
import { joined } from './lines.js';
import { table } from './table.js';

/** The way in short. */
export function reachTable(results: ReachResults, width?: number): string {
  return joined(
    [
      results.answer.sentence,
      '',
      table(
        results.steps.map((step, i) => [
          String(i),
          step.made === null ? 'as it is' : setText([step.made]),
          `${mean(step.throughput)} (${bounds(step.throughput)})`,
          step.gain === null ? '' : `${mean(step.gain)} (${bounds(step.gain)})`,
          String(step.money ?? ''),
          step.costPerUnit === null ? '' : mean(step.costPerUnit),
          step.lastUnit[1]?.date ?? '',
          step.stopped.culprit?.thing.name ?? step.stopped.outcome,
        ]),
        ['step', 'change', 'rate', 'gain', 'money', 'unit', 'last', 'stops'].map((head) => ({ head })),
      ),
      '',
      ...results.frontier.map((f) => `${String(f.money)}: ${mean(f.throughput)} ${setText(f.made)}`),
      JSON.stringify(results.search),
      JSON.stringify(results.unpriced),
    ],
    width,
  );
}
