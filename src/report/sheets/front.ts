import { linesOf, whole } from '../first/first.js';
import { type PageContent, SAFETY_CAUTION } from '../page/page.js';
import type { Cell } from './cells.js';
import { laidOut, type Sheet } from './layout.js';

/** What a sheet holds, for the list of sheets. */
export interface Listed {
  readonly name: string;
  readonly title: string;
  readonly note: string;
}

/** The first screen in rows, then what was found, what it rests on, and where it comes from. */
export function answerSheet({ first, ...content }: PageContent): Sheet {
  const all =
    (what: string) =>
    (text: string): Cell[] => [what, text];
  return laidOut(
    ['What', 'In words'],
    [
      ['Question', first.question],
      ['Answer', first.answer],
      ...linesOf(first).map((line): Cell[] => [line.name, whole(line)]),
      [first.next.what, first.next.command],
      ['Besides', first.besides],
      ['In full', content.inFull],
      ...content.losses.map(all('Where the capacity goes')),
      ...content.findings.map(all('Finding')),
      ...content.costsAndDates.map(all('Cost and date')),
      ...content.assumptions.map(all('Rests on')),
      ...content.facts.map(([what, value]): Cell[] => [what, value]),
      ['Safety', SAFETY_CAUTION],
    ],
  );
}

/** The notes are those of the page. */
const INTERVALS =
  'What a note calls in brackets has columns of its own here: low and high are the ends of the interval; ' +
  'needs: how many replications would do for one; under: what was seen in no replication is at most so ' +
  'much. Shares are numbers from 0 to 1, shown in per cent. Empty: there is no such value.';

/** What the other sheets hold, a row a sheet, with the notes that stand over the tables of the page. */
export const contentsSheet = (sheets: readonly Listed[]): Sheet =>
  laidOut(
    ['Sheet', 'Table', 'Note'],
    [['every sheet', '', INTERVALS], ...sheets.map(({ name, title, note }) => [name, title, note])],
  );
