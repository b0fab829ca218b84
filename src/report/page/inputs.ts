import { exact, intervalName, number } from '../../study/format.js';
import type { Results } from '../../study/simulate/results.js';
import type { InputsMeasure } from '../../study/uncertain/results.js';
import { columns, type PageTable } from '../columns.js';
import { inputsTold } from '../first/lines/inputs.js';

const NAMES = { shipped: 'Shipped', 'lead time': 'Mean lead time', 'last unit': 'Last unit out' } as const;

/** With what is not known of the measured inputs; no rows where they are as written. */
export function inputsTable({ inputs, level }: Results): PageTable {
  return {
    id: 'inputs',
    title: 'With inputs that are not known for certain',
    note:
      inputs === undefined
        ? ''
        : `${exact(inputs.draws)} draws of the measured inputs, each in two builds; ${intervalName(level)} ` +
          `covers chance and inputs, and in the next column chance alone. ${inputsTold(inputs)}`,
    ...columns(inputs?.measures ?? [], [
      ['What', ({ id, unit }) => (id === 'last unit' ? NAMES[id] : `${NAMES[id]}, ${unit}`)],
      ['Mean', (measure) => meanText(measure)],
      ['Inputs and chance', (measure) => between(measure)],
      ['Chance alone', ({ chanceAlone, id }) => (id === 'last unit' ? '' : span(chanceAlone))],
      ['Input, % of that', ({ inputOfInterval }) => share(inputOfInterval)],
      ['Input, % in one build', ({ inputOfReplication }) => share(inputOfReplication)],
    ]),
  };
}

/** What was drawn, and what stayed as written. */
export function inputsDrawn({ inputs }: Results): PageTable {
  return {
    id: 'inputs-drawn',
    title: 'Inputs drawn anew',
    note: 'Times: as many as were measured are drawn and fitted again; chances by their counts.',
    ...columns(inputs?.drawn ?? [], [
      ['What', 'words'],
      ['Drawn as', 'kind'],
      ['Values measured', 'n'],
      ['In the file', 'path'],
    ]),
  };
}

const meanText = ({ mean, dates }: InputsMeasure): string => dates?.mean ?? number(mean);
const between = ({ low, high, dates }: InputsMeasure): string =>
  dates?.low != null && dates.high !== null
    ? `${dates.low} to ${dates.high}`
    : span(low === null || high === null ? null : { low, high });
const span = (of: { readonly low: number; readonly high: number } | null): string =>
  of === null ? 'no interval' : `${number(of.low)} to ${number(of.high)}`;
const share = (of: InputsMeasure['inputOfInterval']): string =>
  of === null
    ? ''
    : `${number(Math.round(100 * of.share))} (${number(Math.round(100 * of.low))} to ` +
      `${number(Math.round(100 * of.high))})`;

/** A line for each measure, for the terminal. */
export const inputsRows = ({ inputs }: Results): [what: string, value: string, interval: string][] =>
  (inputs?.measures ?? []).map((measure) => [
    `${NAMES[measure.id].toLowerCase()}${measure.id === 'last unit' ? '' : `, ${measure.unit}`}`,
    meanText(measure),
    between(measure),
  ]);
