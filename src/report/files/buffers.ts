import type { PlacePoint } from '../../study/buffers/around/results.js';
import type { CaseLayout, InCase } from '../../study/buffers/cases/results.js';
import type { BufferResults, LayoutResult } from '../../study/buffers/results.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { caseRole } from '../buffers.js';
import { CHARTS } from '../charts/of-study.js';
import { buffersPage } from '../page/studies/buffers.js';
import { lossesData, trialsData } from './constraint.js';
import { estimate, type FileColumn, type FileTable, fileTable, measure } from './folder/csv.js';
import { studyFiles } from './folder/study-files.js';

/** The report of shared-out places. */
export const buffersFiles = studyFiles<BufferResults>({
  charts: CHARTS.buffers,
  page: buffersPage,
  data: {
    'layouts.csv': layoutsData,
    'around.csv': aroundData,
    'cases.csv': casesData,
    'losses.csv': ({ constraint }) => lossesData(constraint),
    'trials.csv': ({ constraint }) => trialsData(constraint),
  },
  sheets: ['around.csv', 'cases.csv'],
});

/**
 * One row a layout: what it is, places in all, throughput with its interval, then the places of every spot.
 */
function layoutsData({ chosen, best, present, selection, curve, spots }: BufferResults): FileTable {
  type Row = LayoutResult & { readonly standing: string };
  const rows: readonly Row[] = [
    { ...chosen, standing: 'chosen' },
    ...(best === null ? [] : [{ ...best, standing: 'best' }]),
    { ...present, standing: 'as it is' },
    ...selection.others,
    ...curve.map((point) => ({ ...point, standing: 'curve' })),
  ];
  return fileTable(rows, [
    ['layout', 'standing'],
    ['places', 'total'],
    ...measure('rate', ({ rate }: Row) => rate),
    ['replications', ({ rate }) => rate.n],
    ...spots.map(({ name }, s): FileColumn<Row> => [`places at ${name}`, ({ places }) => places[s]]),
  ]);
}

/** One row a number of places at a spot, all others as chosen; null where nothing was looked at. */
function aroundData({ placeByPlace, cheapest }: BufferResults): FileTable | null {
  if (placeByPlace === null) return null;
  type Row = Omit<PlacePoint, 'more' | 'cost' | 'standing'> & {
    readonly spot: string;
    readonly more: Estimate | null;
    readonly cost: Estimate | null;
    readonly standing: string;
  };
  const rows = placeByPlace.spots.flatMap(({ name, chosen, points }): Row[] => {
    const itself = { places: chosen, by: 0, rate: placeByPlace.rate, standing: 'chosen', nothingIn: 0 };
    return [{ ...itself, more: null, cost: null }, ...points]
      .map((point) => ({ ...point, spot: name }))
      .sort((a, b) => a.by - b.by);
  });
  return fileTable(rows, [
    ['spot', 'spot'],
    ['places', 'places'],
    ['places_more', 'by'],
    ['rate_mean', 'rate'],
    ...estimate('rate_more', ({ more }: Row) => more),
    ['standing', 'standing'],
    ['nothing_in', 'nothingIn'],
    ...(cheapest === null ? [] : estimate('cost_more', ({ cost }: Row) => cost, 'money')),
  ]);
}

/** One row a layout and case; null where one layout is asked for one scenario. */
function casesData({ cases: over, spots }: BufferResults): FileTable | null {
  if (over === undefined) return null;
  type Row = InCase & { readonly layout: CaseLayout; readonly name: string };
  const rows = over.layouts.flatMap((layout) =>
    layout.cases.map((each, c): Row => ({ ...each, layout, name: over.cases[c]?.name ?? 'as it is' })),
  );
  return fileTable(rows, [
    ['layout', ({ layout }) => caseRole(layout, over)],
    ['places', ({ layout }) => layout.total],
    ['case', 'name'],
    ['rate_mean', 'rate'],
    ['lost', 'loss', 'share'],
    ...estimate('lost_more', ({ more }: Row) => more, 'share'),
    ['replications', () => over.replications],
    ...spots.map(({ name }, s): FileColumn<Row> => [`places at ${name}`, ({ layout }) => layout.places[s]]),
  ]);
}
