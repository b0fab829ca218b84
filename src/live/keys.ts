import type { Chart } from 'chart.js/auto';
import { seriesOf } from './points.js';

/** Marks of pictures of points: state by shape as well as by colour. */
const SHAPES: Readonly<Record<string, (context: CanvasRenderingContext2D, x: number, y: number) => void>> = {
  circle: (context, x, y) => {
    context.beginPath();
    context.arc(x, y, 5, 0, 2 * Math.PI);
    context.fill();
  },
  crossRot: (context, x, y) => {
    context.beginPath();
    for (const [from, to] of [
      [-4, 4],
      [4, -4],
    ] as const) {
      context.moveTo(x + from, y - 4);
      context.lineTo(x + to, y + 4);
    }
    context.stroke();
  },
  triangle: (context, x, y) => {
    context.beginPath();
    context.moveTo(x, y - 5);
    context.lineTo(x + 5, y + 4);
    context.lineTo(x - 5, y + 4);
    context.closePath();
    context.fill();
    context.stroke();
  },
};

/** A sample of how a series is drawn. */
function sample(chart: Chart, set: number): HTMLCanvasElement {
  const canvas = document.createElement('canvas'),
    scale = 2,
    [width, height] = [28, 14];
  [canvas.width, canvas.height] = [width * scale, height * scale];
  canvas.style.width = `${width}px`;
  canvas.style.height = `${height}px`;
  const context = canvas.getContext('2d'),
    dataset = chart.data.datasets[set] as unknown as Readonly<Record<string, unknown>>;
  if (context === null) return canvas;
  context.scale(scale, scale);
  const paint = (value: unknown): CanvasPattern | string =>
    value instanceof CanvasPattern || typeof value === 'string' ? value : '#565656';
  const shape = dataset['pointStyle'];
  if (typeof shape === 'string' && shape in SHAPES) {
    context.fillStyle = paint(dataset['backgroundColor']);
    context.strokeStyle = paint(dataset['borderColor']);
    context.lineWidth = 2;
    SHAPES[shape]?.(context, width / 2, height / 2);
    return canvas;
  }
  const isLine = chart.getDatasetMeta(set).type === 'line';
  if (isLine) {
    context.strokeStyle = paint(dataset['borderColor']);
    context.lineWidth = Number(dataset['borderWidth'] ?? 2);
    context.setLineDash((dataset['borderDash'] as number[] | undefined) ?? []);
    context.beginPath();
    context.moveTo(0, height / 2);
    context.lineTo(width, height / 2);
    context.stroke();
  } else {
    const fill = dataset['backgroundColor'];
    context.fillStyle = paint(Array.isArray(fill) ? fill[0] : fill);
    context.fillRect(0.5, 0.5, width - 1, height - 1);
    context.strokeStyle = paint(dataset['borderColor'] ?? fill);
    context.strokeRect(0.5, 0.5, width - 1, height - 1);
  }
  return canvas;
}

/** More series than a reader would pick from; such pictures name them in themselves. */
const MOST = 10;

/** Buttons that switch series on and off; none where there is only one. */
export function keysOf(chart: Chart): HTMLElement[] {
  // Panels name their lines themselves.
  if (chart.options.interaction?.axis === 'xy') return [];
  // What is not painted gives the numbers of marks that the picture draws itself.
  const series = seriesOf(chart).filter(
    ({ sets: [set = 0] }) => chart.data.datasets[set]?.backgroundColor !== 'transparent',
  );
  const panels = new Set(series.flatMap(({ sets }) => sets.map((set) => chart.getDatasetMeta(set).yAxisID)));
  // Panels have their names in them.
  if (series.length < 2 || series.length > MOST || panels.size > 1) return [];
  return series.map(({ name, sets }) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.setAttribute('aria-pressed', 'true');
    button.append(sample(chart, sets[0] ?? 0), name);
    button.addEventListener('click', () => {
      const isOn = button.getAttribute('aria-pressed') !== 'true';
      button.setAttribute('aria-pressed', String(isOn));
      for (const set of sets) chart.setDatasetVisibility(set, isOn);
      chart.update('none');
    });
    return button;
  });
}
