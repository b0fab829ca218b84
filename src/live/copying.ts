import { csv, type FileTable } from '../report/files/folder/csv.js';
import { unpacked } from './data.js';
import { element } from './elements.js';

/** Head and rows as they go into a spreadsheet: numbers by themselves, days in ISO form. */
type Table = Pick<FileTable, 'head' | 'rows'>;

/** What a spreadsheet takes from the clipboard: the same fields, with tabs between them. */
export const tabbed = (table: Table): string => csv({ ...table, forms: [] }, '\t');

/** Puts a text on the clipboard; false where the browser lets nobody. */
export async function copied(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    // A page in a frame or from an old browser: the way by a marked text, which needs no leave.
    const area = element('textarea', { value: text, className: 'unseen' });
    document.body.append(area);
    area.select();
    // eslint-disable-next-line @typescript-eslint/no-deprecated -- nothing else is left there
    const isDone = document.execCommand('copy');
    area.remove();
    return isDone;
  }
}

function button(label: string, name: string, act: () => void): HTMLButtonElement {
  const made = element('button', { type: 'button', ariaLabel: `${label}: ${name}` }, label);
  made.addEventListener('click', act);
  return made;
}

/**
 * Buttons that copy a table and save it as a CSV file, with the words that say so.
 * @param name of the table, for a screen reader
 * @param file name of the CSV file
 */
export function toolsOf(name: string, file: string, table: () => Table): HTMLElement {
  const tools = element('div', { className: 'tools' }),
    said = element('span');
  said.setAttribute('role', 'status');
  const copy = button('Copy', name, () => {
    said.textContent = '';
    const focused = document.activeElement;
    void copied(tabbed(table())).then((isDone) => {
      if (focused instanceof HTMLElement) focused.focus();
      said.textContent = isDone ? 'copied' : 'this browser does not let the page copy; save the CSV file';
    });
  });
  const save = button('CSV', name, () => {
    const url = URL.createObjectURL(new Blob([csv({ ...table(), forms: [] })], { type: 'text/csv' }));
    element('a', { href: url, download: file }).click();
    said.textContent = `saved as ${file}`;
    setTimeout(() => {
      URL.revokeObjectURL(url);
    }, 10_000);
  });
  tools.append(copy, save, said);
  return tools;
}

/** Gives every table of the page its buttons. */
export async function makeCopyable(): Promise<void> {
  const cells = JSON.parse(await unpacked('cells')) as Readonly<Record<string, Table>>;
  for (const details of document.querySelectorAll<HTMLDetailsElement>('details.table')) {
    const table = cells[details.id],
      name = details.querySelector('summary')?.textContent ?? '';
    if (table === undefined) continue;
    details.querySelector('.scroll')?.before(toolsOf(name, `table-${details.id}.csv`, () => table));
  }
}
