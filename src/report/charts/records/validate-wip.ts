import { capital, exact, number } from '../../../study/format.js';
import type { Compared, ValidateResults } from '../../../study/validate/results.js';
import { isJudged, positionOf } from '../../first/records/validate-told.js';
import type { Chart } from '../chart.js';
import { foremost } from '../foremost.js';
import { logPlots } from './plots.js';

/** Height of a plot, and of all of them at most, CSS pixels. */
const HEIGHT = 150,
  ALL = 840;

/** Units at each site and on each lane by day, the log in the band of the model, one plot under the other. */
export function wipInBands(results: ValidateResults): Chart | null {
  const { wipByDay, byDay, replications, period } = results,
    measures = results.measures.filter(({ topic }) => topic === 'units inside');
  const { shown, note } = foremost(
    wipByDay,
    ({ place }) => away(measures.find((each) => each.of === place)),
    'sites and lanes',
    'nearest to an end of their bands',
  );
  if (shown.length === 0 || byDay.length < 2) return null;
  return logPlots({
    finding: finding(measures),
    how:
      `Mean units by day. Line: log; dashed: middle of the model; band: least to most of its ` +
      `${replications} builds.${note}`,
    first: period.from,
    when: 'middle of day',
    of: `${replications} of ${replications} builds`,
    plots: shown.map(({ place, kind, ...values }) => ({
      name: kind === 'lane' ? `${place} (lane)` : place,
      ...values,
    })),
    height: Math.min(HEIGHT * shown.length, ALL),
  });
}

const away = (measure: Compared | undefined): number =>
  measure !== undefined && isJudged(measure) ? Math.abs(positionOf(measure)) : -1;

function finding(measures: readonly Compared[]): string {
  const judged = measures.filter(isJudged),
    [first, ...others] = judged.filter(({ agrees }) => !agrees).toSorted((a, b) => away(b) - away(a));
  if (first === undefined)
    return judged.length === 1
      ? `Units inside ${judged[0]?.of ?? ''} agree on average`
      : `Units inside agree on average at all ${exact(judged.length)} sites and lanes`;
  return (
    `${capital(first.of)} has ${number(first.real)} units in the log, ` +
    `${number(first.simulated.middle)} in the model` +
    (others.length > 0 ? `; ${exact(others.length)} more do not agree` : '')
  );
}
