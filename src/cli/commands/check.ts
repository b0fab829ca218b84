import { setFlagsFromString } from 'node:v8';
import { capacityJson, capacityTable } from '../../report/terminal/capacity.js';
import { capacity } from '../../study/capacity/capacity.js';
import type { CheckRequest } from '../arguments/request.js';
import { EXIT } from '../exit-code.js';
import type { ExitCode } from '../exit-code.js';
import { loadScenario, planned } from '../load.js';
import { print } from '../output.js';

// V8 is not to optimise what runs for a fraction of a second: an eighth off the time of `check`. Not for
// studies.
setFlagsFromString('--interrupt-budget=1000000');

/** `rateproof check`: capacity by arithmetic. */
export function check({ file, json }: CheckRequest): ExitCode {
  const { scenario, model, file: name } = loadScenario(file);
  const found = planned(file, () => capacity(model, scenario));
  print(
    json
      ? capacityJson(found, { name: scenario.name, file: name })
      : capacityTable(found, scenario.name, scenario.assumptions),
  );
  return EXIT.done;
}
