import type { Model } from '../../flow/model/model.js';

/** A place in a compiled model: a column such as `stations.places`, and the row in it. */
export interface Where {
  readonly column: string;
  readonly at: number;
}

/**
 * Where two models differ; null where they differ in their shape, so that an id of the one may mean another
 * thing in the other. Draws stand as `draws`, by draw; what lies deeper than a row counts as the row.
 */
export function differencesOf(one: Model, other: Model): Where[] | null {
  const found = new Map<string, Where>(),
    isAlike = compare(one, other, '', -1, (column, at) => {
      found.set(JSON.stringify([column, at]), { column, at });
    });
  return isAlike ? [...found.values()] : null;
}

/** False: they have not the same shape. */
function compare(
  one: unknown,
  other: unknown,
  column: string,
  at: number,
  tell: (column: string, at: number) => void,
): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== typeof other) return false;
  // Names and words tell what a thing is.
  if (typeof one === 'string') return false;
  if (typeof one !== 'object' || one === null || other === null) {
    tell(column, at);
    return typeof one !== 'object';
  }
  if (Array.isArray(one) || ArrayBuffer.isView(one)) {
    const rows = one as ArrayLike<unknown>,
      others = other as ArrayLike<unknown>;
    if (rows.length !== others.length) return false;
    for (let row = 0; row < rows.length; row++)
      if (!compare(rows[row], others[row], column, at < 0 ? row : at, tell)) return false;
    return true;
  }
  if (column === 'draws' && 'distribution' in one && 'distribution' in (other as object))
    return compareDraws(one, other as typeof one, at, tell);
  const keys = Object.keys(one);
  return (
    keys.length === Object.keys(other as object).length &&
    keys.every((key) =>
      compare(
        one[key as keyof typeof one],
        (other as typeof one)[key as keyof typeof one],
        column === '' ? key : `${column}.${key}`,
        at,
        tell,
      ),
    )
  );
}

/** Distributions may be of other kinds. */
function compareDraws(
  one: { readonly distribution: unknown; readonly name?: unknown },
  other: { readonly distribution: unknown; readonly name?: unknown },
  at: number,
  tell: (column: string, at: number) => void,
): boolean {
  if (one.name !== other.name) return false;
  const isSame = compare(one.distribution, other.distribution, 'draws', at, () => {
    tell('draws', at);
  });
  if (!isSame) tell('draws', at);
  return true;
}
