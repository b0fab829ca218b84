/**
 * A finite number with the ten significant digits that results carry: the last bits of a sum make no
 * difference then.
 */
export const tenDigits = (value: number): number => Number(value.toPrecision(10));
