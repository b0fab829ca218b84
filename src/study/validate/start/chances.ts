import type { Model } from '../../../flow/model/model.js';

/** A chance of the model for a unit with these options, by name; the usual one where they are not known. */
export function chanceOf(
  { chances, options }: Model,
  row: number,
  known: Readonly<Record<string, string>>,
): number {
  for (let c = chances.start[row] ?? 0; c < (chances.start[row + 1] ?? 0); c++) {
    const option = options[chances.option[c] ?? -1],
      value = option?.values[chances.value[c] ?? -1];
    if (option !== undefined && value !== undefined && known[option.name] === value)
      return chances.chance[c] ?? 0;
  }
  return chances.base[row] ?? 0;
}

/** Feeders, as routes, whose sub-assemblies become part of what is at a step. */
export function joiningAt({ steps, routes }: Model, step: number): number[] {
  const joining: number[] = [];
  for (let own = steps.ownStart[step] ?? 0; own < (steps.ownStart[step + 1] ?? 0); own++)
    joining.push(steps.ownRoute[own] ?? -1);
  for (let need = steps.needStart[step] ?? 0; need < (steps.needStart[step + 1] ?? 0); need++) {
    const route = routes.stock.indexOf(steps.needResource[need] ?? -1);
    if (route > 0) joining.push(route);
  }
  return joining;
}

/**
 * How likely each defect slot is open, and not found, on something that goes along its route, step by step:
 * a step makes an item by its chance, and an inspection that does not find it makes it less likely (Bayes'
 * rule). Draws of different slots are independent in the engine, so each slot has a chance of its own.
 */
export class Hidden {
  readonly chance: Float64Array;

  constructor(
    private readonly model: Model,
    private readonly options: Readonly<Record<string, string>>,
    private readonly brought: ReadonlyMap<number, Float64Array>,
  ) {
    this.chance = new Float64Array(model.slots.count);
  }

  /** A step that is done: parts join, items are made, and some of those there are found and mended. */
  make(step: number): void {
    const { model, chance, options } = this,
      { createStart, createSlot, createChance } = model.steps;
    for (const route of joiningAt(model, step))
      this.brought.get(route)?.forEach((that, slot) => {
        // A kit taken again puts the earlier one aside, with its items.
        if (model.slots.step[slot] !== undefined && that > 0) chance[slot] = that;
      });
    for (let c = createStart[step] ?? 0; c < (createStart[step + 1] ?? 0); c++) {
      const slot = createSlot[c] ?? -1,
        before = chance[slot] ?? 0;
      chance[slot] = before + (1 - before) * chanceOf(model, createChance[c] ?? -1, options);
    }
  }

  /**
   * An inspection looked for it.
   * @param tells whether the log tells of finds: nothing was found; otherwise it may have been, and mended
   */
  look(find: number, tells: boolean): void {
    const { model, chance, options } = this,
      slot = model.steps.findSlot[find] ?? -1,
      before = chance[slot] ?? 0,
      missed = before * (1 - chanceOf(model, model.steps.findChance[find] ?? -1, options));
    if (slot >= 0 && before > 0) chance[slot] = tells ? missed / (1 - before + missed) : missed;
  }
}

/** By feeder: how likely its sub-assemblies bring an item of each slot; what is found there is mended. */
export function broughtBy(model: Model): Map<number, Float64Array> {
  const known = new Map<number, Float64Array>(),
    { routes, steps } = model;
  const walk = (route: number): void => {
    if (known.has(route)) return;
    // A ring of feeders is refused by the reader.
    for (let step = routes.firstStep[route] ?? 0; step < (routes.firstStep[route + 1] ?? 0); step++)
      for (const inner of joiningAt(model, step)) walk(inner);
    const hidden = new Hidden(model, {}, known);
    for (let step = routes.firstStep[route] ?? 0; step < (routes.firstStep[route + 1] ?? 0); step++) {
      hidden.make(step);
      for (let find = steps.findStart[step] ?? 0; find < (steps.findStart[step + 1] ?? 0); find++)
        hidden.look(find, false);
    }
    known.set(route, hidden.chance);
  };
  for (let route = 1; route < routes.count; route++) walk(route);
  return known;
}
