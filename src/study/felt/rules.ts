import type { Model } from '../../flow/model/model.js';
import { CARRIER, CREW, EQUIPMENT } from '../../flow/model/resources.js';
import type { Observation } from '../../measure/observe.js';
import { defined } from '../lists.js';

/** Whether a replication of the base felt that something was wanting of which the other model has more. */
export type Felt = (seen: Observation) => boolean;

/** Of a row in which two models differ; null: it cannot be told from the base alone. */
export type Rule = (base: Model, changed: Model, at: number) => Felt | null;

/**
 * By column. More of a thing changes a run only from the moment on at which somebody wanted it and it was not
 * there: up to then both have gone through the same events, since free places, trucks and pieces are taken
 * in an order in which the added one comes last, and every draw has a stream of its own. Where there is more
 * to it (lots, changeovers, equipment that fails for each place, people who may be absent, of whom each has a
 * draw) there is no rule. Values that the draws of a replication never gave are not felt either.
 */
export const RULES: Readonly<Record<string, Rule>> = {
  'stations.places': (base, changed, s) =>
    isMore(base.stations.places, changed.stations.places, s) && isPlain(base, s)
      ? ({ felt }) => felt.places[s] === 1
      : null,
  'stations.buffer': (base, changed, s) =>
    isMore(base.stations.buffer, changed.stations.buffer, s) && !isInPulseLine(base, s) ? shutOut(s) : null,
  'stations.reworkBuffer': (base, changed, s) =>
    defined(base.stations.reworkBuffer[s]) >= 0 &&
    isMore(base.stations.reworkBuffer, changed.stations.reworkBuffer, s)
      ? shutOut(s)
      : null,
  'lanes.bank': (base, changed, lane) =>
    isMore(base.lanes.bank, changed.lanes.bank, lane) ? shutOut(base.stations.count + lane) : null,
  'lanes.trucks': (base, changed, lane) =>
    isMore(base.lanes.trucks, changed.lanes.trucks, lane) ? ({ felt }) => felt.trucks[lane] === 1 : null,
  'resources.amount': ofResource,
  'resources.shifts.people': ofResource,
  draws:
    (_, __, draw) =>
    ({ felt }) =>
      felt.draws[draw] === 1,
};

const isMore = (before: Int32Array, after: Int32Array, at: number): boolean =>
  defined(after[at]) > defined(before[at]);

const shutOut =
  (buffer: number): Felt =>
  ({ room }) =>
    room.shutOut[buffer] === 1;

const isInPulseLine = ({ pulseLines }: Model, station: number): boolean =>
  pulseLines.station.includes(station);

/** A station that takes units one by one into any free place, which cannot be down. */
const isPlain = (model: Model, station: number): boolean =>
  model.stations.lotMost[station] === 0 &&
  defined(model.stations.changeoverValues[station]).length === 0 &&
  !isInPulseLine(model, station) &&
  !model.failures.station.includes(station) &&
  !model.outages.station.includes(station) &&
  !model.steps.station.some((at, step) => at === station && model.steps.asksAhead[step] === 1);

/** People, carriers, pieces of equipment. */
function ofResource(base: Model, changed: Model, resource: number): Felt | null {
  const isFelt: Felt = ({ felt }) => felt.resources[resource] === 1,
    { kind, amount } = base.resources;
  switch (kind[resource]) {
    case CREW:
      return morePeople(base, changed, resource) === null ? null : isFelt;
    case CARRIER:
      return isMore(amount, changed.resources.amount, resource) ? isFelt : null;
    case EQUIPMENT:
      return isMore(amount, changed.resources.amount, resource) && !base.failures.resource.includes(resource)
        ? isFelt
        : null;
    default:
      return null;
  }
}

/** So many people more on every shift; null: it is not the same on all, fewer, or some may be absent. */
export function morePeople(base: Model, changed: Model, crew: number): number | null {
  const before = base.resources.shifts[crew] ?? null,
    after = changed.resources.shifts[crew] ?? null,
    more = defined(changed.resources.amount[crew]) - defined(base.resources.amount[crew]);
  if (more <= 0) return null;
  if (before === null || after === null) return before === after ? more : null;
  return before.absenceDraw < 0 && before.people.every((people, k) => after.people[k] === people + more)
    ? more
    : null;
}
