import { appendFileSync, mkdtempSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { Journal } from '../../../src/study/run/journal.js';

const identity = { scenario: 'sha256:aa', seed: '1', version: '0.2.0' };
const fresh = (): string => join(mkdtempSync(join(tmpdir(), 'journal-')), 'study.journal');

function filled(count: number): string {
  const path = fresh(),
    journal = new Journal<{ values: Float64Array }>(path, identity);
  for (let r = 1; r <= count; r++) journal.add(`base ${r}`, { values: Float64Array.of(r, Number.NaN, -0) });
  journal.close();
  return path;
}

/** Every byte of a value. */
const bytesOf = (value: { values: Float64Array } | undefined): string =>
  Buffer.from(value!.values.buffer, value!.values.byteOffset, value!.values.byteLength).toString('hex');

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

  it('gives back what was added, in any order, the same bytes after it was opened again', () => {
    const path = fresh(),
      many = 400,
      key = (r: number): string => `base ${r}`;
    const made = (r: number) => ({
      values: Float64Array.from({ length: 2000 + 3 * r }, (_, i) => Math.sin(r * i)),
    });
    const order = Array.from({ length: many }, (_, i) => (i * 149) % many);
    const journal = new Journal<{ values: Float64Array }>(path, identity);
    for (const r of order) journal.add(key(r), made(r));
    for (const r of [399, 0, 17]) expect(bytesOf(journal.get(key(r)))).toBe(bytesOf(made(r)));
    journal.add('more', made(5));
    expect(bytesOf(journal.get('more'))).toBe(bytesOf(made(5)));
    expect([journal.size, journal.has('more'), journal.has('none')]).toEqual([many + 1, true, false]);
    journal.close();
    const again = new Journal<{ values: Float64Array }>(path, identity, true);
    expect(again.size).toBe(many + 1);
    for (let r = 0; r < many; r++) expect(bytesOf(again.get(key(r))), key(r)).toBe(bytesOf(made(r)));
    again.close();
  });

  it('keeps the later of two records of one key, and counts them once', () => {
    const path = filled(2),
      journal = new Journal<{ values: Float64Array }>(path, identity);
    journal.add('base 1', { values: Float64Array.of(11) });
    expect([journal.size, journal.get('base 1')!.values[0]]).toEqual([2, 11]);
    journal.close();
    const again = new Journal<{ values: Float64Array }>(path, identity);
    expect([again.size, again.get('base 1')!.values[0], again.get('base 2')!.values[0]]).toEqual([2, 11, 2]);
    again.close();
  });

  it('holds what two processes have added in turn', () => {
    const path = filled(1),
      [one, two] = [
        new Journal<{ values: Float64Array }>(path, identity),
        new Journal<{ values: Float64Array }>(path, identity),
      ];
    for (let r = 2; r <= 9; r++)
      (r % 3 === 0 ? one : two).add(`base ${r}`, { values: Float64Array.of(r, r) });
    const third = new Journal<{ values: Float64Array }>(path, identity);
    expect(third.size).toBe(9);
    expect(
      [one.get('base 3'), one.get('base 9'), two.get('base 8'), third.get('base 3')].map(
        (value) => value!.values[0],
      ),
    ).toEqual([3, 9, 8, 3]);
    for (const journal of [one, two, third]) journal.close();
  });

  it('gives no value that is no longer as it was written', () => {
    const path = filled(3),
      journal = new Journal<{ values: Float64Array }>(path, identity),
      bytes = readFileSync(path);
    const at = bytes.indexOf('base 2'),
      other = Buffer.from(bytes);
    other[at + 30] ^= 1;
    writeFileSync(path, other);
    expect(['base 1', 'base 2', 'base 3'].map((key) => journal.get(key)?.values[0])).toEqual([
      1,
      undefined,
      3,
    ]);
    // Whole records, but others: as after another process.
    const twin = filled(1),
      two = new Journal<{ values: Float64Array }>(twin, identity);
    two.add('base 7', { values: Float64Array.of(7, Number.NaN, -0) });
    two.close();
    writeFileSync(path, readFileSync(twin));
    expect(['base 1', 'base 2', 'base 3'].map((key) => journal.get(key)?.values[0])).toEqual([
      1,
      undefined,
      undefined,
    ]);
    writeFileSync(path, bytes.subarray(0, at + 20));
    expect(['base 1', 'base 2', 'base 3'].map((key) => journal.get(key)?.values[0])).toEqual([
      1,
      undefined,
      undefined,
    ]);
    journal.close();
  });

  it('loses only the record that was being written when the process was killed, wherever it was cut', () => {
    const whole = readFileSync(filled(3)).length,
      two = readFileSync(filled(2)).length;
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
      `${path}: expected the journal of this study, got another: seed was 1, now it is 2; rate was not there, now it is 4`,
    );
  });

  it('refuses a file that is no journal', () => {
    const path = fresh(),
      body = JSON.stringify({ my: 'notes' });
    writeFileSync(path, body);
    // Nothing of it is whole as a record: it would be overwritten. It must not be.
    expect(() => new Journal(path, identity)).toThrow('it is no journal of this version');
    expect(readFileSync(path, 'utf8')).toBe(body);
  });
});
