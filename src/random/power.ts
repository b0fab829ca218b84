/**
 * A number of at least 0 to a power. By `exp` and `log`, which give the same bits in every JavaScript engine
 * that was tried (Node 20, 22 and 24, Chromium, Firefox); `**` with fractions and `cbrt` do not. To within
 * some units of the last digit times the logarithm of the result.
 */
export const power = (base: number, exponent: number): number =>
  base === 0 ? (exponent === 0 ? 1 : exponent > 0 ? 0 : Infinity) : Math.exp(exponent * Math.log(base));

/** The same for a whole exponent of at least 0, of any number, by multiplying. */
export function wholePower(base: number, exponent: number): number {
  let product = 1;
  for (let k = 0; k < exponent; k++) product *= base;
  return product;
}
