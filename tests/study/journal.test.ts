import { appendFileSync, mkdtempSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { Journal } from '../../src/study/journal.js';

const identity = { scenario: 'sha256:aa', seed: '1', version: '0.2.0' };
const fresh = (): string => join(mkdtempSync(join(tmpdir(), 'journal-')), 'study.journal');

function filled(count: number): string {
  const path = fresh(), journal = new Journal<{ values: Float64Array }>(path, identity);
  for (let r = 1; r <= count; r++) journal.add(`base ${r}`, { values: Float64Array.of(r, Number.NaN, -0) });
  journal.close();
  return path;
}

describe('a journal of replications', () => {
  it('gives back to the bit what was written, typed arrays and NaN too', () => {
    const journal = new Journal<{ values: Float64Array }>(filled(3), identity);
    expect(journal.size).toBe(3);
    const { values } = journal.get('base 2')!;
    expect(values).toBeInstanceOf(Float64Array);
    expect([...values].map((value) => Object.is(value, -0))).toEqual([false, false, true]);
    expect([...values]).toEqual([2, Number.NaN, -0]);
    expect(journal.get('base 4')).toBeUndefined();
    journal.close();
  });

  it('loses only the record that was being written when the process was killed, wherever it was cut', () => {
    const whole = readFileSync(filled(3)).length, two = readFileSync(filled(2)).length;
    for (let length = two; length < whole; length++) {
      const path = filled(3);
      truncateSync(path, length);
      const journal = new Journal<{ values: Float64Array }>(path, identity);
      expect(journal.size).toBe(2);
      journal.add('base 3', { values: Float64Array.of(33) });
      journal.close();
      const again = new Journal<{ values: Float64Array }>(path, identity);
      expect([again.size, again.get('base 3')!.values[0]]).toEqual([3, 33]);
      again.close();
    }
  });

  it('begins anew where not even the first record is whole', () => {
    const path = filled(0);
    truncateSync(path, 7);
    const journal = new Journal(path, identity);
    expect(journal.size).toBe(0);
    journal.close();
  });

  it('throws away what is not as it was written', () => {
    const path = filled(2);
    appendFileSync(path, Buffer.from([3, 0, 0, 0, ...new Array<number>(19).fill(7)]));
    const journal = new Journal(path, identity);
    expect(journal.size).toBe(2);
    journal.close();
  });

  it('refuses to mix with another study, and says what has changed', () => {
    const path = filled(1);
    expect(() => new Journal(path, { ...identity, seed: '2', rate: '4' })).toThrow(
      `expected ${path} to be the journal of this very study, but it is not: seed was 1, now it is 2; rate was not there, now it is 4`,
    );
  });

  it('refuses a file that is no journal', () => {
    const path = fresh(), body = JSON.stringify({ my: 'notes' });
    writeFileSync(path, body);
    // Nothing of it is whole as a record: it would be overwritten. It must not be.
    expect(() => new Journal(path, identity)).toThrow('it is no journal of this version');
    expect(readFileSync(path, 'utf8')).toBe(body);
  });
});
