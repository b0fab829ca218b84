import { setFlagsFromString } from 'node:v8';
import type { Model } from '../../flow/model/model.js';
import { type Plan, prepare } from '../../flow/plan.js';

/** V8's own budget is 920; see below. */
const WIDE = '--max-inlined-bytecode-size-cumulative=8000';
/**
 * V8's own budget is 132 KB. With more it sees more of what happens before it makes machine code, in all
 * threads, and has to throw less of it away: a tenth less processor time for 100 replications of the demo.
 */
export const waitToOptimise = (): void => {
  setFlagsFromString('--interrupt-budget=300000');
};

/**
 * Before the engine runs a model: in a line of plain steps V8 may put all that its event loop calls into one
 * piece of machine code, which makes it a fifth faster (`npm run bench`). Models that are mostly crews,
 * passes and processes gain nothing, and would pay seconds of compiling for it, so they are left alone
 * (measured on the demo). It changes no result.
 */
export function tuneFor({ steps }: Model): void {
  waitToOptimise();
  const { needStart, ownStart, settleDraw, processDraw } = steps;
  const plain = steps.passes.filter(
    (passes, step) =>
      passes <= 1 &&
      isEmpty(needStart, step) &&
      isEmpty(ownStart, step) &&
      isUndrawn(settleDraw, step) &&
      isUndrawn(processDraw, step),
  );
  if (plain.length > steps.count / 2) setFlagsFromString(WIDE);
}

/** Whether a step has no rows of a kind, by the first row of each step and of the next. */
const isEmpty = (starts: Int32Array, step: number): boolean => starts[step] === starts[step + 1];
const isUndrawn = (draws: Int32Array, step: number): boolean => (draws[step] ?? -1) < 0;

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
    if (oldest !== undefined && this.kept.size === MOST_KEPT) this.kept.delete(oldest);
    this.kept.set(key, plan);
    return plan;
  }
}
