import type { ComparedMeasure } from '../../study/compare/results.js';
import { count, exact } from '../../study/format.js';
import type { Results } from '../../study/simulate/results.js';
import { copied } from '../copying.js';
import { element } from '../elements.js';
import { type Moved, whatIfLines } from './kept.js';
import { headline, linesOf, priceText, rangeText, reasons } from './told.js';

const HEADS = ['', 'in the report', 'with the changes', 'difference'];

/** What became of the changes: a sentence, a table beside the report's numbers, and a way to keep them. */
export class Outcome {
  /** To be put into the page, in this order. */
  readonly parts: readonly HTMLElement[];
  private readonly told = element('p', { className: 'outcome' });
  private readonly why = element('p');
  private readonly aside = element('p');
  private readonly table = element('table');
  private readonly agreed = element('p', { className: 'note' });
  private readonly lines = element('pre', { tabIndex: 0, ariaLabel: 'lines for a file of what-ifs' });
  private readonly kept: HTMLDetailsElement;
  private readonly back: HTMLButtonElement;

  /** @param reset is called when the reader wants the report's numbers back */
  constructor(
    private readonly report: Results,
    reset: () => void,
  ) {
    this.told.setAttribute('aria-live', 'polite');
    this.back = element('button', { type: 'button', hidden: true }, 'Back to the report');
    this.back.addEventListener('click', reset);
    const copy = element('button', { type: 'button' }, 'Copy the lines');
    copy.addEventListener('click', () => {
      void copied(this.lines.textContent).then((isDone) => {
        copy.textContent = isDone ? 'Copied' : 'Mark the lines and copy them';
      });
    });
    this.kept = element(
      'details',
      { hidden: true },
      element('summary', {}, 'Keep it'),
      element(
        'p',
        {},
        'Put these lines into a file of what-ifs; `rateproof compare` runs them with all that belongs to a ' +
          'report. The address of this page holds the changes too: keep it, or send it with the page.',
      ),
      this.lines,
      copy,
    );
    const scroll = element(
      'div',
      { className: 'scroll', tabIndex: 0, ariaLabel: 'report and changes' },
      this.table,
    );
    scroll.setAttribute('role', 'region');
    this.parts = [this.told, this.why, this.aside, scroll, this.agreed, this.back, this.kept];
    this.fill([], null);
  }

  /** Other numbers are set, and nothing is known of them yet; none: all is as in the report. */
  begin(moved: readonly Moved[]): void {
    const isMoved = moved.length > 0;
    this.back.hidden = this.kept.hidden = !isMoved;
    this.lines.textContent = isMoved ? whatIfLines(moved) : '';
    this.told.textContent = isMoved ? 'Running the build with these numbers ...' : 'As in the report.';
    this.aside.textContent = [rangeText(moved), priceText(moved, this.report)]
      .filter((text) => text !== '')
      .join(' ');
    this.why.textContent = this.agreed.textContent = '';
    this.fill([], null);
  }

  seen(rows: readonly ComparedMeasure[], done: number): void {
    this.told.textContent = headline(this.report, rows, done, null);
    this.fill(rows, null);
  }

  whole(rows: readonly ComparedMeasure[], results: Results): void {
    this.told.textContent = headline(this.report, rows, results.replications, results);
    this.why.textContent = reasons(results);
    this.fill(rows, results);
  }

  refused(why: readonly string[]): void {
    this.told.textContent = `This cannot be. ${why.join('. ')}.`;
    this.fill([], null);
  }

  /** Whether the report's own build comes out here as it did there. */
  agrees(done: number, same: number): void {
    const builds = count(done, 'build');
    this.agreed.textContent =
      done === same
        ? `The report's own build was run here too: ${builds}, each with the digits of the report.`
        : `Take care: of ${builds} of the report that were run here, ${exact(done - same)} came out with ` +
          'other digits. The differences above are against those that were run here.';
  }

  private fill(rows: readonly ComparedMeasure[], results: Results | null): void {
    const isAlone = rows.length === 0,
      heads = isAlone ? HEADS.slice(0, 2) : HEADS,
      head = element('thead', {}, element('tr', {}, ...heads.map((text) => headOf(text, 'col'))));
    const body = linesOf(this.report, rows, results).map(({ name, report, now, difference }) =>
      element(
        'tr',
        {},
        headOf(name, 'row'),
        ...(isAlone ? [report] : [report, now, difference]).map((text, i) => {
          const cell = element('td', {}, text);
          // Said before the figure where rows stand under each other.
          cell.dataset['head'] = HEADS[i + 1];
          return cell;
        }),
      ),
    );
    this.table.replaceChildren(
      element('caption', {}, 'Means, with their 95 % intervals in brackets.'),
      head,
      element('tbody', {}, ...body),
    );
  }
}

const headOf = (text: string, scope: string): HTMLTableCellElement => element('th', { scope }, text);
