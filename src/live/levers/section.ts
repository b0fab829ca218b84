import type { TryIt } from '../../report/page/try-it.js';
import type { SetLever } from '../../scenario/levers.js';
import type { ComparedMeasure } from '../../study/compare/results.js';
import { exact } from '../../study/format.js';
import type { Results } from '../../study/simulate/results.js';
import { unpacked } from '../data.js';
import { element } from '../elements.js';
import type { Asked, Told } from '../engine/messages.js';
import { addressOf, holdsChanges, type Moved, numbersIn } from './kept.js';
import { Outcome } from './outcome.js';

/** Milliseconds that a reader is given to go on changing a number. */
const PATIENCE = 400;

/** The levers of the page: what the reader sets, and what the engine says of it. */
class Levers {
  private readonly fields: readonly HTMLInputElement[];
  private readonly outcome: Outcome;
  private engine: Promise<Worker> | undefined;
  private numbers: readonly number[];
  private waiting: ReturnType<typeof setTimeout> | undefined;
  private id = 0;
  private rows: readonly ComparedMeasure[] = [];

  constructor(
    section: HTMLElement,
    private readonly tryIt: TryIt,
    private readonly report: Results,
  ) {
    const { levers } = tryIt,
      { replications, costs } = report;
    this.numbers = levers.map(({ now }) => now);
    this.fields = levers.map(fieldOf);
    this.outcome = new Outcome(report, () => {
      this.set(levers.map(({ now }) => now));
    });
    const rows = levers.map((lever, i) =>
      rowOf(lever, this.fields[i] as HTMLInputElement, costs?.currency, (by) => {
        this.step(i, by);
      }),
    );
    section.append(
      element(
        'p',
        { className: 'soft' },
        `Change a number: this page runs the build again, up to ${exact(replications)} times with the ` +
          'same random events, and sets it against the report. It may take a minute.',
      ),
      element('div', { className: 'levers', role: 'group', ariaLabel: 'what to change' }, ...rows),
      ...this.outcome.parts,
    );
    for (const field of this.fields)
      field.addEventListener('input', () => {
        this.changed();
      });
    const follow = (): void => {
      const { hash } = window.location;
      if (holdsChanges(hash)) this.set(numbersIn(hash, levers));
    };
    window.addEventListener('hashchange', follow);
    section.hidden = false;
    follow();
  }

  private step(i: number, by: number): void {
    const field = this.fields[i],
      lever = this.tryIt.levers[i];
    if (field === undefined || lever === undefined) return;
    const to = Number((field.valueAsNumber + by * lever.step).toPrecision(12));
    field.valueAsNumber = Number.isFinite(to) ? to : lever.now;
    this.changed();
  }

  private set(numbers: readonly number[]): void {
    this.fields.forEach((field, i) => {
      field.valueAsNumber = numbers[i] ?? NaN;
    });
    this.changed();
  }

  /** Reads the fields, and asks the engine once the reader has stopped. */
  private changed(): void {
    const numbers = this.fields.map((field) => field.valueAsNumber);
    this.fields.forEach((field, i) => {
      field.setAttribute('aria-invalid', String(!Number.isFinite(numbers[i])));
    });
    if (numbers.every((to, i) => to === this.numbers[i])) return;
    clearTimeout(this.waiting);
    this.id++;
    this.rows = [];
    this.numbers = numbers;
    const missing = numbers.findIndex((to) => !Number.isFinite(to));
    if (missing >= 0) {
      this.outcome.refused([`${this.tryIt.levers[missing]?.name ?? ''}: expected a number, got none`]);
      return;
    }
    const moved = this.moved();
    window.location.replace(addressOf(moved));
    this.outcome.begin(moved);
    this.waiting = setTimeout(() => {
      void this.ask();
    }, PATIENCE);
  }

  private moved(): Moved[] {
    return this.tryIt.levers.flatMap((lever, i) => {
      const to = this.numbers[i] ?? lever.now;
      return to === lever.now ? [] : [{ lever, to }];
    });
  }

  /** Levers as in the report end what is under way: the report's own numbers stand. */
  private async ask(): Promise<void> {
    const isMoved = this.moved().length > 0,
      asked: Asked = isMoved ? { kind: 'try', id: this.id, numbers: this.numbers } : { kind: 'rest' };
    if (!isMoved && this.engine === undefined) return;
    (await (this.engine ??= this.begin())).postMessage(asked);
  }

  private async begin(): Promise<Worker> {
    const code = await unpacked('engine'),
      worker = new Worker(URL.createObjectURL(new Blob([code], { type: 'text/javascript' })));
    worker.addEventListener('message', ({ data }: MessageEvent<Told>) => {
      this.hear(data);
    });
    worker.addEventListener('error', ({ message }) => {
      this.outcome.refused([`this browser cannot run the engine: ${message}`]);
    });
    const { seed, replications, level, scenario, runs } = this.report,
      begin: Asked = {
        kind: 'begin',
        tryIt: this.tryIt,
        report: { seed, replications, level, scenario, runs },
      };
    worker.postMessage(begin);
    return worker;
  }

  private hear(told: Told): void {
    if (told.kind === 'agrees') {
      this.outcome.agrees(told.done, told.same);
      return;
    }
    if (told.kind === 'fault') {
      this.outcome.refused([`fault of this page: ${told.message}`]);
      return;
    }
    // Of a try that was ended.
    if (told.id !== this.id) return;
    if (told.kind === 'refused') this.outcome.refused(told.why);
    else if (told.kind === 'seen') this.outcome.seen((this.rows = told.rows), told.done);
    else this.outcome.whole(this.rows, told.results);
  }
}

function fieldOf({ now, step }: SetLever, i: number): HTMLInputElement {
  const field = element('input', { type: 'number', id: `lever-${i}` });
  field.step = 'any';
  field.valueAsNumber = now;
  field.setAttribute('inputmode', Number.isInteger(now) && Number.isInteger(step) ? 'numeric' : 'decimal');
  return field;
}

/** A sentence with a number in it, and how far the planner looked. */
function rowOf(
  { name, now, from, to, price, step, unit }: SetLever,
  field: HTMLInputElement,
  currency: string | undefined,
  move: (by: number) => void,
): HTMLElement {
  const button = (by: number, sign: string, word: string): HTMLElement => {
    const made = element('button', { type: 'button', ariaLabel: `${word}: ${name}` }, sign);
    made.addEventListener('click', () => {
      move(by);
    });
    return made;
  };
  const each = step === 1 ? 'one more' : `${exact(step)}${unit} more`;
  return element(
    'div',
    { className: 'lever' },
    button(-1, '−', 'less'),
    field,
    button(1, '+', 'more'),
    element('label', { htmlFor: field.id }, `${unit} ${name}`),
    element(
      'span',
      { className: 'soft' },
      `report: ${exact(now)}; looked at: ${exact(from)} to ${exact(to)}` +
        (price === null ? '' : `; ${each} costs ${exact(price)} ${currency ?? ''}`),
    ),
  );
}

/** Puts the levers into a page that carries some. */
export async function putLevers(report: Results): Promise<void> {
  const section = document.getElementById('try-it');
  if (section === null) return;
  new Levers(section, JSON.parse(await unpacked('levers')) as TryIt, report);
}
