import system from 'node:path';
import { knownOf } from '../../../records/log/known.js';
import type { Mapping } from '../../../records/names.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import type { LogSource } from '../../../study/validate/types.js';
import { inFront } from '../../front/in-front.js';
import { readLogFile } from '../../records/log.js';

/** A floor log in a file, read against a scenario; it is read more than once. */
export const logSource = (path: string, scenario: Scenario, names: Mapping | undefined): LogSource => ({
  file: system.basename(path),
  read: (take) => {
    inFront().tell({ kind: 'busy', args: [`reading ${path}`] });
    return readLogFile(path, knownOf(scenario, names), take);
  },
});
