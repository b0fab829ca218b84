import type { Finding } from './problem.js';
import type { Scenario } from './scenario.js';
import { own, routesOf, siteOfStation, stepsOf } from './cross-routes.js';

/** Demands that can never be met: more people than the crew has, more parts than the stock may hold, lots above the places. */
export function amountFindings(scenario: Scenario): Finding[] {
  return [...lots(scenario), ...demands(scenario)];
}

function lots(scenario: Scenario): Finding[] {
  const found: Finding[] = [];
  for (const [site, { stations }] of Object.entries(scenario.sites)) {
    for (const [name, { lot, places }] of Object.entries(stations)) {
      if (lot === undefined) continue;
      const path = ['sites', site, 'stations', name, 'lot'];
      if (lot.most > places) found.push({ path: [...path, 'most'], wanted: `at most ${places}, the places of the station`, seen: String(lot.most) });
      if (lot.least > lot.most) found.push({ path: [...path, 'least'], wanted: `at most ${lot.most}, the most of the lot`, seen: String(lot.least) });
    }
  }
  return found;
}

function demands(scenario: Scenario): Finding[] {
  const found: Finding[] = [];
  const siteOf = siteOfStation(scenario);
  for (const route of routesOf(scenario)) {
    for (const { path, step } of stepsOf(route)) {
      const site = siteOf.get(step.at);
      for (const [name, people] of Object.entries(step.crew)) {
        const crew = site === undefined ? undefined : own(scenario.sites[site]!.crews, name);
        if (crew !== undefined && people > crew.headcount) found.push({ path: [...path, 'crew', name], wanted: `at most ${crew.headcount}, the headcount of ${name} in site ${site}`, seen: String(people) });
      }
      for (const [name, count] of Object.entries(step.parts)) {
        const feeder = own(scenario.feeders, name);
        if (feeder?.kind !== 'stock' || count === 'own') continue;
        if (count > feeder.target) found.push({ path: [...path, 'parts', name], wanted: `at most ${feeder.target}, the target stock of the feeder`, seen: String(count) });
        if (name === route.feeder) found.push({ path: [...path, 'parts', name], wanted: 'parts of another feeder than the one this step belongs to', atKey: true });
      }
    }
  }
  return found;
}
