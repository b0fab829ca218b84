import type { LogTold } from '../../../records/log-told.js';
import { csv, fileTable } from './csv.js';

/** A file of the rows of a log that are not used; none where all are. */
export const leftOutFile = ({ leftOut }: LogTold): [name: string, text: string][] =>
  leftOut.length === 0
    ? []
    : [
        [
          'left-out.csv',
          csv(
            fileTable(leftOut, [
              ['line', 'line'],
              ['why', 'why'],
              ['says', 'says'],
            ]),
          ),
        ],
      ];
