import { describe, expect, it } from 'vitest';
import type { FloorEvent } from '../../../src/records/log/event.js';
import { type Known, readLog } from '../../../src/records/log/read.js';
import { WallClock } from '../../../src/records/table/wall-clock.js';

const utf8 = new TextEncoder();
export const read = async (text: string | Uint8Array, known: Known = {}, part = 1 << 16) => {
  const bytes = typeof text === 'string' ? utf8.encode(text) : text,
    events: FloorEvent[] = [];
  const parts = function* () {
    for (let at = 0; at < bytes.length; at += part) yield bytes.subarray(at, at + part);
  };
  const log = await readLog(parts, known, (batch) => events.push(...batch));
  return { events, log };
};

const HEAD = 'at,event,object,type,step,station,others,values\n';

describe('reading a floor log', () => {
  it('takes its rows as events', async () => {
    const { events, log } = await read(
      `${HEAD}2027-08-16T06:00:00+02:00,enter,RT-1,unit,,,,cab=long;colour=red\n2027-08-16T04:00:30.5Z,join,RT-1,unit,hang doors,bay 2,doors:17;axles:4,\n`,
    );
    expect(events).toEqual([
      // 2027-08-16 is day 21,047: 30,307,680 minutes; 06:00 at +02:00 is 04:00 of UTC.
      {
        at: 30_307_920,
        kind: 'enter',
        object: 'RT-1',
        type: 'unit',
        step: '',
        station: '',
        others: [],
        values: { cab: 'long', colour: 'red' },
        line: 2,
      },
      {
        at: 30_307_920 + 30.5 / 60,
        kind: 'join',
        object: 'RT-1',
        type: 'unit',
        step: 'hang doors',
        station: 'bay 2',
        others: ['doors:17', 'axles:4'],
        values: {},
        line: 3,
      },
    ]);
    expect(log).toMatchObject({
      form: 'events',
      rows: 2,
      used: 2,
      oddities: [],
      encoding: 'UTF-8',
      isInOrder: true,
    });
  });
});
