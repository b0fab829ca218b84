/**
 * What is known only once replications have come: `value` tells it of those that have come so far, anew each
 * time.
 */
export class Later<T> {
  constructor(private readonly tell: () => Pending<T>) {}

  get value(): T {
    return told<T>(this.tell());
  }
}

/** A value of which any part may be known only later. */
export type Pending<T> =
  | T
  | Later<T>
  | (T extends readonly (infer Each)[]
      ? readonly Pending<Each>[]
      : T extends object
        ? PendingParts<T>
        : never);
export type PendingParts<T> = { readonly [Key in keyof T]: Pending<T[Key]> };

/** All of it. Parts are looked for in arrays and plain objects, anything else is taken as it is. */
export function told<T>(pending: Pending<T>): T {
  if (pending instanceof Later) return pending.value;
  if (Array.isArray(pending)) return pending.map((each: Pending<unknown>) => told(each)) as T;
  if (typeof pending !== 'object' || pending === null || Object.getPrototypeOf(pending) !== Object.prototype)
    return pending as T;
  return Object.fromEntries(Object.entries(pending).map(([key, part]) => [key, told<unknown>(part)])) as T;
}
