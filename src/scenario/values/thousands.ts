/**
 * Digits with a comma after each three ahead of the point, the one way in which numbers are shown to readers:
 * `16,480`. Data stay plain.
 */
export function withCommas(digits: string): string {
  const [whole = '', ...rest] = digits.split('.');
  return [whole.replace(/\B(?=(?:\d{3})+$)/g, ','), ...rest].join('.');
}

/** A number with all its digits: `5.25`, `1,240`. */
export const exact = (value: number): string => withCommas(String(value));
