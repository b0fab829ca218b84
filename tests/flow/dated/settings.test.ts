import { describe, expect, it } from 'vitest';
import { cannotComeMidway } from '../../../src/scenario/compile.js';
import { shippedAt } from '../run-yaml.js';
import { changed, scenarioOf } from './played.js';

/** Rule 14 for rule 4: an oven that heats up for each of two bakes in it, 10 h each. */
const yaml = `
scenario: oven
programme: { start: 2027-03-01, arrivals: saturated, quantity: 2, options: { body: { small: 50 %, large: 50 % } } }
sites: { hall: { stations: { oven: { changeover: { on: setting, process: 4 h } } } } }
route:
  - { step: dry, at: oven, process: 10 h, setting: 60 degrees }
  - { step: cure, at: oven, process: 10 h, setting: 80 degrees }
`;
const why = (was: string, is: string): string | null =>
  cannotComeMidway(scenarioOf(yaml.replace(was, is)), [{ until: '2027-03-02', scenario: scenarioOf(yaml) }]);

describe('settings from a day on', () => {
  it('take another time to change from then on; one that is under way keeps its own', () => {
    // Dry 0-10, heat -14, cure -24; down -28 by the old time, since at midnight it goes first; dry -38; up in an
    // hour -39; cure -49.
    expect(shippedAt(changed(yaml, 'process: 4 h', 'process: 1 h', '2027-03-02'))).toEqual([
      24 * 60,
      49 * 60,
    ]);
  });

  it('are refused in words where others come midway', () => {
    expect(why('setting: 60 degrees', 'setting: 80 degrees')).toContain(
      'other stations, or others of their keys',
    );
    expect(
      why('setting: 60 degrees', 'setting: { body: { large: 80 degrees }, usual: 60 degrees }'),
    ).toContain('settings');
    expect(why('process: 4 h', 'work: 4 h')).toBe('other stations, or others of their keys (oven)');
  });
});
