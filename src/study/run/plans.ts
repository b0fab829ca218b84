import { setFlagsFromString } from 'node:v8';
import type { Model } from '../../flow/model/model.js';
import { type Plan, prepare } from '../../flow/plan.js';

/** V8's own budget is 920; see below. */
const WIDE = '--max-inlined-bytecode-size-cumulative=8000';

/**
 * Before the engine runs a model: in a line of plain steps V8 may put all that its event loop calls into one
 * piece of machine code, which makes it a fifth faster (`npm run bench`). Models that are mostly crews,
 * passes and processes gain nothing, and would pay seconds of compiling for it, so they are left alone
 * (measured on the demo). It changes no result.
 */
export function tuneFor({ steps }: Model): void {
  let plain = 0;
  for (let t = 0; t < steps.count; t++) {
    const claims = steps.needStart[t + 1] - steps.needStart[t] + steps.ownStart[t + 1] - steps.ownStart[t];
    if (claims === 0 && steps.passes[t] <= 1 && steps.settleDraw[t] < 0 && steps.processDraw[t] < 0) plain++;
  }
  if (plain > steps.count / 2) setFlagsFromString(WIDE);
}

/** Variants come one after another, each with several replications; few come again. */
const MOST_KEPT = 8;

/** Models made ready in this thread, the latest few of them, by key of the variant. */
export class Plans {
  private readonly kept = new Map<string, Plan>();

  get(key: string): Plan | undefined {
    return this.kept.get(key);
  }

  make(key: string, model: Model, closely?: number): Plan {
    tuneFor(model);
    const plan = prepare(model, closely),
      [oldest] = this.kept.keys();
    if (this.kept.size === MOST_KEPT) this.kept.delete(oldest!);
    this.kept.set(key, plan);
    return plan;
  }
}
