import { shownJson } from '../study/shown.js';
import { tenDigits } from '../study/ten-digits.js';

/** Keys that stand first in their object, so that a reader sees at once what a file is. */
const FIRST = ['format', 'version'];

/**
 * JSON that is the same for the same content: keys sorted (`format` and `version` first), two spaces of
 * indent, numbers rounded to 10 significant digits, marks that a terminal would act on as escapes, a line end
 * at the end. A number that is not finite, which
 * JSON cannot hold, throws with its path.
 */
export function stableJson(value: unknown): string {
  return shownJson(JSON.stringify(stable(value, ''), null, 2)) + '\n';
}

function stable(value: unknown, path: string): unknown {
  if (typeof value === 'number') {
    if (!Number.isFinite(value))
      throw new RangeError(
        `${path || 'results'}: expected a finite number, got ${value}\n` +
          'hint: this is a fault of the program, please report it with the scenario',
      );
    return tenDigits(value);
  }
  if (Array.isArray(value)) return value.map((each, index) => stable(each, `${path}[${index}]`));
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(
      Object.entries(value)
        .filter(([, each]) => each !== undefined)
        .sort(([a], [b]) => rank(a) - rank(b) || (a < b ? -1 : 1))
        .map(([key, each]) => [key, stable(each, path === '' ? key : `${path}.${key}`)]),
    );
  }
  return value;
}

function rank(key: string): number {
  const index = FIRST.indexOf(key);
  return index === -1 ? FIRST.length : index;
}
