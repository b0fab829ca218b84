import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { sayError } from '../../src/cli/output.js';
import { UsageError } from '../../src/cli/usage-error.js';

let said = '';
beforeEach(() => {
  said = '';
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    said += String(text);
    return true;
  });
});
afterEach(() => {
  vi.restoreAllMocks();
});

describe('what is told of an error', () => {
  it('is the stack and where to take it for a fault of the program, with exit code 1', () => {
    expect(sayError(new TypeError('cannot read x'))).toBe(1);
    expect(said).toMatch(
      /^error: this is a fault of rateproof, not yours; please report it .*\nTypeError: cannot read x\n +at .*output\.test\.ts/,
    );
  });

  it('is something for anything else that is thrown', () => {
    expect(sayError('a text')).toBe(1);
    expect(said).toMatch(/\nthrown: a text\n$/);
  });

  it('is details, one error line and a hint, but no stack, for wrong use, with exit code 2', () => {
    expect(sayError(new UsageError('expected this, got that', 'try those', ['line.yaml:1:1 detail']))).toBe(
      2,
    );
    expect(said).toBe('line.yaml:1:1 detail\nerror: expected this, got that\nhint: try those\n');
  });
});
