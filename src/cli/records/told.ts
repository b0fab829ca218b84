import type { LogRead } from '../../records/log/cleaned.js';

/** Steps without a name in the scenario that are listed. */
const MOST_NAMES = 10;

/** What was read of a log and what was wrong with it, a line each. */
export function toldOfLog({
  rows,
  used,
  oddities,
  unknownSteps,
  ignored,
  encoding,
  form,
}: LogRead): string[] {
  const count = (n: number, one: string): string => `${n.toLocaleString('en')} ${n === 1 ? one : `${one}s`}`;
  return [
    `${count(rows, form === 'OCEL 2.0' ? 'event' : 'row')}, ${used.toLocaleString('en')} used`,
    ...(encoding === 'UTF-8' ? [] : [`the file is ${encoding}, and was read so`]),
    ...(ignored.length === 0 ? [] : [`columns that are not read: ${ignored.join(', ')}`]),
    ...oddities.map(
      ({ kind, rule, count: n, lines, told }) =>
        `${kind}: ${count(n, 'row')}, ${rule} (line${lines.length === 1 ? '' : 's'} ${lines.join(', ')}` +
        `${n > lines.length ? ' ..' : ''}): ${told}`,
    ),
    ...unknownSteps
      .slice(0, MOST_NAMES)
      .map(
        ({ name, count: n, near }) =>
          `the scenario has no step "${name}" (${count(n, 'row')})` +
          (near === undefined ? '' : `, did you mean "${near}"?`),
      ),
    ...(unknownSteps.length > MOST_NAMES ? [`and ${unknownSteps.length - MOST_NAMES} names more`] : []),
  ];
}
