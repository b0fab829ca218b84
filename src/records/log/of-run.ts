import type { Happening, Other } from '../../flow/model/happening.js';
import type { Model } from '../../flow/model/model.js';
import { buildName } from '../../flow/model/orders.js';
import { type FloorEvent, UNIT } from './event.js';

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
        return `${this.type(other.route)}:${this.object(other.route, other.number)}`;
      case 'truck':
        return `truck:${lanes.names[other.lane] ?? ''} ${other.index + 1}`;
      case 'carrier':
        return `carrier:${resources.names[other.resource] ?? ''} ${other.index + 1}`;
    }
  }

  values({ options, found }: Happening): Record<string, string> {
    const { model } = this,
      values: Record<string, string> = {};
    options?.forEach((value, o) => {
      const option = model.options[o];
      if (option !== undefined) values[option.name] = option.values[value] ?? '';
    });
    if (found !== undefined) {
      values['defect'] = this.defect(found.find);
      if (found.again) values['again'] = 'yes';
      if (found.to >= 0) values['to'] = model.steps.names[found.to] ?? '';
    }
    return values;
  }

  /** Kind of the item; `failed` of a test. */
  private defect(find: number): string {
    const { steps, slots } = this.model,
      slot = steps.findSlot[find] ?? -1;
    return slot < 0 ? FAILED : (slots.kindNames[slots.kind[slot] ?? -1] ?? '');
  }
}

/** In the place of a defect: a test was not passed. */
export const FAILED = 'failed';
