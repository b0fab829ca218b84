import type { z } from 'zod';

/**
 * The same schema, which asks of each map or list once whether it is sound: a scenario is read with each of
 * its levers and changes too, and all that a change leaves alone is the very same data. What is wrong with
 * one is told anew each time. Wrap it last: a schema made of it, such as by `describe`, remembers nothing.
 */
export function remembering<Schema extends z.ZodType>(schema: Schema): Schema {
  const known = new WeakMap<object, { readonly value: unknown }>(),
    run = schema._zod.run.bind(schema._zod);
  schema._zod.run = (payload, context) => {
    const raw: unknown = payload.value;
    if (typeof raw !== 'object' || raw === null || payload.issues.length > 0) return run(payload, context);
    const before = known.get(raw);
    if (before !== undefined) {
      payload.value = before.value;
      return payload;
    }
    const result = run(payload, context);
    if (!(result instanceof Promise) && result.issues.length === 0) known.set(raw, { value: result.value });
    return result;
  };
  return schema;
}
