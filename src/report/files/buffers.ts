import type { BufferResults, LayoutResult } from '../../study/buffers/results.js';
import { CHARTS } from '../charts/of-study.js';
import { buffersPage } from '../page/studies/buffers.js';
import { lossesData, trialsData } from './constraint.js';
import { type FileColumn, type FileTable, fileTable, measure } from './csv.js';
import { studyFiles } from './study-files.js';

/** The report of shared-out places. */
export const buffersFiles = studyFiles<BufferResults>({
  charts: CHARTS.buffers,
  page: buffersPage,
  data: {
    'layouts.csv': layoutsData,
    'losses.csv': ({ constraint }) => lossesData(constraint),
    'trials.csv': ({ constraint }) => trialsData(constraint),
  },
  sheets: [],
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
