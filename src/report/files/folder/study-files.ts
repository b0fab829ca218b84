import { readFileSync } from 'node:fs';
import type { Scenario } from '../../../scenario/types/scenario.js';
import type { RouteMap } from '../../../study/route/types.js';
import { renderPng } from '../../canvas.js';
import type { Chart, DrawChart } from '../../charts/chart.js';
import { stableJson } from '../../json.js';
import { FORMS, type FormName, mapLayout } from '../../map/layout.js';
import { mapPng } from '../../map/png.js';
import type { Seen } from '../../map/seen.js';
import type { Drawing } from '../../map/shapes.js';
import { mapSvg } from '../../map/svg.js';
import { type PageContent, type Picture, pageWithMap, pageWithTryIt, renderPage } from '../../page/page.js';
import type { TryIt } from '../../page/try-it.js';
import { workbook } from '../../sheets/workbook.js';
import { csv, type FileTable } from './csv.js';
import { MissingLetters } from './missing-letters.js';

/** The files of a report by name, ready for `writeFolder`. */
export type Files = ReadonlyMap<string, string | Buffer>;

/** What the report of a study is made of. */
export interface StudyReport<Results> {
  /** Pictures by file name without `.png`, which stays the same where another picture is left out. */
  readonly charts: Readonly<Record<string, DrawChart<Results>>>;
  readonly page: (results: Results) => PageContent;
  /** CSV files by name; null leaves one out. */
  readonly data: Readonly<Record<string, (results: Results) => FileTable | null>>;
  /** Those of them that say more than any table of the page: they have a sheet too. */
  readonly sheets: readonly string[];
  /** What results.json and the page hold, where that is not all. */
  readonly kept?: (results: Results) => object;
}

/**
 * Every file of the report of a study: `results.json`, the charts that have something to show, `report.html`
 * with the same charts inside, the data, and `report.xlsx` with the tables of both. `notice` is given what
 * whoever asked for it should know, a line each.
 */
export function studyFiles<Results>({
  charts,
  page,
  data,
  sheets,
  kept = (results) => results as object,
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
    const json = stableJson(kept(results)),
      files = new Map<string, string | Buffer>([['results.json', json]]);
    for (const { name, png } of pictures) files.set(`${name}.png`, png);
    const content = page(results),
      tables = Object.entries(data).flatMap(([name, write]): [string, FileTable][] => {
        const table = write(results);
        return table === null ? [] : [[name, table]];
      });
    files.set('report.html', renderPage(content, pictures, { results: json, script: pageScript() }));
    for (const [name, table] of tables) files.set(name, csv(table));
    const beside = tables.filter(([name]) => sheets.includes(name));
    files.set('report.xlsx', await workbook(content, beside));
    return files;
  };
}

/** Built beside the program; from the sources, as in tests, it is that of the last build. */
const script = (name: string): string =>
  readFileSync(
    new URL(
      import.meta.url.endsWith('.ts') ? `../../../../dist/page/${name}` : `../page/${name}`,
      import.meta.url,
    ),
    'utf8',
  );
/** As it may stand in an element. */
const pageScript = (): string =>
  script('live.js').replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');

async function pictureOf(
  name: string,
  { alt, finding, how, width, height, configuration }: Chart,
  letters: MissingLetters,
): Promise<Picture & { readonly png: Buffer }> {
  const png = await renderPng(configuration, width, height, (text) => {
    letters.look(text);
  });
  return { name, alt, finding, how, png };
}

/** What a study has been told of a scenario, or has found of it, on a map of its route. */
export interface OnMap<Found> {
  readonly scenario: Scenario;
  readonly route: RouteMap;
  readonly seen: (found: Found) => Seen;
}

/**
 * The files of a report with a map of the route beside them; the page holds it too, across for a desk, down
 * for a phone, in columns for paper.
 */
export const withMap =
  <Found>(
    draw: (found: Found, notice?: (line: string) => void) => Promise<Files>,
    { scenario, route, seen }: OnMap<Found>,
  ): typeof draw =>
  async (found, notice) => {
    const files = await draw(found, notice),
      known = seen(found),
      layout = (form: FormName): Drawing => mapLayout(scenario, route, FORMS[form], known),
      wide = layout('screen'),
      maps = { wide: layout('page'), narrow: layout('phone'), paper: layout('paper') };
    return new Map([
      ...files,
      ['report.html', pageWithMap(String(files.get('report.html')), maps)],
      ['map.svg', mapSvg(wide)],
      ['map.png', await mapPng(wide)],
    ]);
  };

/** The files of a report whose page carries the scenario and the engine, for its readers' own changes. */
export const withTryIt =
  <Found>(
    draw: (found: Found, notice?: (line: string) => void) => Promise<Files>,
    tryIt: TryIt,
  ): typeof draw =>
  async (found, notice) => {
    const files = await draw(found, notice),
      page = pageWithTryIt(String(files.get('report.html')), tryIt, script('engine.js'));
    return new Map([...files, ['report.html', page]]);
  };
