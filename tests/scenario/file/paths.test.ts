import { posix, win32 } from 'node:path';
import { describe, expect, it } from 'vitest';
import { digest } from '../../../src/scenario/digest.js';
import { pathFrom, placeOf, shownPath } from '../../../src/scenario/file/paths.js';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { readScenario } from '../../../src/scenario/read.js';

describe('the path of a file that a file of a scenario names', () => {
  it.each([
    ['.', 'paint.yaml', 'paint.yaml'],
    ['.', 'parts\\doors.yaml', 'parts/doors.yaml'],
    ['parts', '..\\common\\.\\days.yaml', 'common/days.yaml'],
    ['parts', '/srv/days.yaml', '/srv/days.yaml'],
    ['parts', 'C:\\plant\\days.yaml', 'C:/plant/days.yaml'],
    ['C:/plant', 'times\\booth.csv', 'C:/plant/times/booth.csv'],
    ['C:/plant', '..\\..\\..\\days.yaml', 'C:/days.yaml'],
    ['parts', '\\\\server\\share\\days.yaml', '//server/share/days.yaml'],
    ['//server/share/a', '..\\b\\days.yaml', '//server/share/b/days.yaml'],
  ])('in folder %s, %s is %s on every system', (folder, name, path) => {
    expect(pathFrom(folder, name)).toBe(path);
    expect(pathFrom(folder, name.replaceAll('\\', '/'))).toBe(path);
  });

  it.each([
    ['C:\\plans\\line.yaml', 'parts/doors.yaml', 'C:\\plans\\parts\\doors.yaml'],
    ['C:\\plans\\line.yaml', '..\\common\\days.yaml', 'C:\\common\\days.yaml'],
    ['C:\\plans\\line.yaml', 'D:/x/y.yaml', 'D:\\x\\y.yaml'],
    ['C:\\plans\\line.yaml', '//server/share/x.yaml', '\\\\server\\share\\x.yaml'],
    ['C:\\plans\\line.yaml', '/x/y.yaml', 'C:\\x\\y.yaml'],
    ['\\\\server\\share\\line.yaml', 'x.yaml', '\\\\server\\share\\x.yaml'],
  ])('from %s on Windows, %s lies at %s', (scenario, name, place) => {
    expect(placeOf(scenario, name, win32)).toBe(place);
  });

  it.each([
    ['/plans/line.yaml', 'parts\\doors.yaml', '/plans/parts/doors.yaml'],
    ['/plans/line.yaml', '../common/days.yaml', '/common/days.yaml'],
    ['/plans/line.yaml', '/x/y.yaml', '/x/y.yaml'],
  ])('from %s elsewhere, %s lies at %s', (scenario, name, place) => {
    expect(placeOf(scenario, name, posix)).toBe(place);
  });

  it.each(['C:\\x\\y.yaml', 'c:/x/y.yaml', '\\\\server\\share\\x.yaml', 'C:y.yaml'])(
    'is refused where there are no drives: %s',
    (name) => {
      expect(() => placeOf('/plans/line.yaml', name, posix)).toThrow(
        'a path of Windows, which this system is not',
      );
    },
  );

  it('is refused on Windows where it hangs on the folder that one stands in', () => {
    expect(() => placeOf('C:\\plans\\line.yaml', 'D:y.yaml', win32)).toThrow(
      'a drive with no slash behind it, which means another folder from time to time',
    );
  });

  it('is shown with forward slashes, and a backslash elsewhere is a letter of a name', () => {
    expect(shownPath('C:\\plans\\line.yaml', win32)).toBe('C:/plans/line.yaml');
    expect(shownPath('odd\\name.yaml', posix)).toBe('odd\\name.yaml');
  });
});

const line = (include: string, times: string, list: string): string => `scenario: one
programme: { start: 2027-03-01, build list: ${list}, rate: { per day: 1 } }
calendars: { days: { hours: ["06:00-14:00"] } }
sites: { works: { calendar: days, stations: { jig: { buffer: unlimited } } } }
include: [${include}]
route:
  - { step: build, at: jig, work: { observed: ${times}, column: min, unit: min } }
  - include: ${include}
`;
const FILES: Readonly<Record<string, string>> = {
  'parts/paint.yaml':
    'sites: { works: { stations: { booth: { buffer: unlimited } } } }\n' +
    "route: [{ step: paint, at: booth, work: { observed: '..\\data\\booth.csv', column: min, unit: min } }]\n",
  'data/booth.csv': 'min\n7\n8\n',
  'data/jig.csv': 'min\n70\n80\n',
  'data/builds.csv': 'build\nA1\nA2\n',
};
const read = (text: string, file: string, broken = '') =>
  readScenario(text, file, (path) => {
    if (!(path in FILES)) throw new Error('no such file');
    return path === broken ? 'route: [{ stpe: paint }]' : FILES[path];
  });

describe('a scenario written with backslashes', () => {
  const backslashes = line('parts\\paint.yaml', 'data\\jig.csv', 'data\\builds.csv'),
    slashes = line('parts/paint.yaml', 'data/jig.csv', 'data/builds.csv');

  it('has the digest of the one with slashes, wherever it lies', () => {
    const { scenario, problems } = read(backslashes, 'line.yaml');
    expect((problems ?? []).map(sayProblem)).toEqual([]);
    expect(digest(scenario!)).toBe(digest(read(slashes, 'C:/plans/line.yaml').scenario!));
    expect(JSON.stringify(scenario)).not.toContain('\\');
  });

  it('is told of with slashes, from the folder of the scenario', () => {
    const { problems } = read(backslashes, 'C:/plans/line.yaml', 'parts/paint.yaml');
    expect(problems!.map(sayProblem).join('\n')).toContain('C:/plans/parts/paint.yaml:1:');
  });

  it('that includes itself by another way of writing is found out', () => {
    const { problems } = readScenario('include: .\\line.yaml\n', 'C:/plans/line.yaml', () => 'lanes: {}');
    expect(problems!.map(sayProblem).join('\n')).toContain('no file that includes itself');
  });
});
