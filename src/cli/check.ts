import './short-run.js';
import { capacityJson, capacityTable } from '../report/capacity-table.js';
import { capacity } from '../study/capacity.js';
import { EXIT, type ExitCode } from './exit-code.js';
import { loadScenario, planned } from './load.js';
import { print } from './output.js';
import type { CheckRequest } from './request.js';

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
