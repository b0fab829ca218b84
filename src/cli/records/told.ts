import type { LogRead } from '../../records/log/cleaned.js';

/** Steps without a name in the scenario that are listed. */
const MOST_NAMES = 10;

/** What was read of a log, a line each; what was wrong with its rows are its oddities. */
export function toldOfLog({ rows, used, unknownSteps, ignored, encoding, form }: LogRead): string[] {
  const count = (n: number, one: string): string => `${n.toLocaleString('en')} ${n === 1 ? one : `${one}s`}`;
  return [
    `${count(rows, form === 'OCEL 2.0' ? 'event' : 'row')}, ${used.toLocaleString('en')} used`,
    ...(encoding === 'UTF-8' ? [] : [`the file is ${encoding}, and was read so`]),
    ...(ignored.length === 0 ? [] : [`columns that are not read: ${ignored.join(', ')}`]),
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
