import { askedRate, daysAWeek } from '../scenario/programme/rates.js';
import type { Scenario } from '../scenario/types/scenario.js';
import { A_DAY, type PlannersUnit } from './planners-unit.js';

/** That of the scenario's highest rate. */
export const plannersUnit = (scenario: Scenario): PlannersUnit =>
  unitPer(askedRate(scenario).highestIsPerWeek ? 'week' : 'day', scenario);

/** A day or a week as the scenario has it. */
export const unitPer = (per: PlannersUnit['per'], scenario: Scenario): PlannersUnit =>
  per === 'week' ? { per, workingDays: daysAWeek(scenario) } : A_DAY;
