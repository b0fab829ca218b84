import { type Model } from '../../../flow/model/model.js';
import { HOLD_NOTED } from '../../../flow/model/quality.js';
import { REWORK_ONLY } from '../../../flow/model/steps.js';
import { stepIds } from '../seen/frame.js';
import type { Inside, Standing } from '../seen/inside.js';

/** A unit of the opening: the step that it is about to begin, by id of the model. */
export interface Placed {
  readonly unit: string;
  readonly step: number;
  /** Options that the scenario has, with values that it has. */
  readonly options: Readonly<Record<string, string>>;
  /** In work there, or on the road: what was done of it is done again. */
  readonly again: boolean;
}

export interface Opening {
  /** The farthest along the route first, as the engine numbers them. */
  readonly placed: readonly Placed[];
  /** What the log cannot tell, or the scenario cannot have: plain sentences. */
  readonly notes: readonly string[];
}

/**
 * Where the floor stands, as the opening of a scenario: each unit at the step that it is about to begin. A
 * unit in work begins that step again; one that is done with its step, and finds the next one full, stands at
 * its own again.
 */
export function openingOf({ units }: Inside, model: Model): Opening {
  const route = new Route(model),
    wanted: (Placed & { readonly back: number })[] = [],
    out: string[] = [],
    unknown: string[] = [];
  for (const unit of units.values()) {
    const options = route.optionsOf(unit),
      step = route.stepOf(unit, options);
    if (step === undefined) {
      out.push(unit.unit);
      continue;
    }
    if (Object.keys(options).length < model.options.length) unknown.push(unit.unit);
    const own = route.ids.get(unit.step) ?? step,
      again = unit.phase === 'started' || unit.phase === 'riding';
    wanted.push({ unit: unit.unit, step, options, again, back: unit.phase === 'ended' ? own : step });
  }
  const room = new Room(model),
    placed: Placed[] = [],
    full: string[] = [];
  // Nearest to the end first; who is moved back comes again with those of that step.
  const order = (a: { step: number }, b: { step: number }): number => b.step - a.step;
  wanted.sort(order);
  for (let next = wanted.shift(); next !== undefined; next = wanted.shift()) {
    const { back, ...unit } = next;
    if (room.take(unit.step)) placed.push(unit);
    else if (back < unit.step) {
      wanted.push({ ...unit, step: back, again: true, back });
      wanted.sort(order);
    } else full.push(unit.unit);
  }
  const again = placed.filter((unit) => unit.again).map(({ unit }) => unit);
  return {
    placed,
    notes: [
      told(
        again,
        'in work, on the road or without room ahead',
        'begins its step again',
        'begin their steps again',
      ),
      told(unknown, 'with options that the log does not tell', 'has them drawn', 'have them drawn'),
      told(out, 'done with the last step, or at a step unknown', 'is left out', 'are left out'),
      told(full, 'without room where the log has it', 'is left out', 'are left out'),
      ...(placed.length > 0
        ? ['Open items of units are not carried over: the opening has no place for them.']
        : []),
    ].filter((note) => note !== ''),
  };
}

const SHOWN = 5;

function told(units: readonly string[], which: string, one: string, many: string): string {
  if (units.length === 0) return '';
  const names = units.slice(0, SHOWN).join(', ') + (units.length > SHOWN ? ', ..' : '');
  return units.length === 1
    ? `1 unit ${which} ${one}: ${names}.`
    : `${units.length} units ${which} ${many}: ${names}.`;
}

class Route {
  readonly ids: ReadonlyMap<string, number>;
  private readonly last: number;

  constructor(private readonly model: Model) {
    this.ids = stepIds(model);
    this.last = model.routes.firstStep[1] ?? model.steps.count;
  }

  optionsOf({ options }: Standing): Record<string, string> {
    return Object.fromEntries(
      this.model.options.flatMap(({ name, values }) => {
        const value = options[name];
        return value !== undefined && values.includes(value) ? [[name, value]] : [];
      }),
    );
  }

  /** The step that it is about to begin; undefined: there is none. */
  stepOf({ step, phase }: Standing, options: Readonly<Record<string, string>>): number | undefined {
    const id = step === '' ? -1 : this.ids.get(step);
    if (id === undefined) return undefined;
    const here = this.onRoute(id);
    if (phase === 'ended') return this.from(here + 1, options);
    return phase === 'entered' || this.isBank(here) ? this.from(Math.max(0, here), options) : here;
  }

  /** Of a way back its target; of a step side by side its group. */
  private onRoute(step: number): number {
    const { steps, sideBySide } = this.model;
    let at = step;
    while ((steps.onTo[at] ?? -1) >= 0) at = steps.onTo[at] ?? -1;
    const group = sideBySide.group[at] ?? -1;
    return group >= 0 ? group : at;
  }

  /** The first step from there on that every such unit does. */
  private from(first: number, options: Readonly<Record<string, string>>): number | undefined {
    for (let step = first; step < this.last; step++) if (this.isSure(step, options)) return step;
    return undefined;
  }

  private isSure(step: number, options: Readonly<Record<string, string>>): boolean {
    const { steps, quality, sideBySide } = this.model;
    if ((sideBySide.group[step] ?? -1) >= 0 || this.isBank(step)) return false;
    if (steps.rework[step] === REWORK_ONLY || (steps.sampleN[step] ?? 0) > 0) return false;
    if (quality.hold[step] === HOLD_NOTED) return false;
    for (let w = steps.whenStart[step] ?? 0; w < (steps.whenStart[step + 1] ?? 0); w++) {
      const option = this.model.options[steps.whenOption[w] ?? -1],
        value = option === undefined ? undefined : options[option.name],
        bit = option === undefined || value === undefined ? -1 : option.values.indexOf(value);
      if (bit < 0 || ((steps.whenMask[w] ?? 0) & (1 << bit)) === 0) return false;
    }
    return true;
  }

  private isBank(step: number): boolean {
    const { stations, steps } = this.model,
      station = steps.station[step] ?? -1;
    return station >= 0 && stations.isBank[station] === 1;
  }
}

/** Room at stations, in places and the spaces ahead, and in the banks ahead of lanes. */
class Room {
  private readonly taken = new Map<string, number>();
  constructor(private readonly model: Model) {}

  take(step: number): boolean {
    const { steps, stations, lanes } = this.model,
      station = steps.station[step] ?? -1,
      lane = steps.lane[step] ?? -1,
      key = station >= 0 ? `station ${station}` : `lane ${lane}`,
      lot = stations.lotMost[station] ?? 0,
      places = lot > 0 ? lot : (stations.places[station] ?? 0),
      room = station >= 0 ? places + (stations.buffer[station] ?? 0) : (lanes.bank[lane] ?? 0),
      now = this.taken.get(key) ?? 0;
    if (now >= room) return false;
    this.taken.set(key, now + 1);
    return true;
  }
}
