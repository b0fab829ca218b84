import { Chart } from 'chart.js/auto';
import type { Chart as Drawn } from '../report/charts/chart.js';
import { LAYOUT } from '../report/style.js';
import { unbroken } from '../report/unbroken.js';
import { partsOf } from './elements.js';
import { keysOf } from './keys.js';
import { showNumbers } from './numbers.js';
import { indexAt, labelAt, placeOf, placesOf, saidAt } from './points.js';

/** Rows that a long picture shows at first, and all that it can. */
const FEW = 10,
  ALL = LAYOUT.mostRows;

/** A picture of the page: drawn as wide as there is room, and told by mouse and keys. */
export class Picture {
  private live: Chart | undefined;
  private readonly ground: HTMLElement;
  private readonly how: HTMLElement;
  private readonly keys: HTMLElement;
  private readonly said: HTMLElement;
  private readonly numbers: HTMLDetailsElement;
  private readonly more: HTMLButtonElement;
  private readonly name: string;
  private isWhole = false;
  private at = -1;
  private width = 0;

  constructor(
    figure: HTMLElement,
    private readonly draw: () => Drawn | null,
  ) {
    const part = partsOf(figure, 'figure');
    this.name = figure.dataset['picture'] ?? '';
    this.ground = part('ground');
    this.how = part('how');
    this.keys = part('keys');
    this.said = part('said');
    this.numbers = part('numbers') as HTMLDetailsElement;
    this.more = part('more') as HTMLButtonElement;
    this.more.addEventListener('click', () => {
      this.isWhole = !this.isWhole;
      this.make(true);
    });
    this.ground.addEventListener('keydown', (event) => {
      this.walk(event);
    });
    this.numbers.addEventListener('toggle', () => {
      this.tell();
    });
  }

  /** Draws it, again where the room has changed; on paper of a width it shows what a page has room for. */
  make(anew = false, paper: number | null = null): void {
    const width = paper ?? this.ground.clientWidth,
      isWhole = this.isWhole && paper === null;
    if (width === 0 || (!anew && width === this.width)) return;
    this.width = width;
    Object.assign(LAYOUT, { width, hasTitles: false, mostRows: isWhole ? ALL : FEW, isCut: false });
    const drawn = this.draw();
    if (drawn === null) return;
    this.how.textContent = unbroken(drawn.how);
    this.more.hidden = !LAYOUT.isCut && !this.isWhole;
    this.more.textContent = this.isWhole ? `The ${FEW} that matter most` : 'All of them';
    this.live?.destroy();
    const canvas = document.createElement('canvas');
    canvas.setAttribute('aria-hidden', 'true');
    canvas.style.width = '100%';
    [canvas.width, canvas.height] = [width, drawn.height];
    this.ground.replaceChildren(canvas);
    this.live = this.drawOn(canvas, drawn);
    this.keys.replaceChildren(...keysOf(this.live));
    this.tell();
  }

  /** Its numbers, where somebody looks at them. */
  private tell(): void {
    if (this.numbers.open) showNumbers(this.numbers, this.name, () => this.live);
  }

  private drawOn(canvas: HTMLCanvasElement, { configuration }: Drawn): Chart {
    const { options } = configuration,
      axis = options?.interaction?.axis ?? options?.indexAxis ?? 'x';
    return new Chart(canvas, {
      ...configuration,
      options: {
        ...options,
        animation: false,
        responsive: false,
        devicePixelRatio: Math.max(2, window.devicePixelRatio),
        interaction: {
          mode: configuration.data.labels === undefined ? 'nearest' : 'index',
          intersect: false,
          axis,
        },
        plugins: {
          ...options?.plugins,
          tooltip: {
            enabled: true,
            displayColors: false,
            filter: (item, _, items) => item === items[0],
            callbacks: {
              title: ([item]) =>
                item === undefined
                  ? ''
                  : labelAt(item.chart, placeOf(item.chart, item.datasetIndex, item.dataIndex)),
              label: (item) => saidAt(item.chart, placeOf(item.chart, item.datasetIndex, item.dataIndex)),
            },
          },
        },
      },
    });
  }

  /** Arrow keys go from place to place; what stands there is shown and said. */
  private walk(event: KeyboardEvent): void {
    const chart = this.live,
      places = chart === undefined ? 0 : placesOf(chart),
      step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (chart === undefined || places === 0) return;
    if (event.key === 'Escape') {
      this.at = -1;
      chart.tooltip?.setActiveElements([], { x: 0, y: 0 });
      chart.update('none');
      return;
    }
    if (step === undefined) return;
    event.preventDefault();
    do this.at = (this.at + step + places) % places;
    while (saidAt(chart, this.at).length === 0 && this.at !== 0);
    const elements = chart.data.datasets.flatMap((_, datasetIndex) => {
      const index = indexAt(chart, datasetIndex, this.at);
      return index >= 0 && chart.isDatasetVisible(datasetIndex) ? [{ datasetIndex, index }] : [];
    });
    const [first] = elements.map(({ datasetIndex, index }) => chart.getDatasetMeta(datasetIndex).data[index]);
    chart.tooltip?.setActiveElements(elements, { x: first?.x ?? 0, y: first?.y ?? 0 });
    chart.update('none');
    this.said.textContent = [labelAt(chart, this.at), ...saidAt(chart, this.at)].join('. ');
  }
}
