import type { Chart } from 'chart.js/auto';
import { isTime } from '../report/unbroken.js';
import { tenDigits } from '../study/ten-digits.js';
import { toolsOf } from './copying.js';
import { indexAt, labelAt, placesOf, type Series, seriesOf } from './points.js';

const cell = (kind: 'th' | 'td', text: string, scope?: string): HTMLElement => {
  const element = document.createElement(kind);
  element.textContent = text;
  if (scope !== undefined) element.setAttribute('scope', scope);
  if (isTime(text)) element.className = 'time';
  return element;
};

/** The places of a picture at which a series has a value. */
const filledOf = (chart: Chart, series: readonly Series[]): number[] =>
  Array.from({ length: placesOf(chart) }, (_, index) => index).filter((index) =>
    series.some(({ textAt }) => textAt(index) !== null),
  );

/** The numbers of a picture as a table. */
function tableOf(chart: Chart): HTMLTableElement {
  const table = document.createElement('table'),
    series = seriesOf(chart),
    head = table.createTHead().insertRow(),
    body = table.createTBody();
  head.append(cell('td', ''), ...series.map(({ name }) => cell('th', name, 'col')));
  for (const index of filledOf(chart, series))
    body
      .insertRow()
      .append(
        cell('th', labelAt(chart, index), 'row'),
        ...series.map(({ textAt }) => cell('td', textAt(index) ?? '')),
      );
  return table;
}

/** The same for whoever copies it: of each series the value, or both ends of it, and its interval. */
function cellsOf(chart: Chart): { head: string[]; rows: (string | number)[][] } {
  const series = seriesOf(chart),
    columns = series.flatMap(({ name, sets }) =>
      sets.map((set, at) => ({ set, title: at === 0 ? name : (chart.data.datasets[set]?.label ?? name) })),
    );
  return {
    head: ['', ...columns.map(({ title }) => title)],
    rows: filledOf(chart, series).map((index) => [
      labelAt(chart, index),
      ...columns.map(({ set }) => bare(chart.data.datasets[set]?.data[indexAt(chart, set, index)])),
    ]),
  };
}

/** A number with 10 digits, as in the files; both ends of a bar as words; '' for nothing. */
function bare(value: unknown): string | number {
  if (typeof value === 'number') return Number.isFinite(value) ? tenDigits(value) : '';
  if (Array.isArray(value)) return value.map(bare).join(' to ');
  return typeof value === 'object' && value !== null && 'y' in value ? bare(value.y) : '';
}

/** Puts the numbers of a picture, and the buttons that copy them, into its fold. */
export function showNumbers(fold: HTMLElement, picture: string, chart: () => Chart | undefined): void {
  const drawn = chart(),
    scroll = fold.querySelector('.scroll');
  if (drawn === undefined || scroll === null) return;
  scroll.replaceChildren(tableOf(drawn));
  if (fold.querySelector('.tools') !== null) return;
  scroll.before(toolsOf(`numbers of ${picture}`, `${picture}.csv`, () => cellsOf(chart() ?? drawn)));
}
