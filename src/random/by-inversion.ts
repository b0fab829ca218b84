/**
 * Turn uniforms in (0, 1), in place, into values of another distribution by its inverse: one uniform a value.
 * The value rises with the uniform throughout, or falls throughout (exponential, Weibull), so two scenarios
 * that differ a little in a parameter see nearly the same luck.
 */

/** Triangular on [low, high] with its peak at `likely`; low < high. */
export function toTriangular(
  out: Float64Array,
  from: number,
  to: number,
  low: number,
  likely: number,
  high: number,
): void {
  const width = high - low;
  const peak = (likely - low) / width;
  const rising = width * (likely - low);
  const falling = width * (high - likely);
  for (let k = from; k < to; k++) {
    const u = out[k];
    out[k] = u < peak ? low + Math.sqrt(u * rising) : high - Math.sqrt((1 - u) * falling);
  }
}

/** Exponential with the given mean. */
export function toExponential(out: Float64Array, from: number, to: number, mean: number): void {
  for (let k = from; k < to; k++) out[k] = -mean * Math.log(out[k]);
}

/** Weibull: scale (-ln u)^(1 / shape), where `power` is 1 / shape; exp and log take half the time of `**`. */
export function toWeibull(out: Float64Array, from: number, to: number, power: number, scale: number): void {
  for (let k = from; k < to; k++) out[k] = scale * Math.exp(power * Math.log(-Math.log(out[k])));
}

/**
 * One of `values`, each with the share by which `upTo` rises to it; `upTo` ends at 1. Binary search, O(log
 * n).
 */
export function toDiscrete(
  out: Float64Array,
  from: number,
  to: number,
  values: Float64Array,
  upTo: Float64Array,
): void {
  for (let k = from; k < to; k++) {
    const u = out[k];
    let first = 0;
    let last = upTo.length - 1;
    while (first < last) {
      const middle = (first + last) >> 1;
      if (u < upTo[middle]) last = middle;
      else first = middle + 1;
    }
    out[k] = values[first]!;
  }
}

/** One of `values`, each as likely as the next. */
export function toEmpirical(out: Float64Array, from: number, to: number, values: Float64Array): void {
  const count = values.length;
  for (let k = from; k < to; k++) out[k] = values[Math.floor(out[k] * count)]!;
}
