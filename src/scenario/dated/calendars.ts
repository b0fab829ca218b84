import type { CrewShiftColumns } from '../../flow/model/crews.js';
import type { CalendarColumns } from '../../flow/model/time.js';
import { ALWAYS } from '../calendar/book.js';
import { sameColumns, type WindowRow, windowColumns } from '../calendar/roster.js';
import { at, column } from '../lookup/columns.js';

/** A window of a calendar that is cut together, and which stage and which window there it comes from. */
interface CutWindow extends WindowRow {
  end: number;
  readonly stage: number;
  readonly window: number;
}

/**
 * One calendar of several that hold one after the other, each up to its date and the last one for ever: cut
 * at the dates. A window that goes on over a date, in the same shift of both, stays one.
 */
function cutTogether(calendars: readonly CalendarColumns[], dates: readonly number[]): CutWindow[] {
  const rows: CutWindow[] = [];
  calendars.forEach((calendar, stage) => {
    const from = dates[stage - 1] ?? -Infinity,
      to = dates[stage] ?? Infinity;
    for (let window = 0; window < calendar.start.length; window++) {
      const start = at(calendar.start, window),
        row = {
          start: Math.max(start, from),
          end: Math.min(at(calendar.end, window), to),
          shiftEnd: at(calendar.shiftEnd, window),
          overtime: at(calendar.overtime, window),
          rules: at(calendar.rules, window),
          stage,
          window,
        };
      if (row.end <= row.start) continue;
      const last = rows.at(-1);
      if (start < from && last?.end === from && isSame(last, row)) last.end = row.end;
      else rows.push(row);
    }
  });
  return rows;
}

const isSame = (a: WindowRow, b: WindowRow): boolean =>
  a.shiftEnd === b.shiftEnd && Number(a.overtime) === Number(b.overtime) && a.rules === b.rules;

/** Calendars of several models that hold one after the other, as those of a single one. */
export class CutCalendars {
  readonly columns: CalendarColumns[] = [];
  private readonly ids = new Map<string, number>();

  /** @param calendars of each model, in order of time; dates are between them */
  constructor(
    private readonly calendars: readonly (readonly CalendarColumns[])[],
    private readonly dates: readonly number[],
  ) {}

  /**
   * Id of what has these ids in the models; undefined where it is always on in some and has hours in others.
   */
  id(ids: readonly number[]): number | undefined {
    if (ids.every((id) => id === ALWAYS)) return ALWAYS;
    if (ids.includes(ALWAYS)) return undefined;
    const key = ids.join(),
      known = this.ids.get(key);
    if (known !== undefined) return known;
    const made = windowColumns(this.windows(ids)),
      same = this.columns.findIndex((each) => sameColumns(each, made)),
      id = same < 0 ? this.columns.push(made) - 1 : same;
    this.ids.set(key, id);
    return id;
  }

  /**
   * Shifts of a crew with these calendars. A shift that goes on over a date keeps the people with whom it
   * began.
   */
  shifts(ids: readonly number[], shifts: readonly CrewShiftColumns[]): CrewShiftColumns {
    const last = at(shifts, shifts.length - 1),
      windows = this.windows(ids),
      shiftOf = ({ stage, window }: CutWindow): number => {
        const { firstWindow } = at(shifts, stage);
        let k = 0;
        while (at(firstWindow, k + 1) <= window) k++;
        return k;
      };
    const kept = windows.map((each) => {
      const shift = shiftOf(each),
        { position, people, absence } = at(shifts, each.stage);
      return { ...each, shift, position: at(position, shift), people: at(people, shift), absence };
    });
    const firsts = kept
      .map((each, w) => ({ ...each, w }))
      .filter(({ stage, shift, position, shiftEnd, w }) => {
        const before = kept[w - 1];
        if (before === undefined) return true;
        return before.stage === stage
          ? before.shift !== shift
          : before.position !== position || before.shiftEnd !== shiftEnd;
      });
    return {
      ...last,
      firstWindow: Int32Array.from([...firsts.map(({ w }) => w), kept.length]),
      position: column(firsts, ({ position }) => position),
      people: column(firsts, ({ people }) => people),
      ...(shifts.every(({ absence }) => absence === last.absence)
        ? {}
        : { absences: Float64Array.from(firsts, ({ absence }) => absence) }),
    };
  }

  private windows(ids: readonly number[]): CutWindow[] {
    return cutTogether(
      ids.map((id, stage) => at(at(this.calendars, stage), id)),
      this.dates,
    );
  }
}
