import { describe, expect, it } from 'vitest';
import { rowsOf } from '../../../src/report/charts/row-chart.js';

const labels = (...names: string[]): string[] => rowsOf(names, String).map(({ label }) => label);

describe('names beside bars', () => {
  const long = (what: string): string =>
    `one person more in the crew of the ${what} of the rear body (shell works)`;

  it('lose their middle where they are very long', () => {
    const [label = ''] = labels(long('painters'));
    expect(label).toContain('…');
    expect(label.startsWith('one person more in')).toBe(true);
    expect(label.endsWith('(shell works)')).toBe(true);
  });

  it('stay whole where they would then read alike', () => {
    expect(labels(long('painters'), long('finishers'), 'oven')).toEqual([
      long('painters'),
      long('finishers'),
      'oven',
    ]);
  });
});
