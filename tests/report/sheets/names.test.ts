import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SheetNames } from '../../../src/report/sheets/names.js';

describe('names of sheets', () => {
  it('lose what Excel forbids, are cut, and told apart whatever their case', () => {
    const names = new SheetNames(),
      next = (wanted: string): string => names.next(wanted);
    expect(next("'a/b: c?'")).toBe('a b  c');
    expect(next('Units')).toBe('Units');
    expect(next('UNITS')).toBe('UNITS (2)');
    expect(next('History')).toBe('History (2)');
    expect(next('[]')).toBe('sheet');
    const long = 'x'.repeat(40);
    expect([next(long), next(long)]).toEqual(['x'.repeat(31), `${'x'.repeat(27)} (2)`]);
    expect(next(`${'x'.repeat(30)}😀`)).toBe('x'.repeat(30));
  });

  it('are taken by Excel, whatever is wanted', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary', maxLength: 40 }), { maxLength: 20 }), (wanted) => {
        const names = new SheetNames(),
          all = wanted.map((each) => names.next(each));
        for (const name of all) {
          expect(name.length).toBeGreaterThan(0);
          expect(name.length).toBeLessThanOrEqual(31);
          expect(name).not.toMatch(/[[\]:*?/\\]|^'|'$/);
        }
        expect(new Set(all.map((name) => name.toLowerCase())).size).toBe(all.length);
      }),
    );
  });
});
