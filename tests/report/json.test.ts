import { describe, expect, it } from 'vitest';
import { stableJson } from '../../src/report/json.js';
import { sampleResults } from './samples/results.js';

describe('stable JSON', () => {
  it('gives the same text for any order of keys', () => {
    expect(stableJson({ b: 1, a: { d: 2, c: [3] } })).toBe(stableJson({ a: { c: [3], d: 2 }, b: 1 }));
  });

  it('puts format and version first and the rest by name, two spaces deep', () => {
    expect(stableJson({ alpha: 1, version: 1, format: 'x' })).toBe(
      '{\n  "format": "x",\n  "version": 1,\n  "alpha": 1\n}\n',
    );
  });

  it('holds marks that a terminal would act on as escapes, which read back as they were', () => {
    const text = 'a\u001b[31m\u009b\u202eb\u05d0',
      json = stableJson({ text });
    expect(json).toContain('\\u001b[31m\\u009B\\u202Eb\u05d0');
    expect(JSON.parse(json)).toEqual({ text });
  });

  it('rounds to 10 significant digits', () => {
    expect(JSON.parse(stableJson([1 / 3, 123456789.123456, 1e-20 / 3, 7]))).toEqual([
      0.3333333333, 123456789.1, 3.333333333e-21, 7,
    ]);
  });

  it('names the place of a number that JSON cannot hold', () => {
    expect(() => stableJson({ series: [{ mean: NaN }] })).toThrow(
      'series[0].mean: expected a finite number, got NaN',
    );
  });

  it('loses nothing of the results but digits', () => {
    const results = sampleResults({ stations: 3 });
    const back: unknown = JSON.parse(stableJson(results));
    expect(back).toEqual(
      JSON.parse(
        JSON.stringify(results, (_, value: unknown) =>
          typeof value === 'number' ? Number(value.toPrecision(10)) : value,
        ),
      ),
    );
  });
});
