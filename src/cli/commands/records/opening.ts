import { existsSync } from 'node:fs';
import { count } from '../../../study/format.js';
import { command } from '../../arguments/command.js';
import { flag, optional } from '../../arguments/option.js';
import { FILE, INCLUDE_FROM } from '../../arguments/options.js';
import { path } from '../../arguments/readers.js';
import { EXIT } from '../../exit-code.js';
import { writeFile } from '../../files.js';
import { print, say } from '../../output.js';
import { UsageError } from '../../usage-error.js';
import { AT, LOG, NAMES } from './options.js';

export const opening = command({
  name: 'opening',
  words: { file: FILE, log: LOG },
  summary: 'where the floor stands, from its log, as a part of a scenario',
  about: 'reads a log up to a moment and writes the opening of the scenario: which unit stands where',
  examples: [
    [
      'rateproof opening line.yaml floor.csv --at 2027-08-16 --out opening.yaml',
      'where the floor stands, as a part of a scenario',
    ],
    'rateproof opening line.yaml floor.csv --at 2027-08-16T06:00+02:00 --names names.yaml',
  ],
  options: {
    includeFrom: INCLUDE_FROM,
    at: AT,
    names: NAMES,
    out: optional('file to write instead of printing', path),
    replace: flag('write over an existing file', {
      option: 'out',
      inWords: '--out with the file to replace',
      hint: 'add --out FILE',
    }),
  },
  request: (given) => given,
  run: async ({ file, log, includeFrom, at, names, out, replace }) => {
    if (out !== undefined && existsSync(out) && !replace)
      throw new UsageError(`expected ${out} to be free, got a file`, 'choose another name, or add --replace');
    const { loadScenario } = await import('../../load.js');
    const { logSource, withLog } = await import('./floor-log.js');
    const { readNames } = await import('../../records/names-file.js');
    const { floorAt } = await import('../../../study/validate/start/floor-at.js');
    const { refusedIn, restOf } = await import('../../../study/forecast/rest.js');
    const { standingOrder } = await import('../../../study/validate/start/standing-orders.js');
    const { openingPart } = await import('../../../report/terminal/records/opening.js');
    const { scenario, model } = loadScenario(file, includeFrom),
      source = logSource(log, scenario, names === undefined ? undefined : readNames(names)),
      floor = await withLog(file, log, () => floorAt(source, { scenario, model }, at)),
      standing = floor.opening.placed.map((unit) => standingOrder(unit, model)),
      notes = [...floor.notes, ...refusedIn(restOf(floor, model))],
      text = openingPart({ ...floor, notes }, source.file, standing);
    if (out === undefined) print(text.trimEnd());
    else {
      writeFile(out, text);
      say(`${count(floor.opening.placed.length, 'unit')} on the floor on ${floor.date}: ${out}`);
    }
    return EXIT.done;
  },
});
