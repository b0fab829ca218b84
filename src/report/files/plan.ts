import { stringify } from 'yaml';
import type { Making } from '../../scenario/types/possible.js';

/** A change by its name, how often it is made, and the ISO date from which on it is there; none: at once. */
export interface PlannedChange extends Making {
  readonly name: string;
}

/**
 * A scenario file that makes changes of another one: it stands in the same folder.
 * @param base the name of the other file
 */
export const planFile = (base: string, changes: readonly PlannedChange[]): string =>
  yamlOf({
    include: [base],
    ...(changes.length > 0 && {
      costs: {
        changes: Object.fromEntries(
          together(changes).map((change) => [change.name, { made: writtenAs(change) }]),
        ),
      },
    }),
  });

/**
 * A file of what-ifs, one a step of a way, each with what the steps before it make.
 * @param also edits of each, from path to value
 * @param way what each step adds; of a change that comes again the times add up, from its later day on
 */
export const wayFile = (
  way: readonly (readonly PlannedChange[])[],
  also: Readonly<Record<string, unknown>> = {},
): string =>
  yamlOf(
    Object.fromEntries(
      way.map((step, i) => [
        `${i + 1}: ${step.map(({ name }) => name).join(' and ')}`,
        {
          changes: {
            ...also,
            ...Object.fromEntries(
              // In brackets a name ends where it ends, whatever other names there are.
              together(way.slice(0, i + 1).flat()).map((change) => [
                `costs.changes[${change.name}].made`,
                writtenAs(change),
              ]),
            ),
          },
        },
      ]),
    ),
  );

/** Lines are not folded, which nobody would search for a name in. */
const yamlOf = (value: object): string => stringify(value, { version: '1.2', lineWidth: 0 });

const writtenAs = ({ times, from }: PlannedChange): unknown =>
  times === 1 ? (from ?? 'yes') : { times, ...(from !== undefined && { from }) };

/** Each name once. */
function together(changes: readonly PlannedChange[]): readonly PlannedChange[] {
  const all = new Map<string, PlannedChange>();
  for (const change of changes) {
    const before = all.get(change.name);
    all.set(
      change.name,
      before === undefined
        ? change
        : {
            name: change.name,
            times: before.times + change.times,
            from: later(before.from, change.from),
          },
    );
  }
  return [...all.values()];
}

const later = (one: string | undefined, other: string | undefined): string | undefined =>
  one !== undefined && (other === undefined || one > other) ? one : other;
