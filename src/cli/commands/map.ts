import { existsSync, lstatSync } from 'node:fs';
import type { Model } from '../../flow/model/model.js';
import type { withMap } from '../../report/files/folder/study-files.js';
import type { Seen } from '../../report/map/seen.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { command } from '../arguments/command.js';
import type { Reader } from '../arguments/option.js';
import { flag, optional, withDefault } from '../arguments/option.js';
import { FILE, INCLUDE_FROM } from '../arguments/options.js';
import { oneOf, path, reader, wholeNumber } from '../arguments/readers.js';
import { EXIT } from '../exit-code.js';
import { writeFile } from '../files.js';
import { printSvg, say } from '../output.js';
import { UsageError } from '../usage-error.js';

/** Narrowest and widest map, CSS pixels. */
const LEAST = 320,
  MOST = 4000;

const picture: Reader<string> = (text, option) => {
  const named = reader(
    'a file that ends in .svg or .png',
    (of) => `for example ${of} map.svg`,
    (name) => (/\.(svg|png)$/i.test(name) ? name : undefined),
  )(text, option);
  return path(named, option);
};

export const map = command({
  name: 'map',
  words: { file: FILE },
  summary: 'the route as a strip, to check a scenario by looking',
  about:
    'draws the route of a scenario as a strip: plants, stations, feeders, lanes, send-backs; runs nothing',
  examples: [
    ['rateproof map line.yaml --out line.png', 'the route as a strip, to check a scenario by looking'],
    'rateproof map line.yaml > line.svg',
    'rateproof map line.yaml --for paper --out line.svg',
  ],
  options: {
    includeFrom: INCLUDE_FROM,
    out: optional('picture to write, .svg or .png, instead of printing SVG', picture),
    replace: flag('write over an existing picture', {
      option: 'out',
      inWords: '--out with the picture to replace',
      hint: 'add --out FILE',
    }),
    for: withDefault(
      'screen (across), phone (down the page) or paper (A4)',
      'screen',
      oneOf('screen', 'phone', 'paper'),
    ),
    width: optional(
      `width in pixels instead, ${LEAST} to ${MOST}; below 900 it runs down`,
      wholeNumber(LEAST, MOST),
    ),
  },
  request: (given) => given,
  run: async ({ file, includeFrom, out, replace, for: form, width }) => {
    if (out !== undefined) checkFree(out, replace);
    const { loadScenario, planned } = await import('../load.js');
    const { routeMap } = await import('../../study/route/route.js');
    const { formOf, FORMS, mapLayout } = await import('../../report/map/layout.js');
    const { mapSvg } = await import('../../report/map/svg.js');
    const { scenario, model } = loadScenario(file, includeFrom),
      route = planned(file, () => routeMap(scenario, model)),
      drawing = mapLayout(scenario, route, width === undefined ? FORMS[form] : formOf(width));
    if (out === undefined) {
      printSvg(mapSvg(drawing));
      return EXIT.done;
    }
    if (!/\.png$/i.test(out)) {
      writeFile(out, mapSvg(drawing));
      return EXIT.done;
    }
    const { mapPng } = await import('../../report/map/png.js');
    const { MissingLetters } = await import('../../report/files/folder/missing-letters.js');
    const letters = new MissingLetters();
    writeFile(
      out,
      await mapPng(drawing, (text) => {
        letters.look(text);
      }),
    );
    const notice = letters.notice();
    if (notice !== undefined) say(notice);
    return EXIT.done;
  },
});

/** What writes the files of a report, with a map of the scenario of the study in it. */
export async function onMap<Found>(
  draw: Parameters<typeof withMap<Found>>[0],
  scenario: Scenario,
  model: Model,
  seen: (found: Found) => Seen,
): Promise<typeof draw> {
  const { routeMap } = await import('../../study/route/route.js'),
    { withMap } = await import('../../report/files/folder/study-files.js');
  return withMap(draw, { scenario, route: routeMap(scenario, model), seen });
}

/** Now, before anything is drawn: what stands there is somebody's own unless it is a picture to replace. */
function checkFree(out: string, replace: boolean): void {
  if (!existsSync(out)) return;
  if (!lstatSync(out).isFile())
    throw new UsageError(
      `expected ${out} to be a file, got a folder or a link`,
      'choose another name with --out',
    );
  if (!replace)
    throw new UsageError(
      `expected ${out} to be free, got an existing file`,
      'choose another name with --out, or write over it with --replace',
    );
}
