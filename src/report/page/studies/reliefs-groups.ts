import { exact, intervalName } from '../../../study/format.js';
import { unitsEach } from '../../../study/planners-unit.js';
import type { ReliefsResults } from '../../../study/reliefs/results.js';
import { columns, type PageTable } from '../../columns.js';
import { onEveryShift } from '../../constraint.js';
import { valued } from '../../sheets/cells.js';

/** Reliefs that were given up together. */
export function groupsTable({ groups, eachLevel, rateUnit }: ReliefsResults): PageTable {
  return {
    id: 'groups',
    title: 'Reliefs tried together',
    note:
      `Gain: of all reliefs of a group at once, ${unitsEach(rateUnit)}; in brackets: ` +
      `${intervalName(eachLevel.reliefs)}. They were not tried one by one: none of them can be among the ` +
      'best, if none takes away what others gain.',
    ...columns(groups, [
      ['Gain', 'gain'],
      ['Replications', 'replications'],
      ['Reliefs', ({ reliefs }) => valued(exact(reliefs.length), reliefs.length)],
      ['Which', ({ reliefs }) => reliefs.map(({ text }) => onEveryShift(text)).join('; ')],
    ]),
  };
}

/** What was seen of reliefs that take away what others gain. */
export function harmNotes({ harm: { found } }: ReliefsResults): string[] {
  const told = found.map((all) => all.map(onEveryShift).join(', ')).join('; or ');
  return found.length === 0
    ? []
    : [
        `Some of these surely take away what others gain: ${told}. What stood in a group with them may ` +
          'gain more than the group.',
      ];
}
