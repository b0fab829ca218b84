import type { Model } from '../flow/model.js';
import { prepare, type Plan } from '../flow/plan.js';
import { tuneFor } from './tune.js';

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
