import { renderPng } from '../canvas.js';
import type { Chart, DrawChart } from '../charts/chart.js';
import { stableJson } from '../json.js';
import { mapPng } from '../map/png.js';
import type { Drawing } from '../map/shapes.js';
import { mapSvg } from '../map/svg.js';
import { type PageContent, type Picture, renderPage } from '../page/page.js';
import { MissingLetters } from './missing-letters.js';

/** The files of a report by name, ready for `writeFolder`. */
export type Files = ReadonlyMap<string, string | Buffer>;

/** What the report of a study is made of. */
export interface StudyReport<Results> {
  /** Pictures by file name without `.png`, which stays the same where another picture is left out. */
  readonly charts: Readonly<Record<string, DrawChart<Results>>>;
  readonly page: (results: Results) => PageContent;
  /** Further files by name; null leaves one out. */
  readonly data: Readonly<Record<string, (results: Results) => string | null>>;
}

/**
 * Every file of the report of a study: `results.json`, the charts that have something to show, `report.html`
 * with the same charts inside, and the data. `notice` is given what whoever asked for it should know, a line
 * each.
 */
export function studyFiles<Results>({
  charts,
  page,
  data,
}: StudyReport<Results>): (results: Results, notice?: (line: string) => void) => Promise<Files> {
  return async (results, notice) => {
    const letters = new MissingLetters();
    const pictures = await Promise.all(
      Object.entries(charts).flatMap(([name, draw]) => {
        const chart = draw(results);
        return chart === null ? [] : [pictureOf(name, chart, letters)];
      }),
    );
    const missing = letters.notice();
    if (missing !== undefined) notice?.(missing);
    const files = new Map<string, string | Buffer>([['results.json', stableJson(results)]]);
    for (const { name, png } of pictures) files.set(`${name}.png`, png);
    files.set('report.html', renderPage(page(results), pictures));
    for (const [name, write] of Object.entries(data)) {
      const text = write(results);
      if (text !== null) files.set(name, text);
    }
    return files;
  };
}

async function pictureOf(
  name: string,
  { alt, width, height, configuration }: Chart,
  letters: MissingLetters,
): Promise<Picture> {
  const png = await renderPng(configuration, width, height, (text) => {
    letters.look(text);
  });
  return { name, alt, width, height, png };
}

/** The files of a report with a map of the route in two forms beside them. */
export const withMap =
  <Found>(
    draw: (found: Found, notice?: (line: string) => void) => Promise<Files>,
    layout: (found: Found) => Drawing,
  ): typeof draw =>
  async (found, notice) => {
    const files = await draw(found, notice),
      drawing = layout(found);
    return new Map([...files, ['map.svg', mapSvg(drawing)], ['map.png', await mapPng(drawing)]]);
  };
