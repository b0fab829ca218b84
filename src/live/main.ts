import type { DrawChart } from '../report/charts/chart.js';
import { CHARTS } from '../report/charts/of-study.js';
import type { Results } from '../study/simulate/results.js';
import { unpacked } from './data.js';
import { putLevers } from './levers/section.js';
import { Picture } from './picture.js';

/** Room for a picture on paper, CSS pixels. */
const PAPER = 720;

/** Draws the pictures of the page from the results that it carries. */
async function begin(): Promise<void> {
  const results = JSON.parse(await unpacked('results')) as { readonly study: keyof typeof CHARTS },
    charts = CHARTS[results.study] as Readonly<Record<string, DrawChart<unknown>>>;
  const pictures = [...document.querySelectorAll<HTMLElement>('figure[data-picture]')].flatMap((figure) => {
    const draw = charts[figure.dataset['picture'] ?? ''];
    return draw === undefined ? [] : [new Picture(figure, () => draw(results))];
  });
  const make = (): void => {
    for (const picture of pictures) picture.make();
  };
  make();
  let waiting = 0;
  window.addEventListener('resize', () => {
    cancelAnimationFrame(waiting);
    waiting = requestAnimationFrame(make);
  });
  window.addEventListener('beforeprint', () => {
    for (const picture of pictures) picture.make(true, PAPER);
  });
  window.addEventListener('afterprint', make);
  if (results.study === 'simulate') await putLevers(results as unknown as Results);
  document.documentElement.dataset['drawn'] = 'yes';
}

void begin();
