import type { Run } from './run.js';
import { lacking } from './claims.js';
import { BLOCKED, SHORT_PARTS } from './states.js';

/** One unit or sub-assembly that cannot go on: where it stands and what it waits for. */
export interface Stuck {
  readonly number: number;
  /** Name of the route: the unit's, or the feeder of a sub-assembly. */
  readonly route: string;
  readonly where: string;
  readonly waitsFor: string;
  /** `room` at a station or lane; `crew` or `parts` of a step; `lot`, `truck`: more units or a truck. */
  readonly kind: 'room' | 'crew' | 'parts' | 'lot' | 'truck';
}

/** Rule 16: who waits for whom when nothing can move. In order of build number. */
export function stuckUnits(run: Run): Stuck[] {
  const { units } = run, found: Stuck[] = [];
  for (let unit = 0; unit < units.end; unit++) if (units.step[unit] >= 0) found.push(describe(run, unit));
  return found.sort((a, b) => a.number - b.number);
}

function describe(run: Run, unit: number): Stuck {
  const { units, places, model, plan } = run, step = units.step[unit], place = units.place[unit], destination = plan.stepDestination[step];
  const base = { number: units.number[unit], route: model.routes.names[model.steps.route[step]] };
  const wanted = destinationName(run, destination);
  if (place < 0 || places.state[place] === BLOCKED) {
    const where = place >= 0 ? model.stations.names[places.station[place]] : units.truck[unit] >= 0 ? model.lanes.names[run.truckLane[units.truck[unit]]] : run.destinations.holds(destination, unit) ? `ahead of ${wanted}` : 'outside';
    const inBank = destination >= plan.stationCount && where.startsWith('ahead');
    return { ...base, where, waitsFor: wanted, kind: inBank ? 'truck' : 'room' };
  }
  const where = model.stations.names[places.station[place]];
  if (run.lotOpen[destination] === 1 && model.stations.lotMost[destination] > 0) return { ...base, where, waitsFor: `more units for a lot at ${where}`, kind: 'lot' };
  const short = lacking(run, place, false);
  return { ...base, where, waitsFor: `the needs of step ${model.steps.names[step]}`, kind: short === SHORT_PARTS ? 'parts' : 'crew' };
}

function destinationName(run: Run, destination: number): string {
  const { model, plan } = run;
  return destination < plan.stationCount ? model.stations.names[destination] : model.lanes.names[destination - plan.stationCount];
}
