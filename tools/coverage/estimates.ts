import type { Estimate } from '../../src/study/statistics/estimate.js';

/** An estimate somewhere in results. */
export interface Found {
  /** Where it stands, rows by their names: `buffers[paint bay, buffer, works].full`. */
  readonly path: string;
  /** The same without the rows: `buffers[].full`. */
  readonly measure: string;
  readonly estimate: Estimate;
}

/** All estimates in results, whatever their shape. */
export function* estimatesIn(results: unknown, path = '', measure = ''): Generator<Found> {
  if (typeof results !== 'object' || results === null) return;
  if (isEstimate(results)) {
    yield { path, measure, estimate: results };
  } else if (Array.isArray(results)) {
    const names = rowNames(results);
    for (const [i, row] of results.entries()) yield* estimatesIn(row, `${path}[${names[i]}]`, `${measure}[]`);
  } else {
    const under = (key: string, above: string): string => (above === '' ? key : `${above}.${key}`);
    for (const [key, part] of Object.entries(results))
      yield* estimatesIn(part, under(key, path), under(key, measure));
  }
}

const isEstimate = (value: object): value is Estimate =>
  'mean' in value && 'low' in value && 'high' in value && 'n' in value;

/**
 * What tells the rows of an array apart whatever their order: their texts; by number where there are none or
 * where they are the same.
 */
function rowNames(rows: readonly unknown[]): string[] {
  const names = rows.map((row) =>
    typeof row === 'object' && row !== null && !isEstimate(row)
      ? Object.values(row)
          .filter((part) => typeof part === 'string')
          .join(', ')
      : '',
  );
  const seen = new Map<string, number>();
  return names.map((name) => {
    const times = (seen.get(name) ?? 0) + 1;
    seen.set(name, times);
    return name === '' ? String(times - 1) : times > 1 ? `${name} ${times}` : name;
  });
}
