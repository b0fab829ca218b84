import { amountFindings } from './cross-amounts.js';
import { besideFindings } from './cross-beside.js';
import { calendarFindings } from './cross-calendar.js';
import { carrierFindings } from './cross-carriers.js';
import { changeoverFindings } from './cross-changeover.js';
import { crewFindings } from './cross-crews.js';
import { costFindings } from './cross-costs.js';
import { defectFindings } from './cross-defects.js';
import { entryFindings } from './cross-entry.js';
import { feederFindings } from './cross-feeders.js';
import { holdFindings } from './cross-holds.js';
import { failureFindings, outageFindings } from './cross-failures.js';
import { lotFindings } from './cross-lots.js';
import { optionFindings } from './cross-options.js';
import { ownPartFindings } from './cross-own.js';
import { pathFindings } from './cross-path.js';
import { orderFindings } from './cross-orders.js';
import { pulseLineFindings } from './cross-pulse.js';
import { programmeFindings } from './cross-programme.js';
import { unreachable } from './cross-reach.js';
import { shiftFindings } from './cross-shift.js';
import { supplyFindings } from './cross-supplies.js';
import type { Finding } from './problem.js';
import type { Scenario } from './scenario.js';

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

/** What cannot work although each key for itself is right. `namesKnown`: every name in it is defined, and once. */
export function crossFindings(scenario: Scenario, namesKnown: boolean): Finding[] {
  return (namesKnown ? [...LOCAL, ...TOGETHER] : LOCAL).flatMap((check) => check(scenario));
}
