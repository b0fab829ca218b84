/** What a number has ahead of its decimals. */
export type DecimalMark = '.' | ',';

const PLAIN = /^[+-]?\d+$/,
  POINT = /^[+-]?(\d+|\d{1,3}(,\d{3})+)?\.\d+$|^[+-]?\d{1,3}(,\d{3})+$/,
  COMMA = /^[+-]?(\d+|\d{1,3}(\.\d{3})+)?,\d+$|^[+-]?\d{1,3}(\.\d{3})+$/,
  POWER = /^[+-]?\d+(\.\d+)?[eE][+-]?\d+$/;

/**
 * The decimal mark of a column. Of `12,5` and `1.234,5` it is the comma, of `12.5` and `1,234.5` the point;
 * `1,234` alone may be either and proves nothing. `both`: some prove the one, some the other; undefined: none
 * proves anything.
 */
export function decimalMark(column: Iterable<string>): DecimalMark | 'both' | undefined {
  let points = false,
    commas = false;
  for (const text of column) {
    const isPoint = POINT.test(text),
      isComma = COMMA.test(text);
    if (isPoint && !isComma) points = true;
    if (isComma && !isPoint) commas = true;
  }
  return points && commas ? 'both' : commas ? ',' : points ? '.' : undefined;
}

/** NaN where it is no number with this mark; the other one stands between thousands. */
export function numberIn(text: string, mark: DecimalMark): number {
  if (PLAIN.test(text) || POWER.test(text)) return Number(text);
  if (mark === '.') return POINT.test(text) ? Number(text.replaceAll(',', '')) : NaN;
  return COMMA.test(text) ? Number(text.replaceAll('.', '').replace(',', '.')) : NaN;
}
