import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { ReliefsResults } from '../../../src/study/reliefs/results.js';
import { reliefsSentence } from '../../../src/study/reliefs/sentence.js';
import { mapped } from '../../../src/study/statistics/estimate.js';

/** The demo's reliefs, some of them made to lose. */
const results = JSON.parse(
  readFileSync(new URL('../../../reports/reliefs/results.json', import.meta.url), 'utf8'),
) as ReliefsResults;
const losing = (...at: readonly number[]): string =>
  reliefsSentence({
    ...results,
    reliefs: results.reliefs.map((each, i) =>
      at.includes(i) ? { ...each, gain: mapped(each.gain, (value) => value - 1 - i / 1000) } : each,
    ),
  });

describe('the answer of reliefs', () => {
  it('says of a change that costs throughput how much, and of how many more', () => {
    const text = results.reliefs[80].text;
    expect(losing(80)).toContain(`With ${text} it ships 1.`);
    expect(losing(80)).toMatch(/ units a working day less\. /);
    expect(losing(79, 80)).toContain(` less, and 1 other does too.`);
    expect(losing(78, 79, 80)).toContain(` less, and 2 others do too.`);
  });

  it('says nothing of it where none surely loses more than matters', () => {
    expect(reliefsSentence(results)).not.toMatch(/ units a working day less[.,] (?!than)/);
    expect(reliefsSentence(results)).not.toContain('it ships 1.');
  });
});
