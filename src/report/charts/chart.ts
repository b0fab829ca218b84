import type { ChartConfiguration, ChartOptions, Plugin } from 'chart.js';
import { count, intervalName } from '../../study/format.js';
import type { Results } from '../../study/simulate/results.js';
import { FONT_FAMILY } from '../canvas.js';
import { INK, LAYOUT, MUTED, SIZE } from '../style.js';
import { wrap } from '../text.js';

/** A picture that is ready to be drawn. Sizes are CSS pixels. */
export interface Chart {
  /** The finding in one sentence, also the title. */
  readonly finding: string;
  /** How it is drawn, and over what. */
  readonly how: string;
  /** For readers who do not see the picture: the finding and how it is drawn. */
  readonly alt: string;
  readonly width: number;
  readonly height: number;
  readonly configuration: ChartConfiguration;
}

/** Makes a picture, or null where the results have nothing for it (no inspection, no buffer). */
export type DrawChart<Of> = (results: Of) => Chart | null;

/** Values of one series with the way they are drawn. */
export type Dataset = ChartConfiguration['data']['datasets'][number];

const TITLE_LINE = SIZE.title * 1.25,
  HOW_LINE = SIZE.small * 1.35,
  PADDING = 16;

/**
 * What every chart is made from: finding, how it is drawn, height of the body below the titles, and the chart
 * itself.
 */
export interface Parts {
  readonly finding: string;
  readonly how: string;
  /** What is written in the picture itself, for those who do not see it. */
  readonly inside?: string;
  readonly bodyHeight: number;
  readonly type: ChartConfiguration['type'];
  readonly data: ChartConfiguration['data'];
  readonly scales: NonNullable<ChartOptions['scales']>;
  readonly options?: ChartOptions;
  readonly legend?: NonNullable<ChartOptions['plugins']>['legend'];
  readonly plugins?: readonly Plugin[];
}

/** Title, explanation and fonts around a chart. The picture grows with the lines that the titles need. */
export function chart(parts: Parts): Chart {
  const { width, hasTitles } = LAYOUT,
    padding = hasTitles ? PADDING : 2,
    titles = hasTitles ? titlesOf(parts, width - 2 * PADDING) : { height: 8, plugins: {} };
  return {
    finding: parts.finding,
    how: parts.how,
    alt: `${parts.finding}. Drawn: ${parts.how}${parts.inside === undefined ? '' : ` ${parts.inside}`}`,
    width,
    height: Math.ceil(2 * padding + titles.height + parts.bodyHeight),
    configuration: {
      type: parts.type,
      data: parts.data,
      plugins: [...(parts.plugins ?? [])],
      options: {
        ...parts.options,
        // Numbers at the axes as in the text, whatever the language of the machine.
        locale: 'en',
        font: { family: FONT_FAMILY, size: SIZE.text },
        color: INK,
        layout: { padding },
        scales: parts.scales,
        plugins: {
          ...titles.plugins,
          // A page has its own, which switches series on and off.
          legend: hasTitles && parts.legend !== undefined ? parts.legend : { display: false },
          tooltip: { enabled: false },
        },
      },
    },
  };
}

function titlesOf({ finding, how }: Parts, room: number) {
  const title = wrap(finding, room, SIZE.title, '600'),
    subtitle = wrap(how, room, SIZE.small);
  return {
    height: title.length * TITLE_LINE + subtitle.length * HOW_LINE + 18,
    plugins: {
      title: {
        display: true,
        text: title,
        align: 'start',
        color: INK,
        padding: { top: 0, bottom: 5 },
        font: { family: FONT_FAMILY, size: SIZE.title, weight: 600, lineHeight: 1.25 },
      },
      subtitle: {
        display: true,
        text: subtitle,
        align: 'start',
        color: MUTED,
        padding: { top: 0, bottom: 13 },
        font: { family: FONT_FAMILY, size: SIZE.small, weight: 'normal', lineHeight: 1.35 },
      },
    },
  } as const;
}

/** `95 % interval`: what an interval is called in pictures. */
export const intervalWords = (level: number): string => intervalName(level).replace('CI', 'interval');

/** `95 % interval of the mean, 40 builds`, or why there is none. */
export function intervalNote({ replications, level }: Pick<Results, 'replications' | 'level'>): string {
  return replications < 2
    ? 'no interval, as only 1 build was tried'
    : `${intervalWords(level)} of the mean, ${count(replications, 'build')}`;
}

/** The same for the head of a column: `(95 %)` or `(no interval)`. */
export const intervalHead = ({ replications, level }: Pick<Results, 'replications' | 'level'>): string =>
  replications < 2 ? '(no interval)' : `(${intervalWords(level).replace(' interval', '')})`;

const AT_TOP = { display: true, position: 'top', align: 'start', onClick: () => undefined } as const;

/** A box of each fill with its name. */
export const BOX_LEGEND = {
  ...AT_TOP,
  labels: {
    color: INK,
    boxWidth: 26,
    boxHeight: 13,
    padding: 12,
    font: { family: FONT_FAMILY, size: SIZE.small },
  },
} as const;

/** Marks about as large as in the plot; what has no name is left out. */
export const MARK_LEGEND = {
  ...AT_TOP,
  labels: {
    color: INK,
    usePointStyle: true,
    boxHeight: 8,
    padding: 14,
    font: { size: SIZE.small },
    filter: ({ text }: { text: string }) => text !== '',
  },
} as const;
