import type { Finding } from './types/problem.js';
import { amountFindings } from './work/feeders.js';
import { besideFindings } from './work/side-by-side.js';
import { calendarFindings } from './calendar/calendars.js';
import { carrierFindings } from './plant/stretches.js';
import { changeoverFindings } from './plant/changeovers.js';
import { crewFindings } from './plant/crews.js';
import { costFindings } from './plant/costs.js';
import { defectFindings } from './work/defects.js';
import { entryFindings } from './whole/entry.js';
import { feederFindings } from './work/feeders.js';
import { holdFindings } from './work/holds.js';
import { failureFindings, outageFindings } from './plant/failures.js';
import { lotFindings } from './plant/lots.js';
import { optionFindings } from './programme/options.js';
import { ownPartFindings } from './work/own-parts.js';
import { pathFindings } from './whole/path.js';
import { orderFindings } from './programme/opening.js';
import { pulseLineFindings } from './plant/pulse-lines.js';
import { programmeFindings } from './programme/programme.js';
import { unreachable } from './whole/reach.js';
import { shiftFindings } from './whole/shift.js';
import { supplyFindings } from './plant/supplies.js';

import type { Scenario } from './types/scenario.js';

/** Each looks at one thing, and says nothing about names that it cannot look up. */
const LOCAL = [
  programmeFindings,
  calendarFindings,
  crewFindings,
  amountFindings,
  lotFindings,
  changeoverFindings,
  optionFindings,
  shiftFindings,
  failureFindings,
  outageFindings,
];
/** These ask whether things fit together; one misspelt name would set many of them off. */
const TOGETHER = [
  unreachable,
  entryFindings,
  pathFindings,
  ownPartFindings,
  defectFindings,
  feederFindings,
  supplyFindings,
  costFindings,
  holdFindings,
  orderFindings,
  pulseLineFindings,
  carrierFindings,
  besideFindings,
];

/**
 * What cannot work although each key for itself is right. `namesKnown`: every name in it is defined, and
 * once.
 */
export function crossFindings(scenario: Scenario, namesKnown: boolean): Finding[] {
  return (namesKnown ? [...LOCAL, ...TOGETHER] : LOCAL).flatMap((check) => check(scenario));
}
