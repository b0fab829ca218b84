import { roughPercent, roughTime } from '../../../study/chances/measured.js';
import type { Bounded } from '../../../study/chances/two-looks.js';
import { count, exact, number } from '../../../study/format.js';
import {
  type ChancesResults,
  type LearningResults,
  type MeasuredResults,
  partsOf,
  type StopsResults,
} from '../../../study/measured/results.js';
import { nameOf } from '../../files/fit-measured.js';
import { joined, type Piece } from '../lines.js';
import { tableOf } from '../table.js';
import { oddRows } from './odd-rows.js';

/** A table of what was found, then what is to be known of it, and of the rows. */
export function measuredTable(results: MeasuredResults, width?: number): string {
  const { rows, used, table, oddities, notes } = results,
    all = partsOf(results),
    placed = all.reduce((sum, { entries }) => sum + entries.length, 0);
  return joined(
    [
      `${headline(results)} in ${table}` +
        (used < rows ? `; ${count(rows - used, 'row')} of ${count(rows, 'row')} left out` : ''),
      '',
      ...tableIn(results),
      '',
      ...all.flatMap((part) => [...part.told, ...part.notWritten].map((told) => `${nameOf(part)}: ${told}`)),
      ...notes,
      ...oddRows(oddities),
      `${count(placed, 'value')} for the scenario`,
    ],
    width,
  );
}

function headline(results: MeasuredResults): string {
  switch (results.of) {
    case 'chances':
      return `What inspections found of ${count(results.chances.length, 'defect')}`;
    case 'learning':
      return `Learning of ${count(results.steps.length, 'step')}`;
    case 'stops':
      return `Stops of ${count(results.stations.length, 'station')}`;
  }
}

function tableIn(results: MeasuredResults): Piece[] {
  switch (results.of) {
    case 'chances':
      return chancesTable(results);
    case 'learning':
      return learningTable(results);
    case 'stops':
      return stopsTable(results);
  }
}

const percent = (share: Bounded | null): string =>
    share === null
      ? ''
      : `${roughPercent(share.value)} (${roughPercent(share.low)} to ${roughPercent(share.high)})`,
  time = (minutes: Bounded | null): string =>
    minutes === null
      ? ''
      : `${roughTime(minutes.value)} (${roughTime(minutes.low)} to ${roughTime(minutes.high)})`,
  right = 'right' as const;

function chancesTable({ chances }: ChancesResults): Piece[] {
  const rows = chances.flatMap(({ defect, madeAt, made, looks, found }) =>
    looks.map((look, i) => ({
      ...look,
      defect,
      madeAt,
      by: i === 0 ? found?.by : null,
      made: i === 0 ? made : null,
    })),
  );
  return [
    tableOf(rows, [
      { head: 'defect', cell: ({ defect }) => defect },
      { head: 'made at', cell: ({ madeAt }) => madeAt ?? '' },
      { head: 'looked at', cell: ({ step }) => step },
      { head: 'units', align: right, cell: ({ found }) => exact(found.all.n) },
      { head: 'found', align: right, cell: ({ found }) => exact(found.all.count) },
      {
        head: 'share (95 %)',
        cell: ({ found: { all } }) =>
          percent({ value: all.share, low: all.low, high: all.high, level: all.level }),
      },
      { head: 'by', cell: ({ by }) => by?.option ?? '' },
      { head: 'finds of what is there', cell: ({ finds }) => percent(finds) },
      { head: 'made on', cell: ({ made }) => percent(made) },
    ]),
  ];
}

function learningTable({ steps }: LearningResults): Piece[] {
  return [
    tableOf(steps, [
      { head: 'step', cell: ({ step }) => step },
      { head: 'times', align: right, cell: ({ n }) => String(n) },
      { head: 'units', cell: ({ units }) => `${units.from} to ${units.to}` },
      { head: 'learns', cell: ({ learns, rate }) => (rate === null ? 'not told' : learns ? 'yes' : 'no') },
      { head: 'a doubling leaves (95 %)', cell: ({ rate }) => percent(rate) },
      { head: 'floor', cell: ({ floor }) => (floor === null ? '' : roughPercent(floor)) },
      { head: 'plain mean, min', align: right, cell: ({ mean }) => number(mean) },
      { head: 'cv', align: right, cell: ({ cv }) => (cv === null ? '' : number(cv)) },
      { head: 'distribution', cell: ({ distribution }) => distribution },
    ]),
  ];
}

function stopsTable({ stations }: StopsResults): Piece[] {
  return [
    tableOf(stations, [
      { head: 'station', cell: ({ station }) => station },
      { head: 'failures', align: right, cell: ({ failures }) => String(failures) },
      { head: 'mean time to failure (95 %)', cell: ({ toFailure }) => time(toFailure.mean) },
      { head: 'as', cell: ({ toFailure }) => toFailure.chosen },
      { head: 'repairs', align: right, cell: ({ toRepair }) => String(toRepair.ended) },
      { head: 'mean time to repair (95 %)', cell: ({ toRepair }) => time(toRepair.mean) },
      { head: 'as', cell: ({ toRepair }) => toRepair.chosen },
    ]),
  ];
}
