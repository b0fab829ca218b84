import { describe, expect, it } from 'vitest';
import { DOWN, SHORT_CREW, SHORT_EQUIPMENT, SHORT_PARTS, WORKING } from '../../../src/flow/floor/states.js';
import { minutesIn, type Played, play, shippedAt } from '../run-yaml.js';

/** Rule 2, shared equipment, by hand. All is ready at 0. */

/**
 * Left at a, right at b and, if given, other at c are begun at 0, in this order, and joined to a unit,
 * which takes no time.
 */
const bays = (left: string, right: string, other = '', site = 'equipment: { hoist: 1 }'): string => `
scenario: bays
programme: { start: 2027-03-01, arrivals: saturated, quantity: 1 }
calendars: { two: { hours: ["08:00-10:00", "10:00-12:00"], on: every day }, late: { hours: ["00:20-24:00"], on: every day } }
sites: { hall: { ${site}, stations: { a: {}, b: {}, c: {}, line: {} } } }
feeders:
  ${other === '' ? '' : `other: { stock: 1, route: [{ step: other, at: c, ${other} }] }`}
  right: { stock: 1, route: [{ step: right, at: b, ${right} }] }
  left: { stock: 1, route: [{ step: left, at: a, ${left} }] }
route: [{ step: join, at: line, parts: { left: 1, right: 1${other === '' ? '' : ', other: 1'} } }]
`;
const busy = ({ seen: { equipment } }: Played): number => equipment.used[0] / equipment.there[0];
const short = (played: Played, station: string): number => minutesIn(played, station, SHORT_EQUIPMENT);

describe('equipment for the whole work', () => {
  const twoInARow = (count: number): string => `
scenario: two in a row
programme: { arrivals: saturated, quantity: 3 }
sites: { hall: { equipment: { hoist: ${count} }, stations: { a: {}, b: {} } } }
route:
  - { step: one, at: a, work: 10 min, equipment: { hoist: 1 } }
  - { step: two, at: b, work: 20 min, equipment: { hoist: 1 } }
`;

  it('is used by one place at a time, the lower build number first among those that ask at once', () => {
    // 1: a 0-10, b 10-30. 2 stands at a from 10, works 30-40, b 40-60. 3 stands at a from 40, 60-70, b 70-90.
    const played = play(twoInARow(1));
    expect(shippedAt(played)).toEqual([30, 60, 90]);
    expect([short(played, 'a'), short(played, 'b')]).toEqual([20 + 20, 0]);
    expect(busy(played)).toBeCloseTo(1, 12);
    expect(played.seen.equipment.waits[0]).toBe(2);
    expect(played.seen.equipment.waitMinutes[0]).toBeCloseTo(40, 9);
  });

  it('of which there are two serves both', () => {
    // 1: a 0-10, b 10-30. 2: a 10-20, blocked to 30, b 30-50. 3: a 30-40, blocked to 50, b 50-70.
    const played = play(twoInARow(2));
    expect(shippedAt(played)).toEqual([30, 50, 70]);
    expect(busy(played)).toBeCloseTo(90 / 140, 12);
    expect(played.seen.equipment.waits[0]).toBe(0);
  });

  it('is claimed with the crew, all or none, and is shown before it', () => {
    // Left takes hoist and fitter 0-10. Right wants both, other the fitter alone, which right lacks: it waits.
    // Right 10-30, other 30-35.
    const crew = 'crew: { fitters: 1 }',
      played = play(
        bays(
          `work: 10 min, ${crew}, equipment: { hoist: 1 }`,
          `work: 20 min, ${crew}, equipment: { hoist: 1 }`,
          `work: 5 min, ${crew}`,
          'crews: { fitters: 1 }, equipment: { hoist: 1 }',
        ),
      );
    expect(shippedAt(played)).toEqual([35]);
    expect([short(played, 'b'), minutesIn(played, 'b', SHORT_CREW)]).toEqual([10, 0]);
    expect([short(played, 'c'), minutesIn(played, 'c', SHORT_CREW)]).toEqual([0, 30]);
  });

  it('is not waited for by those who want none of it', () => {
    // Right lacks the hoist to 10, other wants a fitter that nobody lacks.
    const played = play(
      bays(
        'work: 10 min, equipment: { hoist: 1 }',
        'work: 20 min, equipment: { hoist: 1 }, crew: { fitters: 1 }',
        'work: 5 min, crew: { fitters: 1 }',
        'crews: { fitters: 1 }, equipment: { hoist: 1 }',
      ),
    );
    expect(shippedAt(played)).toEqual([30]);
    expect(minutesIn(played, 'c', SHORT_CREW)).toBe(0);
  });

  it('is shown behind parts that are short too', () => {
    // The line wants the hoist as well as left and right: short of parts to 20.
    const text = bays('work: 20 min, equipment: { hoist: 1 }', 'work: 10 min'),
      played = play(
        text.replace('step: join, at: line,', 'step: join, at: line, work: 1 min, equipment: { hoist: 1 },'),
      );
    expect(shippedAt(played)).toEqual([21]);
    expect([short(played, 'line'), minutesIn(played, 'line', SHORT_PARTS)]).toEqual([0, 20]);
  });

  it('stays through changeover, passes and the settling between them, and is free in the last and in a process', () => {
    // Left: pass 0-10, settling to 14, pass 14-24, then settling and a process without it; right 24-34.
    const played = play(
      bays(
        'passes: { count: 2, work: 10 min, settle: 4 min }, process: 30 min, equipment: { hoist: 1 }',
        'work: 10 min, equipment: { hoist: 1 }',
      ),
    );
    expect(short(played, 'b')).toBe(24);
    expect(shippedAt(played)).toEqual([24 + 4 + 30]);
  });

  it('holds up work outside its hours', () => {
    // There from 00:20 on: left 20-30, right 30-40.
    const need = 'work: 10 min, equipment: { hoist: 1 }',
      played = play(bays(need, need, '', 'equipment: { hoist: { count: 1, calendar: late } }'));
    expect(shippedAt(played)).toEqual([40]);
    expect(short(played, 'b')).toBe(30);
    expect(busy(played)).toBeCloseTo(1, 12);
  });

  it('is set free when people leave in the midst of the work, and claimed again with them', () => {
    // Left works from 08:00 to 10:00, when its crew leaves; right takes the hoist to 10:30; left goes on the
    // next day to 08:30.
    const played = play(
      bays(
        'work: 150 min, crew: { fitters: 1 }, equipment: { hoist: 1 }',
        'work: 30 min, equipment: { hoist: 1 }',
        '',
        'crews: { fitters: { headcount: [1, 0], calendar: two } }, equipment: { hoist: 1 }',
      ),
    );
    expect(shippedAt(played)).toEqual([1440 + 8 * 60 + 30]);
    expect(short(played, 'b')).toBe(10 * 60);
  });

  it('is claimed for one of several steps side by side', () => {
    // The hoist is with right to 20; one side works 0-15, the one with the hoist 20-30.
    const text = bays('work: 1 min', 'work: 20 min, equipment: { hoist: 1 }').replace(
      '{ step: join, at: line, parts: { left: 1, right: 1 } }',
      '{ at: line, side by side: [{ step: x, work: 15 min }, { step: y, work: 10 min, equipment: { hoist: 1 } }] }, ' +
        '{ step: join, at: c, parts: { left: 1, right: 1 } }',
    );
    const played = play(text);
    expect(shippedAt(played)).toEqual([30]);
    expect([minutesIn(played, 'line', WORKING), short(played, 'line')]).toEqual([15 + 10, 5]);
  });
});

describe('equipment for the first part of the work', () => {
  it('is free when that is done, or the work if it is shorter', () => {
    const right = 'work: 20 min, equipment: { hoist: 1 }',
      left = (part: string): Played => play(bays(`work: 30 min, equipment: { hoist: ${part} }`, right));
    // Left 0-30 with the hoist to 10, right 10-30; with it to the end, right 30-50.
    expect(shippedAt(left('{ first: 10 min }'))).toEqual([30]);
    expect(short(left('{ first: 10 min }'), 'b')).toBe(10);
    expect(shippedAt(left('1'))).toEqual([50]);
    expect(shippedAt(left('{ first: 40 min }'))).toEqual([50]);
  });
});

describe('equipment for the last part of the work', () => {
  const right = 'work: 25 min, equipment: { hoist: 1 }';

  it('is claimed when only that is left, and until it is there the place is short of equipment', () => {
    // Left 0-20 without it; right has it to 25; left 25-35.
    const played = play(bays('work: 30 min, equipment: { hoist: { last: 10 min } }', right));
    expect(shippedAt(played)).toEqual([35]);
    expect([short(played, 'a'), short(played, 'b')]).toEqual([5, 0]);
  });

  it('is claimed at the beginning of work that is shorter', () => {
    // Left 0-5, right 5-30.
    const played = play(bays('work: 5 min, equipment: { hoist: { last: 10 min } }', right));
    expect(shippedAt(played)).toEqual([30]);
    expect([short(played, 'a'), short(played, 'b')]).toEqual([0, 5]);
  });

  it('sets the crew free while it is waited for, and then both are claimed together', () => {
    // Left 0-20 with the fitter; other takes the fitter 20-28; the hoist is free at 25; left 28-38.
    const crew = 'crew: { fitters: 1 }',
      played = play(
        bays(
          `work: 30 min, ${crew}, equipment: { hoist: { last: 10 min } }`,
          right,
          `work: 8 min, ${crew}`,
          'crews: { fitters: 1 }, equipment: { hoist: 1 }',
        ),
      );
    expect(shippedAt(played)).toEqual([38]);
    expect([short(played, 'a'), minutesIn(played, 'a', SHORT_CREW)]).toEqual([5, 3]);
    expect(minutesIn(played, 'c', SHORT_CREW)).toBe(20);
  });

  it('may follow other equipment for the first part', () => {
    // Left has the crane 0-10 and the hoist 20-30; right wants the crane: 10-30; other the hoist: 0-20.
    const played = play(
      bays(
        'work: 30 min, equipment: { crane: { first: 10 min }, hoist: { last: 10 min } }',
        'work: 20 min, equipment: { crane: 1 }',
        'work: 20 min, equipment: { hoist: 1 }',
        'equipment: { hoist: 1, crane: 1 }',
      ),
    );
    expect(shippedAt(played)).toEqual([30]);
    expect([short(played, 'a'), short(played, 'b'), short(played, 'c')]).toEqual([0, 10, 0]);
  });
});

describe('equipment that fails', () => {
  const hoist = (failures: string, count = 1): string =>
    `equipment: { hoist: { count: ${count}, failures: ${failures} } }`;
  const need = 'work: 10 min, equipment: { hoist: 1 }';

  it('by time in use breaks off the work, which goes on after the repair', () => {
    // Left 0-10, right from 10; it fails after 15 min in use; right goes on 22-27.
    const played = play(bays(need, need, '', hoist('{ every: 15 min, repair: 7 min }')));
    expect(shippedAt(played)).toEqual([27]);
    expect(minutesIn(played, 'b', DOWN)).toBe(7);
    expect(played.seen.failures.count.at(-1)).toBe(1);
  });

  it('by the clock is not there to be claimed', () => {
    // Down 5-12: left wants it at 10, and has it at 12.
    const played = play(
      bays(
        'work: 20 min, equipment: { hoist: { last: 10 min } }',
        'work: 1 min',
        '',
        hoist('{ every: 5 min, by: calendar time, repair: 7 min }'),
      )
        .replace('repair: 7 min', 'repair: 7 min, hours: late')
        .replace('00:20', '00:05'),
    );
    // Up at 12, it fails again at 17, 5 min into the work: 17-24, 24-29.
    expect(short(played, 'a')).toBe(2);
    expect(minutesIn(played, 'a', DOWN)).toBe(7);
    expect(shippedAt(played)).toEqual([29]);
  });

  it('is one piece of several: the other is claimed meanwhile', () => {
    // Each has its own wear. Left has the first 0-10, right the second; other, from 10, the first: 15 min in
    // use at 15, down to 115. A part that left makes next, from 10, takes the second: 15 too.
    const played = play(
      bays(
        need,
        need,
        'work: 4 min, equipment: { hoist: 1 }',
        hoist('{ every: 12 min, repair: 100 min }', 2),
      ),
    );
    // Other takes the piece of left, as the first that is free, 10-12, down to 112, 112-114.
    expect(shippedAt(played)).toEqual([114]);
    expect(minutesIn(played, 'c', DOWN)).toBe(100);
    expect(short(played, 'c')).toBe(10);
  });

  it('holds its place down with the equipment of the station, each for itself', () => {
    // The hoist is down 5-20, the station by an outage 10-40: left 0-5, 40-45.
    const played = play(
      bays(need, 'work: 1 min', '', hoist('{ every: 5 min, repair: 15 min }')) +
        'outages: [{ stations: [a], from: 2027-03-01 00:10, to: 2027-03-01 00:40 }]\n',
    );
    expect(shippedAt(played)).toEqual([45]);
    expect(minutesIn(played, 'a', DOWN)).toBe(35);
  });

  it('is claimed by others when it is up, where people have left it', () => {
    // Left from 08:00; the hoist fails at 09:30 and is up at 10:30; the crew left at 10:00. Right 10:30-11:00.
    const played = play(
      bays(
        'work: 150 min, crew: { fitters: 1 }, equipment: { hoist: 1 }',
        'work: 30 min, equipment: { hoist: 1 }',
        '',
        'crews: { fitters: { headcount: [1, 0], calendar: two } }, ' +
          hoist('{ every: 90 min, repair: 60 min }'),
      ),
    );
    // Left works 60 min the next day, 08:00-09:00: 30 + 60 = 90 min in use, and it ends as the hoist would fail.
    expect(minutesIn(played, 'a', DOWN)).toBe(60);
    expect(shippedAt(played)).toEqual([1440 + 9 * 60]);
    expect(minutesIn(played, 'b', WORKING)).toBe(30);
  });
});

describe('equipment that comes on a date', () => {
  it('is there from midnight on', () => {
    // Three parts of 20 h with one hoist end at 20, 40, 60 h; with a second from 24 h on at 20, 40, 44.
    const need = 'work: 20 h, equipment: { hoist: 1 }';
    const text =
      bays(need, need, need) +
      `costs:
  currency: EUR
  changes:
    second hoist: { relief: equipment, of: hoist, price: 1000, made: 2027-03-02 }
`;
    expect(shippedAt(play(text))).toEqual([44 * 60]);
  });
});
