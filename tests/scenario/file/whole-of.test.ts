import { describe, expect, it } from 'vitest';
import { wholeOf } from '../../../src/scenario/file/whole-of.js';
import { readScenario, scenarioData, spotsIn } from '../../../src/scenario/read.js';

const TEXT = [
  'scenario: a line',
  'include: part.yaml',
  'programme: { start: 2027-03-01, quantity: 5, rate: { per day: 1 } }',
  'sites: { hall: { zone: UTC, calendar: days, stations: { bench: {} } } }',
  'route: [{ step: fit, at: bench, work: 1 h }]',
].join('\n');
const PART = 'calendars: { days: { on: Mon-Fri, hours: ["06:00-14:00"] } }';

/** Counts the files that are read. */
function counted(part = PART) {
  const names: string[] = [];
  return {
    names,
    read: (name: string) => {
      names.push(name);
      return part;
    },
  };
}

describe('a scenario that is asked for again', () => {
  it('is taken apart once, with what it includes', () => {
    const { names, read } = counted();
    expect(readScenario(TEXT, 'line.yaml', read).scenario?.name).toBe('a line');
    expect(scenarioData(TEXT, 'line.yaml', read).value).toMatchObject({ calendars: { days: {} } });
    expect(spotsIn(TEXT, 'line.yaml', read)(['calendars', 'days'])).toBe('part.yaml:1:14');
    expect(names).toEqual(['part.yaml']);
  });

  it('is taken apart anew for another text, another name, and another way to read', () => {
    const { read } = counted(),
      other = counted(PART.replace('06', '07')).read;
    const whole = wholeOf(TEXT, 'line.yaml', read);
    expect(wholeOf(TEXT, 'line.yaml', read)).toBe(whole);
    expect(wholeOf(TEXT.replace('a line', 'two'), 'line.yaml', read).value).toMatchObject({
      scenario: 'two',
    });
    expect(wholeOf(TEXT, 'other.yaml', read).place({ path: [], wanted: '' }).file).toBe('other.yaml');
    expect(wholeOf(TEXT, 'line.yaml', other).value).toMatchObject({
      calendars: { days: { hours: ['07:00-14:00'] } },
    });
  });
});
