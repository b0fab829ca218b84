import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTimes } from '../../../src/records/table/clocked.js';
import { readCounts } from '../../../src/records/table/counted.js';
import { numberedTimes } from '../../../src/records/table/numbered.js';
import { readStops } from '../../../src/records/table/stopped.js';
import { tableLines } from '../../../src/records/table/table.js';
import { WallClock } from '../../../src/records/table/wall-clock.js';

const lines = (text: string) => tableLines(new TextEncoder().encode(text));
const KNOWN = {
  steps: ['look', 'gate', 'weld'],
  defects: ['dirt', 'gap'],
  kinds: new Map([
    ['look', ['dirt', 'gap']],
    ['gate', ['failed']],
  ]),
};

describe('a table of what inspections found', () => {
  it('has a row a unit, or a row for several with their number', () => {
    const one = readCounts(lines('step,found,unit\nlook,yes,1\nlook,no,2\nlook,3,3\nlook,x,4\n')),
      many = readCounts(lines('step;units;found;colour\nlook;40;7;red\n'), { by: ['colour'] });
    expect([one.form, one.looks.map(({ found }) => found)]).toEqual(['units', [1, 0, 1, 1]]);
    expect(many.looks).toMatchObject([
      { units: 40, found: 7, unit: '', defect: 'failed', options: { colour: 'red' } },
    ]);
  });

  it('leaves out what counts nothing, each by line with why, and loses no row', () => {
    const found = readCounts(
      lines(
        'unit,step,defect,found,date\n1,look,dirt,no,2027-08-16\n1,look,dirt,no,2027-08-16\n2,lok,dirt,no,\n3,,dirt,no,\n' +
          '4,look,drit,no,\n5,look,,no,\n6,weld,,no,\n7,look,dirt,perhaps,\n8,gate,,yes,sometime\n',
      ),
      {},
      KNOWN,
    );
    expect(found.leftOut.map(({ line, kind }) => [line, kind])).toEqual([
      [3, 'duplicate'],
      [4, 'unknown step'],
      [5, 'no step'],
      [6, 'unknown defect'],
      [7, 'no defect'],
      [8, 'no defect'],
      [9, 'unreadable answer'],
    ]);
    expect(found.looks.map(({ step, defect }) => [step, defect])).toEqual([
      ['look', 'dirt'],
      ['gate', 'failed'],
    ]);
    expect(found.rows).toBe(found.looks.length + found.leftOut.length);
    expect(found.oddities.map(({ told }) => told).join(' ')).toMatch(
      /did you mean "look"\?.*did you mean "dirt"\?.*looks for dirt, gap/,
    );
    const counts = readCounts(lines('step,units,found\nlook,10,11\nlook,ten,1\nlook,0,0\n'));
    expect(counts.leftOut.map(({ kind }) => kind)).toEqual([
      'more found than units',
      'unreadable number',
      'unreadable number',
    ]);
    expect(() => readCounts(lines('step,fuond\nlook,1\n'))).toThrow('did you mean "fuond"?');
  });

  it('goes by the names of the scenario, where a file of names maps them', () => {
    const { looks } = readCounts(
      lines('step,defect,found,KAB\nL1,SCHMUTZ,yes,long\n'),
      { by: ['KAB'] },
      KNOWN,
      {
        ...{ steps: { L1: 'look' }, defects: { SCHMUTZ: 'dirt' }, options: { KAB: 'cab' } },
      },
    );
    expect(looks).toMatchObject([{ step: 'look', defect: 'dirt', options: { cab: 'long' } }]);
  });
});

describe('times by number of the unit', () => {
  it('take the digits at the end of a build number; a row without them is left out', () => {
    const table = lines('unit,step,minutes\nRT-017,weld,40\n18,weld,39\nproto,weld,50\nRT-000,weld,50\n'),
      { steps, leftOut, rows } = numberedTimes(readTimes(table), table);
    expect(steps.map(({ numbers, minutes }) => [numbers, minutes])).toEqual([
      [
        [17, 18],
        [40, 39],
      ],
    ]);
    expect(leftOut.map(({ line, kind, cells }) => [line, kind, cells[0]])).toEqual([
      [4, 'no build number', 'proto'],
      [5, 'no build number', 'RT-000'],
    ]);
    expect(rows).toBe(4);
  });
});

describe('a table of stops', () => {
  const clock = new WallClock('Europe/Oslo'),
    known = { names: ['press', 'saw'], clockOf: () => clock };

  it('has when each began and ended, by the clock of the site; the last may have no end', () => {
    const { stations, form } = readStops(
        lines('station,from,to\npress,2027-03-01 08:00,2027-03-01T09:30:00+01:00\npress,01.03.2027 12:00,\n'),
        {},
        known,
      ),
      at = (hour: number): number => Date.UTC(2027, 2, 1, hour) / 60_000;
    expect(form).toBe('times');
    expect(stations).toMatchObject([
      {
        station: 'press',
        stops: [
          { from: at(7), to: at(8) + 30 },
          { from: at(11), to: Infinity },
        ],
      },
    ]);
  });

  it('or minutes up and down, either of which may be missing', () => {
    const { stations } = readStops(lines('machine,ran,stood\npress,61.5 h,90\npress,12 h,\npress,,30\n'), {
      ...{ station: 'machine', up: 'ran', down: 'stood' },
    });
    expect(stations[0].minutes).toEqual([
      { up: 3690, down: 90 },
      { up: 720, down: undefined },
      { up: undefined, down: 30 },
    ]);
  });

  it('leaves out what is no stop, in the order of lines', () => {
    const { leftOut, rows, stations } = readStops(
      lines(
        'station,from,to\npress,2027-03-01 08:00,\npress,2027-03-02 08:00,2027-03-02 07:00\nprss,2027-03-02 08:00,\n' +
          ',2027-03-02 08:00,\npress,2027-03-03 08:00,2027-03-03 09:00\npress,2027-03-03 08:00,2027-03-03 09:00\npress,soon,\n',
      ),
      {},
      known,
    );
    expect(leftOut.map(({ line, kind }) => [line, kind])).toEqual([
      [2, 'missing end'],
      [3, 'ends before it begins'],
      [4, 'unknown station'],
      [5, 'no station'],
      [7, 'duplicate'],
      [8, 'unreadable time'],
    ]);
    expect(rows).toBe(leftOut.length + stations.flatMap(({ stops }) => stops).length);
    expect(() => readStops(lines('station,since\npress,1\n'))).toThrow('from and to, or up and down');
  });
});

describe('tables of anything', () => {
  const cell = fc.oneof(
      fc.constantFrom('', 'look', 'press', 'dirt', 'yes', '3', '2027-03-01 08:00', '2027-03-02', '-1', '7,5'),
      fc.string({ maxLength: 6 }),
    ),
    table = (...head: readonly string[]) =>
      fc
        .array(fc.array(cell, { minLength: head.length, maxLength: head.length }), {
          ...{ minLength: 1, maxLength: 12 },
        })
        .map((rows) => [head, ...rows].map((cells, i) => ({ line: i + 1, cells })));

  it('lose no row: each is used or left out, and counted', () => {
    fc.assert(
      fc.property(
        table('step', 'defect', 'found', 'units', 'date'),
        table('station', 'from', 'to'),
        (counts, stops) => {
          const found = readCounts(counts, {}, KNOWN),
            stopped = readStops(stops, {}, { names: ['press'], clockOf: () => undefined });
          expect(found.rows).toBe(found.looks.length + found.leftOut.length);
          expect(found.looks.every((look) => look.found <= look.units)).toBe(true);
          const kept = stopped.stations.flatMap((each) => each.stops);
          expect(stopped.rows).toBe(kept.length + stopped.leftOut.length);
          expect(kept.every(({ from, to }) => to >= from)).toBe(true);
          for (const { leftOut, oddities } of [found, stopped])
            expect(leftOut.length).toBe(
              oddities.filter(({ rule }) => rule === 'left out').reduce((sum, { count }) => sum + count, 0),
            );
        },
      ),
      { numRuns: 300 },
    );
  });
});
