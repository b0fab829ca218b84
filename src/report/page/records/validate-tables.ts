import { number } from '../../../study/format.js';
import type { Compared, ValidateResults } from '../../../study/validate/results.js';
import { columns, type PageTable } from '../../columns.js';
import {
  agreesText,
  boundsText,
  isShare,
  mayText,
  shownOf,
  valueText,
  whatText,
} from '../../first/records/validate-told.js';
import { type Cell, type Form, rounded, type Valued, valued } from '../../sheets/cells.js';

const formOf = ({ topic }: Compared): Form => (isShare(topic) ? 'share' : 'number');

/** A value of a measure: shares in per cent on the page, 0 to 1 in a spreadsheet. */
const measured = (each: Compared, value: number | null): Cell =>
  value === null ? '' : valued(valueText(each, value), value, formOf(each));

/** Both ends of a band, each in a column of its own in a spreadsheet. */
const band = (each: Compared): Cell | Valued =>
  each.simulated === null
    ? ''
    : {
        text: boundsText(each),
        parts: [
          { name: 'low', value: each.simulated.low, form: formOf(each) },
          { name: 'high', value: each.simulated.high, form: formOf(each) },
        ],
      };

export const usesTable = ({ uses }: ValidateResults): PageTable => ({
  id: 'uses',
  title: 'What the model may be used for',
  note: 'A use may be made of the model where the log is not against any measure that it stands on.',
  ...columns(uses, [
    ['Use', 'use'],
    ['May it', ({ may }) => mayText(may)],
    ['Why', 'why'],
  ]),
});

export const causesTable = ({ causes }: ValidateResults): PageTable => ({
  id: 'causes',
  title: 'Inputs that do not agree',
  note:
    'The strongest evidence first. Chance: of a gap so large if the model is right, adjusted for all ' +
    'measures. Measure next is told of the first.',
  ...columns(causes, [
    ['Input', 'words'],
    ['Follows from another', ({ follows }) => (follows ? 'may' : 'no')],
    ['Chance', ({ adjusted }) => chance(adjusted)],
  ]),
});

export const measuresTable = (results: ValidateResults): PageTable => ({
  id: 'measures',
  title: 'All measures',
  note:
    'Between: where a build of the model lies, all measures together with ' +
    `${number(100 * results.level)} %. Chance: of a gap so large if the model is right, adjusted for all ` +
    'measures. People are told among the inputs.',
  ...columns(shownOf(results), [
    ['At', 'of'],
    ['Measure', whatText],
    ['Log', (each) => measured(each, each.real)],
    ['Model', (each) => measured(each, each.simulated?.middle ?? null)],
    ['Between', band],
    ['Agrees', agreesText],
    ['Chance', ({ adjusted }) => chance(adjusted)],
    ['Values', ({ n }) => (n === 0 ? '' : valued(String(n), n, 'count'))],
  ]),
});

function chance(adjusted: number | null): Cell {
  if (adjusted === null) return '';
  return valued(adjusted < 0.001 ? 'under 0.001' : number(adjusted), adjusted);
}

export const waitingTable = ({ waiting }: ValidateResults): PageTable => ({
  id: 'waiting',
  title: 'Waiting',
  note: 'Mean working minutes between arrival at a step and its start; not judged.',
  ...columns(waiting, [
    ['Step', 'step'],
    ['Log', ({ real }) => (real === null ? '' : rounded(real))],
    ['Model', ({ simulated }) => (simulated === null ? '' : rounded(simulated))],
  ]),
});
