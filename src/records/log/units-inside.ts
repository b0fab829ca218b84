import type { Oddities } from '../oddity.js';
import type { LoggedEvent } from './row-events.js';

/** What is remembered of a unit or sub-assembly inside. */
interface Inside {
  last: number;
  /** What it had at that time. */
  instant: LoggedEvent[];
  /** Steps begun and not ended; `crossed`: another was begun since. */
  open: { readonly step: string; readonly line: number; crossed: boolean }[];
}

/** Units behind which nothing more comes for so long are forgotten when there are many, minutes. */
const SILENT = 60 * 24 * 60,
  MANY = 50_000;

/**
 * Looks at what comes in order of time, unit by unit: what is said twice, what begins and does not end, what
 * is under way at once. Nothing but duplicates and what comes too late is left out: whoever pairs a start
 * with its end finds none where one is missing.
 */
export class UnitsInside {
  private readonly inside = new Map<string, Inside>();
  private forgetAt = MANY;

  /** @param mayBoth whether two steps may be done on one unit at once */
  constructor(
    private readonly oddities: Oddities,
    private readonly mayBoth: (step: string, other: string) => boolean,
  ) {}

  /** Whether the event is used. */
  takes(event: LoggedEvent, isRowOfItsOwn: boolean): boolean {
    const { at, kind, object, type, step, line } = event,
      key = type === 'unit' ? object : `${type}\n${object}`;
    let unit = this.inside.get(key);
    if (unit === undefined) {
      unit = { last: at, instant: [], open: [] };
      this.inside.set(key, unit);
      if (this.inside.size > this.forgetAt) this.forget(at);
    }
    if (at < unit.last && isRowOfItsOwn) {
      const told = 'rows that come more than 5,000 rows after where they belong are left out; sort the file';
      this.oddities.add('far out of order', 'left out', line, `${object} ${step}`, told);
      return false;
    }
    if (at > unit.last) {
      unit.last = at;
      unit.instant.length = 0;
    } else if (isRowOfItsOwn && unit.instant.some((other) => isSame(event, other))) {
      const told = 'rows that say the same again are left out';
      this.oddities.add('duplicate', 'left out', line, `${kind} ${object} ${step}`, told);
      return false;
    }
    unit.instant.push(event);
    this.follow(event, unit);
    if (kind === 'ship' || kind === 'scrap') this.inside.delete(key);
    // What has joined is inside no more.
    if (kind === 'join') for (const other of event.others) this.inside.delete(other.replace(':', '\n'));
    return true;
  }

  private follow({ kind, step, line, object }: LoggedEvent, { open }: Inside): void {
    const { oddities } = this;
    switch (kind) {
      case 'start':
        this.miss(open, object, (each) => each.step === step);
        for (const each of open) each.crossed ||= !this.mayBoth(each.step, step);
        open.push({ step, line, crossed: false });
        return;
      case 'end': {
        const at = open.findIndex((each) => each.step === step),
          begun = open[at];
        if (begun === undefined) {
          const told = 'ends without a start are taken, but no working time is known of them';
          oddities.add('missing start', 'taken as it is', line, `${object} ${step}`, told);
          return;
        }
        open.splice(at, 1);
        if (!begun.crossed) return;
        const told = 'steps that one unit is at at once are taken, though their times overlap';
        oddities.add('overlap', 'taken as it is', line, `${object} ${step}`, told);
        return;
      }
      case 'arrive':
        this.miss(open, object, (each) => !this.mayBoth(each.step, step));
        return;
      case 'ship':
      case 'scrap':
        this.miss(open, object, () => true);
        return;
      default:
    }
  }

  /** They have begun, and must have ended. */
  private miss(open: Inside['open'], object: string, which: (each: Inside['open'][number]) => boolean): void {
    for (const each of open.filter(which)) {
      open.splice(open.indexOf(each), 1);
      const told = 'starts without an end are taken, but no working time is known of them';
      this.oddities.add('missing end', 'taken as it is', each.line, `${object} ${each.step}`, told);
    }
  }

  private forget(now: number): void {
    for (const [key, { last }] of this.inside) if (last < now - SILENT) this.inside.delete(key);
    this.forgetAt = Math.max(MANY, 2 * this.inside.size);
  }
}

function isSame(a: LoggedEvent, b: LoggedEvent): boolean {
  return (
    a.kind === b.kind &&
    a.step === b.step &&
    a.station === b.station &&
    a.others.join('\n') === b.others.join('\n') &&
    sameValues(a.values, b.values)
  );
}

const sameValues = (a: LoggedEvent['values'], b: LoggedEvent['values']): boolean =>
  a === b || JSON.stringify(a) === JSON.stringify(b);
