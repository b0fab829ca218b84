import { Cleaned, type Known, type LogRead } from './log/cleaned.js';
import type { FloorEvent } from './log/event.js';
import { readLog } from './log/read.js';
import { placeOf } from './log/row-events.js';
import type { Open } from './log/stroke-order.js';
import { mappedBy } from './names.js';
import { eventsOfOcel, ocelIn } from './ocel/read.js';
import { joined } from './table/bytes.js';

const BRACE = 123,
  /** Of a byte-order mark, and spaces ahead of the first brace. */
  AHEAD = [0xef, 0xbb, 0xbf, 32, 9, 10, 13];

/**
 * Reads a floor log: CSV in bounded memory, or OCEL 2.0 (JSON) as a whole.
 * @param take gets the events in batches, in order of time as far as the file allows
 * @param progress is told bytes and rows read
 * @throws Unreadable where the file as a whole cannot be read
 */
export async function readAnyLog(
  open: Open,
  known: Known,
  take: (events: readonly FloorEvent[]) => void,
  progress?: (bytes: number, rows: number) => void,
): Promise<LogRead> {
  return (await isJson(open)) ? readOcel(open, known, take) : readLog(open, known, take, progress);
}

async function isJson(open: Open): Promise<boolean> {
  for await (const part of open()) for (const byte of part) if (!AHEAD.includes(byte)) return byte === BRACE;
  return false;
}

async function readOcel(
  open: Open,
  known: Known,
  take: (events: readonly FloorEvent[]) => void,
): Promise<LogRead> {
  const parts: Uint8Array[] = [];
  for await (const part of open()) parts.push(part);
  const text = new TextDecoder().decode(parts.reduce(joined, new Uint8Array(0))),
    cleaned = new Cleaned(known, take),
    { oddities } = cleaned,
    mapped = mappedBy(known.names);
  for (const event of eventsOfOcel(ocelIn(text))) {
    cleaned.rows++;
    if ('position' in event) {
      oddities.add(event.kind, 'left out', event.position, event.example, TOLD[event.kind]);
      continue;
    }
    const { kind, step, station, line, values } = event,
      where = placeOf(step, station, kind === 'enter' || kind === 'ship' || kind === 'scrap', line, cleaned);
    if (where !== undefined) cleaned.add({ ...event, ...where, values: mapped(values) });
  }
  return cleaned.end({ form: 'OCEL 2.0', encoding: 'UTF-8', ignored: [] });
}

const TOLD = {
  'unknown event': 'events whose type is none of the floor log are left out',
  'no object': 'events that have no unit are left out',
  'unreadable time': 'events whose time has no offset or cannot be read are left out',
} as const;
