import { describe, expect, it } from 'vitest';
import { play, shippedAt, visits } from '../run-yaml.js';

/** One place each; prime 10 min, look 5 min, polish 7 min, no chance in it. Minutes worked by hand. */
const line = (
  opening: string,
  { look = 'runs: { chance: 100 %, back to: prime }', makes = '0 %', more = '', quantity = 1 } = {},
): string => `
scenario: open items
programme: { arrivals: 500 min, quantity: ${quantity}, opening: [${opening}] }
defects: { runs: {} }
sites: { hall: { stations: { booth: { buffer: 9 }, tunnel: { buffer: 9 }, stand: { buffer: 9 }, gate: { buffer: 9 } } } }
route:
  - { step: prime, at: booth, work: 10 min, creates: { runs: ${makes} } }
  - { step: rub, at: stand, work: 2 min, rework: skip }
  - { step: look, at: tunnel, work: 5 min, finds: { ${look} } }
  - { step: polish, at: stand, work: 7 min }
${more}`;

describe('an item on a unit of the opening', () => {
  it('that nobody has found is found at the next inspection, and the unit sent back', () => {
    // look 0-5, prime 5-15, look 15-20, polish 20-27; without it look 0-5, polish 5-12.
    expect(shippedAt(play(line('{ at: look, open: [{ defect: runs }] }')))).toEqual([27]);
    expect(shippedAt(play(line('{ at: look }')))).toEqual([12]);
  });

  it('that was found is mended at its step, and the inspection sees the unit again', () => {
    // prime 0-10, rub skipped in rework, look 10-15 finds nothing, polish 15-22.
    const found = '{ at: prime, open: [{ defect: runs, found at: look }] }',
      played = play(line(found));
    expect(shippedAt(played)).toEqual([22]);
    expect(visits(played, 'rub')).toBe(0);
    // A unit that is not sent back does the step that is for those only.
    expect(shippedAt(play(line('{ at: prime }')))).toEqual([24]);
    // It has been sent back once: at a limit of 1 what prime makes anew is passed on. Else it goes round:
    // prime 0-10, look 10-15, prime 15-25, look 25-30, polish 30-37.
    const limit = (n: number): string => `runs: { chance: 100 %, back to: prime, limit: ${n} }`;
    expect(shippedAt(play(line(found, { makes: '99.9999 %', look: limit(1) })))).toEqual([22]);
    expect(shippedAt(play(line(found, { makes: '99.9999 %', look: limit(2) })))).toEqual([37]);
  });

  it('mended already leaves a unit that is still in rework', () => {
    const sample = 'runs: { chance: 100 %, back to: prime } }, sample: { 1 in: 1000 ';
    // At rub by itself: rub 2, no look, as only one in 1000 has it, polish 7. Sent back, it has: 2 + 5 + 7.
    expect(shippedAt(play(line('{ at: rub }', { look: sample })))).toEqual([9]);
    expect(shippedAt(play(line('{ at: rub, sent back by: look }', { look: sample })))).toEqual([14]);
  });

  it('found where the unit stands is found there again, however poor the look', () => {
    // Of 5 + 20 minutes 8 are done.
    const mended = '{ at: look, done: 8 min, open: [{ defect: runs, found at: look }] }';
    expect(shippedAt(play(line(mended, { look: 'runs: { chance: 0 %, repair: 20 min }' })))).toEqual([24]);
    // look 0-5, repair 5-25, polish 25-32.
    const look = 'runs: { chance: 0 %, repair: 20 min }';
    expect(shippedAt(play(line('{ at: look, open: [{ defect: runs, found at: look }] }', { look })))).toEqual(
      [32],
    );
    expect(shippedAt(play(line('{ at: look, open: [{ defect: runs }] }', { look })))).toEqual([12]);
  });

  it('that is noted is mended at the hold, one passed on at its limit by the time of the hold', () => {
    const more = '  - { step: clear, at: gate, hold: { mend: 40 min } }\n',
      open = '{ at: polish, open: [{ defect: runs, found at: look }] }';
    expect(shippedAt(play(line(open, { more, look: 'runs: { chance: 100 %, carry: 30 min }' })))).toEqual([
      37,
    ]);
    expect(shippedAt(play(line(open, { more })))).toEqual([47]);
    expect(shippedAt(play(line('{ at: polish }', { more })))).toEqual([7]);
  });

  it('sent back goes ahead of others in the buffer, as it does in a run', () => {
    // Two at prime: the first in the place 0-10, then the one sent back 10-20, ahead of that listed before it.
    const played = play(
      line('{ at: prime, units: 2 }, { at: prime, open: [{ defect: runs, found at: look }] }', {
        quantity: 3,
      }),
    );
    // rub: first 10-12; look: first 12-17, third 20-25; second primes 20-30, rub 32, look 37.
    // polish shares the stand: 17-24, 25-32, 37-44; rub of the second 32-34, look 34-39, polish 39-46.
    expect(shippedAt(played)).toEqual([24, 46, 32]);
  });

  it('is there by its chance, drawn anew in each replication', () => {
    // 60 units with 30 %: sent back 18 in the mean, sd 3.5; of 20 replications 360, sd 15.9; four of them.
    const yaml = line('{ at: look, units: 60, open: [{ defect: runs, chance: 30 % }] }', { quantity: 60 })
      .replace('tunnel: { buffer: 9 }', 'tunnel: { buffer: unlimited }')
      .replace('booth: { buffer: 9 }', 'booth: { buffer: unlimited }')
      .replace('stand: { buffer: 9 }', 'stand: { buffer: unlimited }');
    let back = 0;
    for (let r = 1; r <= 20; r++) back += visits(play(yaml, 'chance', r), 'prime');
    expect(Math.abs(back - 360)).toBeLessThan(64);
  });
});

describe('what a part brought', () => {
  const axles = (opening: string): string => `
scenario: axles
programme: { arrivals: 500 min, quantity: 1, opening: [${opening}] }
defects: { gap: {} }
sites: { hall: { stations: { bench: {}, stand: {}, pool: {}, track: {} } } }
feeders: { axles: { stock: 2, at start: 2, route: [{ step: build, at: bench, work: 9 min, creates: { gap: 0 % } }] } }
route:
  - { step: fit, at: stand, work: 10 min, parts: { axles: 1 } }
  - { step: test, at: pool, work: 5 min, finds: { gap: { chance: 100 %, back to: fit } } }
  - { step: drive, at: track, work: 7 min, fails: { chance: 0 %, back to: fit } }
`;
  it('goes with the part when the step takes another', () => {
    // Found at test, sent back to fit: a new axle, whose step mends it too. 10 + 5 + 7.
    expect(shippedAt(play(axles('{ at: fit, open: [{ defect: gap, found at: test }] }')))).toEqual([22]);
    // Hidden, and the unit sent back by a failed drive: fit takes a new axle, the gap is gone. 10 + 5 + 7.
    expect(shippedAt(play(axles('{ at: fit, sent back by: drive, open: [{ defect: gap }] }')))).toEqual([22]);
    // Hidden at test: 5, then fit 15, test 20, drive 27.
    expect(shippedAt(play(axles('{ at: test, open: [{ defect: gap }] }')))).toEqual([27]);
  });
});

describe('carriers of units that were sent back', () => {
  it('are with those that had them when they were sent back, and with no other', () => {
    // One cart from weld to grind. Sent back by look, behind grind: the unit gave it back and grinds without,
    // so that the next, released at 1, has the cart from 1 on.
    const yaml = (opening: string): string => `
scenario: carts
programme: { arrivals: 1 min, quantity: 2, opening: [${opening}] }
sites: { hall: { stations: { bench: {}, wheel: { buffer: 1 }, stand: {} } } }
carriers: { carts: { count: 1, from: weld, to: grind } }
route:
  - { step: weld, at: bench, work: 20 min }
  - { step: grind, at: wheel, work: 50 min }
  - { step: look, at: stand, work: 5 min, fails: { chance: 0 %, back to: grind } }
`;
    // Grind 0-50, look 55. The other welds 1-21, grinds 50-100, look 105; without the cart it welds 50-70.
    expect(shippedAt(play(yaml('{ at: grind, sent back by: look }')))).toEqual([55, 105]);
    expect(shippedAt(play(yaml('{ at: grind }')))).toEqual([55, 125]);
  });
});

describe('what is done already of a step', () => {
  const yaml = (step: string, opening: string, quantity = 1): string => `
scenario: done
programme: { arrivals: 1 min, quantity: ${quantity}, opening: [${opening}] }
sites: { hall: { stations: { bench: { places: 1 } } } }
route: [{ step: make, at: bench, ${step} }]
`;
  it('is taken off its time, of a work first and then of the process, and of no other unit', () => {
    expect(shippedAt(play(yaml('work: 20 min', '{ at: make, done: 15 min }', 2)))).toEqual([5, 25]);
    expect(shippedAt(play(yaml('work: 20 min, process: 30 min', '{ at: make, done: 15 min }')))).toEqual([
      35,
    ]);
    expect(shippedAt(play(yaml('work: 20 min, process: 30 min', '{ at: make, done: 26 min }')))).toEqual([
      24,
    ]);
    expect(shippedAt(play(yaml('process: 30 min', '{ at: make, done: 26 min }')))).toEqual([4]);
    // Twice 20 with 5 to settle after each: 5 of the second are done.
    const passes = 'passes: { count: 2, work: 20 min, settle: 5 min }';
    expect(shippedAt(play(yaml(passes, '{ at: make, done: 25 min }')))).toEqual([5 + 15 + 5]);
    // Longer than it takes: over at once.
    expect(shippedAt(play(yaml('work: 20 min', '{ at: make, done: 21 min }')))).toEqual([0]);
  });

  it('leaves what a time that takes longer has left', () => {
    // Exponential: without memory, so the mean stays 20. Uniform 10..30, 20 done: 0..10 left, mean 5.
    const mean = (step: string): number => {
      let sum = 0;
      for (let r = 1; r <= 400; r++)
        sum += shippedAt(play(yaml(step, '{ at: make, done: 20 min }'), 'left', r))[0];
      return sum / 400;
    };
    // Within four standard errors: 20 / sqrt(400) = 1, and 2.89 / 20 = 0.14.
    expect(Math.abs(mean('work: { exponential: { mean: 20 min } }') - 20)).toBeLessThan(4);
    expect(Math.abs(mean('work: { low: 10 min, high: 30 min }') - 5)).toBeLessThan(0.58);
  });
});
