import type { Model } from '../../../flow/model/model.js';
import { HOLD_NOTED } from '../../../flow/model/quality.js';
import { REWORK_ONLY, REWORK_SKIP } from '../../../flow/model/steps.js';
import { meanOf } from '../../../random/distribution.js';
import { stepIds } from '../seen/frame.js';
import type { Standing } from '../seen/inside.js';
import { type Inspected, onRoute } from './open-items.js';

type Options = Readonly<Record<string, string>>;

/** The unit's route, as a unit with these options and items goes along it. */
export class Route {
  readonly ids: ReadonlyMap<string, number>;
  private readonly last: number;

  constructor(private readonly model: Model) {
    this.ids = stepIds(model);
    this.last = model.routes.firstStep[1] ?? model.steps.count;
  }

  /** Options that the scenario has, with values that it has. */
  optionsOf({ options }: Standing): Record<string, string> {
    return Object.fromEntries(
      this.model.options.flatMap(({ name, values }) => {
        const value = options[name];
        return value !== undefined && values.includes(value) ? [[name, value]] : [];
      }),
    );
  }

  /**
   * The step that it is about to begin; undefined: there is none.
   * @param at the moment, minutes since 1970-01-01T00:00Z
   */
  stepOf(
    { step, phase, since }: Standing,
    options: Options,
    inspected: Inspected,
    at: number,
  ): number | undefined {
    if (inspected.sentTo >= 0) return inspected.sentTo;
    const id = step === '' ? -1 : this.ids.get(step);
    if (id === undefined || id >= this.last) return id === undefined ? undefined : onRoute(this.model, id);
    const here = onRoute(this.model, id),
      on = (from: number): number | undefined => this.from(from, options, inspected);
    if (phase === 'riding') return this.isNearlyThere(here, at - since) ? (on(here + 1) ?? here) : here;
    if (phase === 'ended') return on(here + 1);
    return phase === 'entered' || this.isBank(here) || !this.meets(here, options)
      ? on(Math.max(0, here))
      : here;
  }

  /** Steps that such a unit surely does: those before a step, the nearest first, then those from it on. */
  *others(step: number, options: Options, inspected: Inspected): Generator<number> {
    for (let before = step - 1; before >= 0; before--)
      if (this.isSure(before, options, inspected)) yield before;
    for (let after = step + 1; after < this.last; after++)
      if (this.isSure(after, options, inspected)) yield after;
  }

  /** Values of options without which no unit comes to a step, where the log does not tell them. */
  needed(step: number, options: Options): Record<string, string> {
    const { steps } = this.model,
      out: Record<string, string> = {};
    for (let w = steps.whenStart[step] ?? 0; w < (steps.whenStart[step + 1] ?? 0); w++) {
      const option = this.model.options[steps.whenOption[w] ?? -1],
        first = option?.values.find((_, bit) => ((steps.whenMask[w] ?? 0) & (1 << bit)) !== 0);
      if (option !== undefined && first !== undefined && options[option.name] === undefined)
        out[option.name] = first;
    }
    return out;
  }

  /** More than half of the usual drive is behind it. */
  private isNearlyThere(step: number, minutes: number): boolean {
    const { steps, lanes, draws } = this.model,
      drive = draws[lanes.driveDraw[steps.lane[step] ?? -1] ?? -1];
    return drive === undefined || minutes > meanOf(drive.distribution) / 2;
  }

  /** The first step from there on that every such unit does. */
  private from(first: number, options: Options, inspected: Inspected): number | undefined {
    for (let step = first; step < this.last; step++) if (this.isSure(step, options, inspected)) return step;
    return undefined;
  }

  private isSure(step: number, options: Options, { sentBy, items }: Inspected): boolean {
    const { steps, quality, sideBySide } = this.model,
      inRework = sentBy > step;
    if ((sideBySide.group[step] ?? -1) >= 0 || this.isBank(step)) return false;
    if (sentBy === step) return true;
    if (steps.rework[step] === (inRework ? REWORK_SKIP : REWORK_ONLY)) return false;
    if ((steps.sampleN[step] ?? 0) > 0) return false;
    // Of what is found and left open, nothing leads back: the next hold mends it.
    if (quality.hold[step] === HOLD_NOTED && !items.some(({ find }) => find >= 0)) return false;
    return this.meets(step, options, true);
  }

  /** Whether its options let it come there; of one that is not known `strictly` no, else yes. */
  private meets(step: number, options: Options, strictly = false): boolean {
    const { steps } = this.model;
    for (let w = steps.whenStart[step] ?? 0; w < (steps.whenStart[step + 1] ?? 0); w++) {
      const option = this.model.options[steps.whenOption[w] ?? -1],
        value = option === undefined ? undefined : options[option.name];
      if (option === undefined || (value === undefined && !strictly)) continue;
      const bit = value === undefined ? -1 : option.values.indexOf(value);
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
