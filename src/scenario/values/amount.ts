/** A number as a planner writes it, and what stands behind it: `60 min` is 60 and ` min`. */
export interface Amount {
  readonly number: number;
  /** With the spaces before it; empty for a bare number. */
  readonly unit: string;
}

const AMOUNT = /^(-?\d+(?:\.\d+)?)( *(?:%|[A-Za-z]+(?:\/[A-Za-z]+)?)?)$/;

/** undefined for what is no number, alone or with a unit or per cent sign. */
export function amountOf(raw: unknown): Amount | undefined {
  if (typeof raw === 'number') return Number.isFinite(raw) ? { number: raw, unit: '' } : undefined;
  const parts = typeof raw === 'string' ? AMOUNT.exec(raw.trim()) : null;
  return parts === null ? undefined : { number: Number(parts[1]), unit: parts[2] ?? '' };
}

/** As it stands in a file: a bare number is a number. */
export const withUnit = ({ number, unit }: Amount): number | string =>
  unit === '' ? number : `${number}${unit}`;
