/** What a value was measured from: how many, between which days, in which file. */
export interface Source {
  /** `times.csv`. */
  readonly file: string;
  /** First and last day, `2027-08-16`; none where the records tell no dates. */
  readonly from?: string;
  readonly to?: string;
}

/** A part of a scenario as data, to be written as YAML. */
export type Written = string | number | { readonly [key: string]: Written };

/** What a basis may tell besides: how many were found, or a standard error, of a rate that of its log2. */
type Counted = { readonly found: number } | { readonly 'standard error': number };

/** `{ measured: 84, from: 2027-08-16, to: 2027-10-29, file: times.csv }`, for the key `basis`. */
export const basisOf = (
  n: number,
  { file, from, to }: Source,
  counted?: Counted,
): { readonly [key: string]: Written } => ({
  measured: n,
  ...counted,
  ...(from === undefined ? {} : { from }),
  ...(to === undefined ? {} : { to }),
  file,
});

/** So many digits are written: more than any count of units tells, so that a value can be read back. */
const DIGITS = 9;

/** Without an exponent. */
function plain(value: number): string {
  const short = Number(value.toPrecision(DIGITS)),
    text = String(short);
  return text.includes('e') ? short.toFixed(20).replace(/\.?0+$/, '') : text;
}

/** `42.5 min`. */
export const minutesText = (minutes: number): string => `${plain(minutes)} min`;

/** `6.25 %`. */
export const percentText = (share: number): string => `${plain(100 * share)} %`;

/** For a sentence: `6.3 %`, two digits where it is small. */
export const roughPercent = (share: number): string => `${rough(100 * share)} %`;

/** For a sentence, three digits at most: `42.5 min`, `61.3 h`. */
export const roughTime = (minutes: number): string =>
  minutes < 120 ? `${rough(minutes)} min` : `${rough(minutes / 60)} h`;

const rough = (value: number): string =>
  value >= 1000 ? String(Math.round(value)) : String(Number(value.toPrecision(value >= 10 ? 3 : 2)));

/** `1 unit`, `12 units`. */
export const counted = (n: number, one: string, more = `${one}s`): string => `${n} ${n === 1 ? one : more}`;
