import { describe, expect, it } from 'vitest';
import type { Known } from '../../../src/records/log/cleaned.js';
import type { FloorEvent } from '../../../src/records/log/event.js';
import { readLog } from '../../../src/records/log/read.js';
import { readAnyLog } from '../../../src/records/read-any.js';
import { WallClock } from '../../../src/records/table/wall-clock.js';

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
/** `part`: so many bytes come at once. */
async function read(text: string | Uint8Array, known: Known = {}, part = 1 << 16) {
  const bytes = typeof text === 'string' ? encode(text) : text,
    events: FloorEvent[] = [];
  const parts = function* () {
    for (let at = 0; at < bytes.length; at += part) yield bytes.subarray(at, at + part);
  };
  const log = await readLog(parts, known, (batch) => events.push(...batch));
  // Whatever is wrong: nothing is dropped without being counted.
  const out = log.oddities
    .filter(({ rule }) => rule === 'left out' || rule === 'refused')
    .reduce((sum, { count }) => sum + count, 0);
  expect(log.rows).toBe(log.used + out);
  return { events, log };
}

/** Minutes of UTC by the clock of JavaScript, which is another's. */
const utc = (iso: string): number => Date.parse(iso) / 60_000;
const HEAD = 'at,event,object,type,step,station,others,values\n',
  SHORT = 'at,event,unit,step\n';
const told = (log: Awaited<ReturnType<typeof read>>['log']) =>
  Object.fromEntries(log.oddities.map(({ kind, rule, count, lines }) => [kind, [rule, count, ...lines]]));

describe('reading a floor log', () => {
  it('takes its rows as events', async () => {
    const { events, log } = await read(
      `${HEAD}2027-08-16T06:00:00+02:00,enter,RT-1,unit,,,,cab=long;colour=red\n` +
        '2027-08-16T04:00:30.5Z,join,RT-1,unit,hang doors,bay 2,doors:17;axles:4,\n',
    );
    expect(events).toEqual([
      {
        at: utc('2027-08-16T04:00:00Z'),
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
        at: utc('2027-08-16T04:00:30.5Z'),
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

  const rows = [
    'at;event;unit;step;note',
    '2027-08-16T06:00Z;arrive;RT-1;"prime; coat ""A""";x',
    '2027-08-16T06:10Z;start;RT-1;"prime; coat ""A""";"two\nlines"',
    '2027-08-16T06:20Z;end;RT-1;"prime; coat ""A""";y',
  ];
  it.each([
    ['line feeds', rows.join('\n'), 'UTF-8'],
    ['carriage returns and line feeds', `${rows.join('\r\n')}\r\n`, 'UTF-8'],
    ['a byte-order mark', `\ufeff${rows.join('\n')}`, 'UTF-8'],
    ['tabs', rows.map((row) => row.replaceAll(/;(?! )/g, '\t')).join('\n'), 'UTF-8'],
    ['UTF-16', Uint8Array.from(Buffer.from(`\ufeff${rows.join('\n')}`, 'utf16le')), 'UTF-16LE'],
    [
      'UTF-16, big end first',
      Uint8Array.from(Buffer.from(`\ufeff${rows.join('\n')}`, 'utf16le').swap16()),
      'UTF-16BE',
    ],
  ])('is the same with %s, in whatever parts it comes', async (_, text, encoding) => {
    const whole = await read(text);
    expect(whole.events.map(({ kind, step, at }) => [kind, step, at])).toEqual([
      ['arrive', 'prime; coat "A"', utc('2027-08-16T06:00Z')],
      ['start', 'prime; coat "A"', utc('2027-08-16T06:10Z')],
      ['end', 'prime; coat "A"', utc('2027-08-16T06:20Z')],
    ]);
    // The line break in quotes counts as a line.
    expect(whole.events.map((event) => (event as { line?: number }).line)).toEqual([2, 3, 5]);
    expect(whole.log).toMatchObject({ encoding, ignored: ['note'] });
    for (const part of [1, 2, 7, 64])
      expect((await read(text as string | Uint8Array, {}, part)).events).toEqual(whole.events);
  });

  it('tells bytes of Windows-1252, and reads them so', async () => {
    const bytes = Uint8Array.from(
        Buffer.from(`${SHORT}2027-08-16T06:00Z,start,RT-1,T\xfcr \x96 f\xfcllen\n`, 'latin1'),
      ),
      { events, log } = await read(bytes);
    // 0xfc is a u with diaeresis, 0x96 a dash (Windows code page 1252).
    expect(events[0].step).toBe('Tür – füllen');
    expect(log.encoding).toBe('Windows-1252');
  });

  it('counts every fault by the row, and drops nothing without a word', async () => {
    const known: Known = {
      steps: ['prime', 'inspect', 'fit doors'],
      stations: ['booth'],
      clockOf: (step) => (step === 'fit doors' ? undefined : new WallClock('Europe/Oslo')),
      names: { steps: { 'PRIME-01': 'prime' } },
    };
    const lines = [
      'at,event,object,step,station,values', // 1
      '2027-03-01T06:00Z,enter,A,,,', // 2
      '2027-03-01T06:00Z,arrive,A,prime,booth,', // 3
      '2027-03-01T06:00Z,arrive,A,prime,booth,', // 4 duplicate
      '2027-03-01T06:05Z,start,A,PRIME-01,,', // 5 mapped
      '2027-03-01T06:07Z,start,A,inspect,,', // 6 overlap with 5
      '2027-03-01T06:09Z,end,A,prime,,', // 7
      '2027-03-01T06:10Z,end,A,fit doors,,', // 8 missing start
      '2027-03-01T06:08Z,end,A,inspect,,', // 9 out of order
      '2027-03-01T06:20Z,start,A,inspect,,', // 10 missing end
      '2027-03-01T06:30Z,start,B,pirme,,', // 11 unknown step
      '2027-03-01T06:30Z,start,B,prime,boot,', // 12 unknown station
      '2027-03-01T06:31Z,begin,B,prime,,', // 13 unknown event
      'yesterday,end,B,prime,,', // 14 unreadable time
      ',end,B,prime,,', // 15 no time
      '2027-03-01T06:40Z,end,,prime,,', // 16 no object
      '2027-03-01T06:40Z,end,B,,,', // 17 no step
      '2027-03-01T06:40,start,B,fit doors,,', // 18 without a zone
      '2027-03-28T02:30,start,B,prime,,', // 19 skipped in Oslo
      '2027-10-31T02:30,start,C,prime,,', // 20 twice in Oslo
      'short,row', // 21 too few columns
      '', // 22 blank
      '2027-03-01T07:00Z,ship,A,,,', // 23 out of order behind line 20
    ];
    const { events, log } = await read(`${lines.join('\n')}\n`, known);
    expect(told(log)).toEqual({
      duplicate: ['left out', 1, 4],
      'missing start': ['taken as it is', 1, 8],
      'missing end': ['taken as it is', 1, 10],
      'out of order': ['mended', 2, 9, 23],
      overlap: ['taken as it is', 1, 7],
      'unknown step': ['left out', 1, 11],
      'unknown station': ['mended', 1, 12],
      'unknown event': ['left out', 1, 13],
      'unreadable time': ['left out', 1, 14],
      'no time': ['left out', 1, 15],
      'no object': ['left out', 1, 16],
      'no step': ['left out', 1, 17],
      'time without a zone': ['left out', 1, 18],
      'time that the clock skips': ['left out', 1, 19],
      'time that the clock shows twice': ['taken as it is', 1, 20],
      'too few columns': ['left out', 1, 21],
    });
    expect(log).toMatchObject({ rows: 21, used: 11 });
    expect(log.unknownSteps).toEqual([{ name: 'pirme', count: 1, near: 'prime' }]);
    expect(events.every(({ at }, i) => i === 0 || at >= events[i - 1].at)).toBe(true);
  });

  it('takes the second of two times of an autumn night where the unit was later already', async () => {
    const clockOf = () => new WallClock('Europe/Oslo'),
      { events } = await read(
        `${SHORT}2027-10-31T02:50,start,A,prime\n2027-10-31T02:10,end,A,prime\n2027-10-31T02:10,start,B,prime\n`,
        { clockOf },
      );
    // Summer time ends at 01:00 of UTC on the last Sunday of October (directive 2000/84/EC, article 3).
    expect(events.map(({ object, kind, at }) => [object, kind, at])).toEqual([
      ['B', 'start', utc('2027-10-31T00:10Z')],
      ['A', 'start', utc('2027-10-31T00:50Z')],
      ['A', 'end', utc('2027-10-31T01:10Z')],
    ]);
  });

  it('reads dates with strokes only where the file shows which number is the month', async () => {
    const american = `${SHORT}8/9/2027 6:00 AM,start,A,prime\n8/16/2027 1:30 PM,end,A,prime\n`,
      clockOf = () => new WallClock('UTC');
    expect((await read(american, { clockOf })).events.map(({ at }) => at)).toEqual([
      utc('2027-08-09T06:00Z'),
      utc('2027-08-16T13:30Z'),
    ]);
    const british = `${SHORT}9/8/2027 06:00,start,A,prime\n16/08/2027 13:30,end,A,prime\n`;
    expect((await read(british, { clockOf })).events.map(({ at }) => at)).toEqual([
      utc('2027-08-09T06:00Z'),
      utc('2027-08-16T13:30Z'),
    ]);
    await expect(read(`${SHORT}8/9/2027 06:00,start,A,prime\n`, { clockOf })).rejects.toThrow(
      /above 12, such as 8\/9\/2027/,
    );
    await expect(read(american + british.slice(SHORT.length), { clockOf })).rejects.toThrow(
      /on line 5 and 8\/16\/2027 1:30 PM on line 3/,
    );
    const german = `${SHORT}09.08.2027 06:00,start,A,prime\n`;
    expect((await read(german, { clockOf })).events[0].at).toBe(utc('2027-08-09T06:00Z'));
  });

  it('takes a row a stay', async () => {
    const { events, log } = await read(
      'Unit;Step;Arrived;Started;Ended\n' +
        'A;prime;2027-08-16T05:00Z;2027-08-16T06:00Z;2027-08-16T06:30Z\n' +
        'A;prime;2027-08-16T05:00Z;2027-08-16T06:00Z;2027-08-16T06:30Z\n' + // 3 the same again
        'A;inspect;2027-08-16T07:30Z;2027-08-16T07:00Z;2027-08-16T07:10Z\n' + // 4 came after the start
        'A;sand;;2027-08-16T09:00Z;2027-08-16T08:00Z\n' + // 5 negative
        'A;polish;;2027-08-16T09:00Z;\n' + // 6 goes on
        'A;polish;;;\n', // 7 nothing
    );
    expect(events.map(({ kind, step }) => `${kind} ${step}`)).toEqual([
      'arrive prime',
      'start prime',
      'end prime',
      'start inspect',
      'end inspect',
      'start polish',
    ]);
    expect(told(log)).toEqual({
      duplicate: ['left out', 1, 3],
      'out of order': ['mended', 1, 4],
      'negative time': ['left out', 1, 5],
      'no time': ['left out', 1, 7],
    });
    expect(log).toMatchObject({ form: 'stays', rows: 6, used: 3 });
  });

  it('leaves out what comes more than 5,000 rows too late for its unit, with its line', async () => {
    const rows = Array.from({ length: 11_000 }, (_, i) => `2027-08-16T08:00Z,start,B${i},prime\n`),
      { log } = await read(
        `${SHORT}2027-08-16T07:00Z,start,A,prime\n${rows.join('')}2027-08-16T06:00Z,end,A,prime\n`,
      );
    expect(told(log)).toMatchObject({ 'far out of order': ['left out', 1, 11_003] });
    expect(log).toMatchObject({
      rows: 11_002,
      used: 11_001,
      leftOut: [{ line: 11_003, why: 'far out of order', says: 'A prime' }],
    });
  });

  it('refuses what is no log, with what would be right', async () => {
    await expect(read('step,minutes\nprime,12\n')).rejects.toThrow(
      /columns unit, step, started, ended, got step, minutes/,
    );
    await expect(read('at,event,object,step,at\n')).rejects.toThrow(/one column at, got two/);
    await expect(read('')).rejects.toThrow(/empty file/);
    await expect(read(`${SHORT}2027-08-16T06:00Z,start,A,"prime\n`)).rejects.toThrow(
      /line 2: expected a closing quote/,
    );
    await expect(read('PK\x03\x04')).rejects.toThrow(/packed file/);
  });

  it('sees by its first character whether it is JSON', async () => {
    const take: FloorEvent[] = [],
      json = '\ufeff {"eventTypes":[],"objectTypes":[],"events":[],"objects":[]}';
    const log = await readAnyLog(
      () => [encode(json)],
      {},
      (batch) => take.push(...batch),
    );
    expect(log).toMatchObject({ form: 'OCEL 2.0', rows: 0, used: 0 });
  });

  it('keeps to the time of each unit where a file is sorted by unit, and says that it is', async () => {
    const many = Array.from(
        { length: 12_000 },
        (_, i) => `2027-08-${10 + Math.floor(i / 2000)}T06:00Z,start,A${i},prime\n`,
      ),
      { log } = await read(`${SHORT}${many.toReversed().join('')}`);
    expect(log).toMatchObject({ used: 12_000, isInOrder: false });
  });
});
