import { describe, expect, it } from 'vitest';
import type { Held, Holder } from '../../../src/flow/gridlock/holder.js';
import { whoHolds } from '../../../src/study/standstill/who-holds.js';

/** `14 at frame`, `15 ahead of weld`, and what it lacks there. */
function holder(where: string, lacks: Holder['lacks'] = [], more: Partial<Holder> = {}): Holder {
  const [, number, at, name = ''] = /^(\d+) (at|ahead of) (.*)$/.exec(where)!;
  return {
    ...{ number: Number(number), route: 'unit', in: at === 'at' ? 'place' : 'space', where: name },
    ...{ how: 'stays', amount: 1, lacks },
    ...more,
  };
}
const held = (kind: Held['kind'], name: string, by: readonly Holder[], more: Partial<Held> = {}): Held => ({
  ...{ kind, name, by, all: null, wanted: 1, free: 0, coming: 0, onHand: null, site: '' },
  ...more,
});
const told = (...all: readonly Held[]): string =>
  whoHolds({ ring: [], behind: 0, held: all }, 'unit', ({ number }) => String(number));
const wants = (kind: Held['kind'], name: string) => [{ kind, name }];

describe('who holds what a ring lacks', () => {
  it('is, of carriers, three units by name with what they wait for, and the number of the others', () => {
    const by = [
      holder('14 at frame', wants('room', 'weld')),
      holder('15 ahead of weld', wants('room', 'weld')),
      holder('16 at gate'),
      ...[17, 18, 19].map((n) => holder(`${n} at yard`)),
    ];
    expect(told(held('carrier', 'dolly', by.slice(0, 3), { all: 3 }))).toBe(
      '. All 3 of dolly are held, by unit 14 at frame (waits for room at weld), unit 15 ahead of weld (waits for a place there) and unit 16 at gate (can go on)',
    );
    expect(told(held('carrier', 'dolly', by, { all: 7, coming: 1 }))).toMatch(
      /^\. 6 of the 7 of dolly are held, by .* and 3 more; 1 is on its way back$/,
    );
    // The ring names the holder of a single one.
    expect(told(held('carrier', 'dolly', by.slice(0, 1), { all: 1 }))).toBe('');
  });

  it('is, of people, who has how many, how many are free and how many are wanted', () => {
    const by = [
      holder('5 at test', [], { how: 'claims', amount: 0, lacks: wants('crew', 'hands') }),
      holder('2 ahead of start', wants('room', 'start'), { amount: 2 }),
      holder('9 at end', [], { how: 'works' }),
    ];
    expect(told(held('crew', 'hands', by, { all: 4, free: 1, wanted: 2 }))).toBe(
      '. Of the 4 people of hands 3 are held (2 stay with unit 2 ahead of start (waits for a place there) and 1 by unit 9 at end (at work)), 1 is free and 2 are wanted; unit 5 at test (waits for people of hands) claims them first',
    );
  });

  it('is, of parts, what is in stock and in the making, of a supply what is left, of room what the ring says', () => {
    const looms = holder('3 ahead of bench', wants('room', 'bench'), { route: 'looms', how: 'made' });
    expect(told(held('parts', 'looms', [looms]), held('room', 'bench', [holder('1 at bench')]))).toBe(
      '. Of looms 0 are in stock and 1 is wanted; in the making: looms 3 ahead of bench (waits for a place there)',
    );
    expect(told(held('parts', 'looms', [], { wanted: 2 }))).toBe(
      '. Of looms 0 are in stock and 2 are wanted; none is in the making',
    );
    expect(told(held('supply', 'bolts', [], { free: 1, wanted: 3 }))).toBe(
      '. Of bolts 1 is left and 3 are wanted',
    );
  });
});
