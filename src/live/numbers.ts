import type { Chart } from 'chart.js/auto';
import { labelAt, placesOf, seriesOf } from './points.js';

const cell = (kind: 'th' | 'td', text: string, scope?: string): HTMLElement => {
  const element = document.createElement(kind);
  element.textContent = text;
  if (scope !== undefined) element.setAttribute('scope', scope);
  return element;
};

/** The numbers of a picture as a table. */
export function tableOf(chart: Chart): HTMLTableElement {
  const table = document.createElement('table'),
    series = seriesOf(chart),
    head = table.createTHead().insertRow(),
    body = table.createTBody();
  head.append(cell('td', ''), ...series.map(({ name }) => cell('th', name, 'col')));
  for (let index = 0; index < placesOf(chart); index++) {
    const texts = series.map(({ textAt }) => textAt(index));
    if (texts.every((text) => text === null)) continue;
    body
      .insertRow()
      .append(cell('th', labelAt(chart, index), 'row'), ...texts.map((text) => cell('td', text ?? '')));
  }
  return table;
}
