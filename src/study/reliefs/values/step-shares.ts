import type { Model } from '../../../flow/model/model.js';
import { CARRIER, CREW, EQUIPMENT } from '../../../flow/model/resources.js';
import { demand } from '../../capacity/demand.js';
import type { LimitKind } from '../../capacity/limits.js';
import { stationMinutes } from '../../capacity/station.js';
import { defined, named, rowsOf } from '../../lists.js';

/** What a step takes of a resource, out of all that is taken of it: by mean minutes, 0 to 1. */
export interface StepShare {
  readonly kind: LimitKind;
  readonly name: string;
  readonly site: string;
  readonly share: number;
}

/**
 * By step of a station: its shares of the station, of its crews and equipment and of the carriers and teams
 * that are with the unit. Of steps side by side each counts as much as all of them together at the station.
 */
export function stepShares(model: Model): ReadonlyMap<string, readonly StepShare[]> {
  const { steps, companions, sideBySide, resources } = model,
    asks = demand(model),
    minutes = steps.names.map((_, step) => stationMinutes(model, asks, step)),
    all = [...steps.names.keys()].filter((step) => defined(steps.station[step]) >= 0);
  const groupOf = (step: number): number => {
    const group = defined(sideBySide.group[step]);
    return group >= 0 ? group : step;
  };
  const place = (step: number): number => defined(minutes[groupOf(step)]).place,
    crew = (step: number): number => defined(minutes[step]).crew;

  const shares = new Map<string, StepShare[]>(),
    totals = new Map<string, number>(),
    taken: { step: number; of: Omit<StepShare, 'share'>; minutes: number; key: string }[] = [];
  const take = (step: number, of: Omit<StepShare, 'share'>, minutes: number): void => {
    const key = JSON.stringify(of);
    taken.push({ step, of, minutes, key });
    totals.set(key, (totals.get(key) ?? 0) + minutes);
  };
  for (const step of all) {
    take(step, { kind: 'station', ...named(model, 'stations', defined(steps.station[step])) }, place(step));
    for (const n of rowsOf(steps.needStart, step)) {
      const resource = defined(steps.needResource[n]);
      const kind = resources.kind[resource];
      if (kind === CREW || kind === EQUIPMENT)
        take(
          step,
          { kind: kind === CREW ? 'crew' : 'equipment', ...named(model, 'resources', resource) },
          defined(steps.needAmount[n]) * crew(step),
        );
    }
    for (const id of companions.names.keys()) {
      if (step < defined(companions.from[id]) || groupOf(step) > defined(companions.to[id])) continue;
      const resource = defined(companions.resource[id]),
        isCarrier = resources.kind[resource] === CARRIER;
      take(
        step,
        { kind: isCarrier ? 'carrier' : 'crew', ...named(model, 'resources', resource) },
        isCarrier ? place(step) : defined(companions.amount[id]) * crew(step),
      );
    }
  }
  for (const { step, of, minutes, key } of taken) {
    const name = defined(steps.names[step]),
      total = totals.get(key) ?? 0;
    if (total > 0) shares.set(name, [...(shares.get(name) ?? []), { ...of, share: minutes / total }]);
  }
  return shares;
}
