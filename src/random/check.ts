/** Throws a RangeError that names what was looked at, what would be right, and what came. */
export function refuse(what: string, expected: string, got: unknown): never {
  throw new RangeError(`${what}: expected ${expected}, got ${String(got)}`);
}

export function mustBeFinite(what: string, value: number): void {
  if (!Number.isFinite(value)) refuse(what, 'a finite number', value);
}

/** Finite and above zero. */
export function mustBePositive(what: string, value: number): void {
  if (!(value > 0 && value < Infinity)) refuse(what, 'a finite number above 0', value);
}

/** Finite and not below zero. */
export function mustNotBeNegative(what: string, value: number): void {
  if (!(value >= 0 && value < Infinity)) refuse(what, 'a finite number of 0 or more', value);
}

/** The parameters of a kind with a likeliest value between two bounds. */
export function mustBeInOrder({ kind, low, likely, high }: Readonly<ThreePoints>): void {
  mustBeFinite(`${kind} low`, low);
  mustBeFinite(`${kind} likely`, likely);
  mustBeFinite(`${kind} high`, high);
  if (likely < low) refuse(`${kind} likely`, `at least low (${low})`, likely);
  if (likely > high) refuse(`${kind} likely`, `at most high (${high})`, likely);
}

interface ThreePoints {
  kind: string;
  low: number;
  likely: number;
  high: number;
}
