/**
 * What is known only once replications have come: `value` tells it of those that have come so far, anew each
 * time.
 */
export class Deferred<T> {
  constructor(private readonly tell: () => Pending<T>) {}

  get value(): T {
    return resolved<T>(this.tell());
  }
}

/** A value of which any part may be known only later. */
export type Pending<T> =
  | T
  | Deferred<T>
  | (T extends readonly (infer Each)[]
      ? readonly Pending<Each>[]
      : T extends object
        ? PendingParts<T>
        : never);
export type PendingParts<T> = { readonly [Key in keyof T]: Pending<T[Key]> };

/** All of it. Parts are looked for in arrays and plain objects, anything else is taken as it is. */
export function resolved<T>(pending: Pending<T>): T {
  if (pending instanceof Deferred) return pending.value;
  if (Array.isArray(pending)) return pending.map((each: Pending<unknown>) => resolved(each)) as T;
  if (typeof pending !== 'object' || pending === null || Object.getPrototypeOf(pending) !== Object.prototype)
    return pending as T;
  return Object.fromEntries(
    Object.entries(pending).map(([key, part]) => [key, resolved<unknown>(part)]),
  ) as T;
}
