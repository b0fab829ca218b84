import { type ForecastResults, forecastStudy } from '../../../src/study/forecast/forecast.js';
import type { ValidateResults } from '../../../src/study/validate/results.js';
import { validateStudy } from '../../../src/study/validate/validate.js';
import { type Changed, logOf, scenarioOf, shop, sourceOf } from '../../study/validate/shop.js';

const UNITS = 100,
  BUILDS = 10;

/** Invented: the shop held against the log of one that is changed. */
export function validated(changed: Changed, name = 'shop'): Promise<ValidateResults> {
  const text = shop({ units: UNITS }).replace('Mid-size shop', name);
  return validateStudy({
    scenario: scenarioOf(text),
    file: 'shop.yaml',
    log: sourceOf(logOf(scenarioOf(shop({ units: UNITS, ...changed })), 'real')),
    seed: 'model',
    replications: BUILDS,
  });
}

/** Invented: the rest of the shop from 2027-03-08 on, each unit due so long after its release; '' for never. */
export function ahead(dueAfter: string, changed: Changed = {}, hour = 0): Promise<ForecastResults> {
  const scenario = scenarioOf(
    shop({ units: 60, ...changed }).replace(
      'quantity: 60',
      `quantity: 60${dueAfter === '' ? '' : `, due after: ${dueAfter}`}`,
    ),
  );
  return forecastStudy({
    scenario,
    file: 'shop.yaml',
    log: sourceOf(logOf(scenario, 'real')),
    at: { minutes: Date.UTC(2027, 2, 8, hour) / 60_000, isLocal: true },
    seed: 'model',
    replications: BUILDS,
  });
}
