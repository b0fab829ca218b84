import { setFlagsFromString } from 'node:v8';
import { command } from '../arguments/command.js';
import { flag } from '../arguments/option.js';
import { FILE, INCLUDE_FROM } from '../arguments/options.js';
import { EXIT } from '../exit-code.js';
import { outputWidth, print, printJson } from '../output.js';

export const check = command({
  name: 'check',
  words: { file: FILE },
  summary: 'capacity by arithmetic',
  about: 'what each station, crew, lane and feeder could carry by arithmetic, without chance or blocking',
  examples: [
    ['rateproof check line.yaml', 'by arithmetic, at once: load of every station, crew, lane, feeder'],
    'rateproof check line.yaml --json > capacity.json',
  ],
  options: { includeFrom: INCLUDE_FROM, json: flag('print JSON instead of the table') },
  request: (given) => given,
  run: async ({ file, includeFrom, json }) => {
    // V8 is not to optimise what runs for a fraction of a second: an eighth off the time. Not for studies.
    setFlagsFromString('--interrupt-budget=1000000');
    const { linesIn, loadScenario, planned } = await import('../load.js');
    const { capacity } = await import('../../study/capacity/capacity.js');
    const { listedChanges } = await import('../../study/priced/listed.js');
    const { standstillWarnings } = await import('../../study/standstill/warnings.js');
    const { sayPath } = await import('../../scenario/file/problem.js');
    const { capacityJson, capacityTable } = await import('../../report/terminal/capacity.js');
    const { scenario, model, file: name } = loadScenario(file, includeFrom);
    const found = planned(file, () => capacity(model, scenario));
    const shapes = standstillWarnings(model, scenario),
      // Reads the file again.
      lineOf = shapes.length > 0 ? linesIn(file) : () => '',
      warnings = shapes.map(({ path, ...rest }) => ({ at: lineOf(path), path: sayPath(path), ...rest }));
    if (json) printJson(capacityJson(found, { name: scenario.name, file: name }, warnings));
    else
      print(
        capacityTable(
          found,
          scenario.name,
          scenario.assumptions,
          outputWidth(),
          listedChanges(scenario),
          warnings,
        ),
      );
    return EXIT.done;
  },
});
