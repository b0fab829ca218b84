import { calendarFindings } from './calendar/calendars.js';
import { overtimeFindings } from './calendar/overtime.js';
import { possibleFindings } from './changes/possible.js';
import { changeoverFindings } from './plant/changeovers.js';
import { costFindings } from './plant/costs.js';
import { crewFindings } from './plant/crews.js';
import { deliveryFindings } from './plant/deliveries.js';
import { equipmentFindings } from './plant/equipment.js';
import { failureFindings } from './plant/failures.js';
import { laneFindings } from './plant/lanes.js';
import { lotFindings } from './plant/lots.js';
import { outageFindings } from './plant/outages.js';
import { pulseLineFindings } from './plant/pulse-lines.js';
import { stretchFindings } from './plant/stretches.js';
import { supplyFindings } from './plant/supplies.js';
import { teamFindings } from './plant/teams.js';
import { arrivalFindings } from './programme/arrivals.js';
import { openingFindings } from './programme/opening/opening.js';
import { stockOptionFindings } from './programme/options.js';
import { orderFindings } from './programme/orders.js';
import { programmeFindings } from './programme/programme.js';
import { rateFindings } from './programme/rates.js';
import { conditionFindings } from './steps/conditions.js';
import { defectFindings } from './steps/defects.js';
import { feederFindings, kitFindings } from './steps/feeders.js';
import { loopFindings } from './steps/finds.js';
import { holdFindings } from './steps/holds.js';
import { amountFindings, waitFindings } from './steps/needs.js';
import { ownPartFindings } from './steps/own-parts.js';
import { besideFindings } from './steps/side-by-side.js';
import type { Finding } from './types/problem.js';
import type { Scenario } from './types/scenario.js';
import { entryFindings } from './whole/entry.js';
import { pathFindings } from './whole/path.js';
import { unreachable } from './whole/reach.js';
import { settingFindings } from './whole/settings.js';
import { shiftFindings } from './whole/shift.js';
import { wayBackFindings } from './whole/ways-back.js';

/** Each looks at one thing, and says nothing about names that it cannot look up. */
const LOCAL = [
  programmeFindings,
  rateFindings,
  calendarFindings,
  crewFindings,
  overtimeFindings,
  amountFindings,
  laneFindings,
  lotFindings,
  changeoverFindings,
  settingFindings,
  conditionFindings,
  stockOptionFindings,
  shiftFindings,
  failureFindings,
  equipmentFindings,
  outageFindings,
];
/** These ask whether things fit together; one misspelt name would set many of them off. */
const TOGETHER = [
  arrivalFindings,
  unreachable,
  entryFindings,
  pathFindings,
  wayBackFindings,
  ownPartFindings,
  defectFindings,
  loopFindings,
  feederFindings,
  supplyFindings,
  deliveryFindings,
  costFindings,
  possibleFindings,
  holdFindings,
  orderFindings,
  openingFindings,
  pulseLineFindings,
  stretchFindings,
  teamFindings,
  waitFindings,
  kitFindings,
  besideFindings,
];

/**
 * What cannot work although each key for itself is right. `namesKnown`: every name in it is defined, and
 * once.
 */
export function crossFindings(scenario: Scenario, namesKnown: boolean): Finding[] {
  return (namesKnown ? [...LOCAL, ...TOGETHER] : LOCAL).flatMap((check) => [...check(scenario)]);
}
