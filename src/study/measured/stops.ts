import type { StationStops, StopsRead } from '../../records/table/stopped.js';
import { dayText } from '../../records/table/table.js';
import { LEVEL } from '../asked.js';
import type { Source } from '../chances/measured.js';
import { type Between, type Span, type Spans, spansOf } from '../chances/spans.js';
import { type FitOfSpans, fitStops } from '../chances/stops.js';
import { writtenFailures } from '../chances/written.js';
import { exact } from '../format.js';
import { sumOf } from '../statistics/sums.js';
import { entryOf, flow } from './entry.js';
import type { FailingPlace } from './failing.js';
import type { SpansResult, StopsResult, Told } from './results.js';

export interface StopsAsked {
  readonly file: string;
  /** Of a station: when it was watched, minutes since 1970-01-01T00:00Z; undefined where nobody says. */
  readonly watch: (station: string) => { readonly from: number | undefined; readonly to: number | undefined };
  readonly places: ReadonlyMap<string, FailingPlace> | undefined;
  readonly minutesOf: (station: string) => { readonly up: Between; readonly down: Between };
  /** Share of its hours in which a station is in use, above 0. */
  readonly inUse: number;
}

/** Time to failure and to repair of each station of a stop log. */
export function stopsResults({ stations, form }: StopsRead, asked: StopsAsked): StopsResult[] {
  const last = stations
    .flatMap(({ stops }) => stops.flatMap(({ from, to }) => [from, to]))
    .filter(Number.isFinite)
    .reduce((most, at) => Math.max(most, at + A_SECOND), -Infinity);
  return stations.map((stops) => {
    const place = asked.places?.get(stops.station),
      by = place?.failure?.by ?? (asked.places === undefined ? 'calendar time' : 'operating time'),
      seen = form === 'minutes' ? ofMinutes(stops) : ofTimes(stops, last, asked, place, by),
      { toFailure, toRepair, told } = fitStops(seen.spans, LEVEL);
    const source: Source = {
      file: asked.file,
      ...(form === 'minutes' ? {} : { from: dayText(seen.from), to: dayText(seen.to) }),
    };
    return {
      station: stops.station,
      failures: seen.spans.failures,
      running: seen.spans.running,
      counted: form === 'minutes' ? 'minutes' : by,
      ...{ toFailure: asData(toFailure), toRepair: asData(toRepair) },
      told: [...told, ...toFailure.told, ...toRepair.told, ...seen.told],
      ...entriesOf(
        writtenFailures({ spans: seen.spans, toFailure, toRepair, told }, by, source),
        asked,
        place,
      ),
    };
  });
}

const asData = ({ survival, ...fit }: FitOfSpans): SpansResult => ({
  ...fit,
  survival: survival.map(({ standardError, ...step }) => ({
    ...step,
    standardError: Number.isNaN(standardError) ? null : standardError,
  })),
});

interface Seen {
  readonly spans: Spans;
  readonly told: readonly string[];
  readonly from: number;
  readonly to: number;
}

/** A stop that begins at the last time of a table is a failure in it. */
const A_SECOND = 1 / 60;
const NONE: Spans = spansOf([]);

function ofMinutes({ minutes }: StationStops): Seen {
  const up: Span[] = [],
    down: Span[] = [];
  for (const row of minutes) {
    if (row.up !== undefined && row.up > 0) up.push({ minutes: row.up, ended: row.down !== undefined });
    if (row.down !== undefined && row.down > 0) down.push({ minutes: row.down, ended: true });
  }
  const failures = minutes.filter((row) => row.up !== undefined && row.down !== undefined).length,
    empty = minutes.filter((row) => row.up === 0 || row.down === 0).length,
    running = sumOf(up, (span) => span.minutes);
  return { spans: { ...NONE, up, down, running, failures, empty }, told: [], from: NaN, to: NaN };
}

function ofTimes(
  { station, stops }: StationStops,
  last: number,
  { watch, minutesOf, inUse }: StopsAsked,
  place: FailingPlace | undefined,
  by: StopsResult['counted'],
): Seen {
  const { up, down } = minutesOf(station),
    share = by === 'operating time' ? inUse : 1,
    running: Between = (from, to) => share * up(from, to),
    said = watch(station),
    [first, ...later] = stops.toSorted((a, b) => a.from - b.from),
    begins = first?.from ?? last,
    told = [
      ...(said.from === undefined
        ? ['It is watched from the end of its first stop on, of which only the repair counts (--from).']
        : []),
      ...(said.to === undefined ? ['It is watched to the last time in the table (--to).'] : []),
      ...stops
        .filter((stop) => stop.to === Infinity)
        .map(() => 'Its last stop has no end: it is taken to go on to the end of the watch.'),
      ...(by === 'operating time'
        ? [
            share === 1
              ? 'All minutes of its calendar are taken as running; if it is in use less, say so by --in-use.'
              : `Of the minutes of its calendar ${exact(100 * share)} % are taken as running.`,
          ]
        : []),
    ],
    from = said.from ?? Math.min(first?.to ?? last, last),
    to = said.to ?? last,
    whole = { told, from: said.from ?? begins, to };
  const inside = said.from === undefined ? later : stops,
    // Only the repair of the first stop is whole.
    head = first === undefined || said.from !== undefined ? [] : repairOf(first, to, down),
    watched = to > from ? [{ from, to, stops: inside, fresh: said.from === undefined }] : [];
  if ((place?.pieces ?? 1) === 1) {
    const spans = spansOf(watched, running, down);
    return { ...whole, spans: { ...spans, down: [...head, ...spans.down] } };
  }
  // Nobody knows which piece it was: a rate of failures over all of them, each stop by itself.
  const pieces = place?.pieces ?? 1,
    begun = inside.filter((stop) => stop.from >= from && stop.from < to),
    still = sumOf(inside, (stop) =>
      running(Math.max(from, stop.from), Math.max(from, Math.min(to, stop.to))),
    );
  return {
    ...whole,
    told: [
      ...told,
      `It has ${exact(pieces)} that fail each by itself, and the log does not say which did: a rate over ` +
        'all of them, without a shape.',
    ],
    spans: {
      ...NONE,
      down: [...head, ...begun.flatMap((stop) => repairOf(stop, to, down))],
      running: to > from ? pieces * running(from, to) - still : 0,
      failures: begun.length,
      before: inside.filter((stop) => stop.from < from && stop.to > from).length,
      outside: inside.filter((stop) => stop.from >= to || stop.to <= from).length,
    },
  };
}

function repairOf(stop: { from: number; to: number }, end: number, down: Between): Span[] {
  const minutes = down(stop.from, Math.min(stop.to, end));
  return minutes > 0 ? [{ minutes, ended: stop.to <= end }] : [];
}

function entriesOf(
  value: ReturnType<typeof writtenFailures>,
  { places }: StopsAsked,
  place: FailingPlace | undefined,
): Pick<Told, 'entries' | 'notWritten'> {
  const none = (sentence: string) => ({ entries: [], notWritten: [sentence] });
  if (value === null || typeof value !== 'object')
    return none('Without a failure and a repair that ended there is nothing to write.');
  const { every, repair } = value;
  if (places === undefined || place === undefined || every === undefined || repair === undefined)
    return none(`Without a scenario its place is not known. As failures: ${flow(value)}`);
  if (place.failures.length > 1)
    return none('The scenario has several ways to fail here, and the log does not tell them apart.');
  if (place.failure === undefined)
    return none(
      `It does not fail in the scenario, so nothing is written. To take it, give it failures: ${flow(value)}`,
    );
  const { path } = place.failure;
  return { entries: [entryOf(`${path}.every`, every), entryOf(`${path}.repair`, repair)], notWritten: [] };
}
