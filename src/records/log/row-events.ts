import type { Names } from '../names.js';
import type { Oddities } from '../oddity.js';
import type { Cells } from '../table/cells.js';
import type { Clocks } from './clocks.js';
import type { Columns } from './columns.js';
import { EVENT_KINDS, type EventKind, type FloorEvent, UNIT } from './event.js';
import { listIn, NO_OTHERS, NO_VALUES, valuesIn } from './lists.js';

/** An event with the line on which it stands. */
export interface LoggedEvent extends FloorEvent {
  readonly line: number;
}

/** What rows are read with. */
export interface RowReading {
  readonly columns: Columns;
  readonly clocks: Clocks;
  readonly steps: Names;
  readonly stations: Names;
  readonly mapped: (values: Readonly<Record<string, string>>) => Readonly<Record<string, string>>;
  readonly oddities: Oddities;
}

/** Steps of these kinds may be left out: the unit is gone, or not there yet. */
const WITHOUT_STEP: readonly string[] = ['enter', 'ship', 'scrap'];
const KINDS: ReadonlyMap<string, EventKind> = new Map(EVENT_KINDS.map((kind) => [kind, kind]));

/** A row of a log of events: the event; undefined: it is left out, and counted. */
export function eventOf(
  cells: readonly string[],
  line: number,
  reading: RowReading,
): LoggedEvent | undefined {
  const { at } = reading.columns,
    written = cells.keptAt(at.event);
  const kind = KINDS.get(written) ?? KINDS.get(written.toLowerCase());
  if (kind === undefined) {
    const told = `rows whose event is none of ${EVENT_KINDS.join(', ')} are left out`;
    reading.oddities.add('unknown event', 'left out', line, written, told);
    return undefined;
  }
  const object = cells.keptAt(at.object);
  if (object === '') {
    reading.oddities.add(
      'no object',
      'left out',
      line,
      cells.all().join(','),
      'rows that name no unit are left out',
    );
    return undefined;
  }
  const where = placeOf(
    cells.keptAt(at.step),
    cells.keptAt(at.station),
    WITHOUT_STEP.includes(kind),
    line,
    reading,
  );
  if (where === undefined) return undefined;
  const time = reading.clocks.at(cells, at.at, object, where.step, where.station, line);
  if (time === undefined) return undefined;
  const others = cells.keptAt(at.others),
    values = cells.keptAt(at.values);
  return {
    at: time,
    kind,
    object,
    type: cells.keptAt(at.type) || UNIT,
    step: where.step,
    station: where.station,
    others: others === '' ? NO_OTHERS : listIn(others),
    values: values === '' ? NO_VALUES : reading.mapped(valuesIn(values)),
    line,
  };
}

/** Step and station by the names of the scenario; undefined: the row is left out, and counted. */
export function placeOf(
  step: string,
  station: string,
  mayLackStep: boolean,
  line: number,
  { steps, stations, oddities }: Pick<RowReading, 'steps' | 'stations' | 'oddities'>,
): { readonly step: string; readonly station: string } | undefined {
  let known: string | undefined = '';
  if (step !== '') known = steps.of(step);
  else if (!mayLackStep) {
    oddities.add('no step', 'left out', line, '', 'rows without a step are left out');
    return undefined;
  }
  if (known === undefined) {
    const told = (): string =>
      `rows of steps that the scenario does not have are left out: "${step}"${steps.hint(step)} ` +
      'A file for --names says what the log calls them';
    oddities.add('unknown step', 'left out', line, step, told);
    return undefined;
  }
  if (station === '') return { step: known, station };
  const at = stations.of(station);
  if (at === undefined) {
    const told = (): string =>
      `stations that the scenario does not have are not read: "${station}"${stations.hint(station)}`;
    oddities.add('unknown station', 'mended', line, station, told);
  }
  return { step: known, station: at ?? '' };
}
