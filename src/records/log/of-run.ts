import type { Happening, Other } from '../../flow/model/happening.js';
import type { Model } from '../../flow/model/model.js';
import { buildName } from '../../flow/model/orders.js';
import { type FloorEvent, UNIT } from './event.js';
import { referenceTo } from './references.js';

/**
 * What happened in a replication as lines of a floor log. The sub-assemblies of a stock at its start are
 * called `stock 1`, `stock 2` ..; trucks and carriers have the name of their lane or kind and a number.
 * @param origin start of the programme, minutes since 1970-01-01T00:00Z (`runSpan(scenario).origin`)
 */
export function* eventsOfRun(
  happenings: Iterable<Happening>,
  model: Model,
  origin: number,
): Generator<FloorEvent> {
  const names = new Names(model);
  for (const happening of happenings) {
    const { at, kind, route, number, step, others } = happening;
    yield {
      at: origin + at,
      kind,
      object: names.object(route, number),
      type: names.type(route),
      step: step < 0 ? '' : (model.steps.names[step] ?? ''),
      station: step < 0 ? '' : names.station(step),
      others: others.map((other) => names.other(other)),
      values: names.values(happening),
    };
  }
}

class Names {
  constructor(private readonly model: Model) {}

  type(route: number): string {
    return route === 0 ? UNIT : (this.model.routes.names[route] ?? '');
  }

  object(route: number, number: number): string {
    const { own } = this.model.routes;
    if (route === 0 || own[route] === 1) return buildName(this.model, number);
    return number > 0 ? String(number) : `stock ${1 - number}`;
  }

  station(step: number): string {
    const { steps, stations, lanes } = this.model,
      station = steps.station[step] ?? -1;
    return (station >= 0 ? stations.names[station] : lanes.names[steps.lane[step] ?? -1]) ?? '';
  }

  other(other: Other): string {
    const { lanes, resources } = this.model;
    switch (other.kind) {
      case 'part':
        return referenceTo(this.type(other.route), this.object(other.route, other.number));
      case 'truck':
        return referenceTo('truck', `${lanes.names[other.lane] ?? ''} ${other.index + 1}`);
      case 'carrier':
        return referenceTo('carrier', `${resources.names[other.resource] ?? ''} ${other.index + 1}`);
    }
  }

  /** Options of who enters; what a find found, where it was made, whether it was known, and where it leads. */
  values({ options, found }: Happening): Record<string, string> {
    const { model } = this,
      { names } = model.steps;
    if (found === undefined)
      return Object.fromEntries(
        (options ?? []).flatMap((value, o) => {
          const option = model.options[o];
          return option === undefined ? [] : [[option.name, option.values[value] ?? '']];
        }),
      );
    const slot = model.steps.findSlot[found.find] ?? -1,
      { slots } = model;
    return {
      defect: slot < 0 ? FAILED : (slots.kindNames[slots.kind[slot] ?? -1] ?? ''),
      ...(slot < 0 ? {} : { 'made at': names[slots.step[slot] ?? -1] ?? '' }),
      ...(found.again ? { again: 'yes' } : {}),
      ...(found.to < 0 ? {} : { to: names[found.to] ?? '' }),
    };
  }
}

/** In the place of a defect: a test was not passed. */
export const FAILED = 'failed';
