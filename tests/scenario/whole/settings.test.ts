import { describe, expect, it } from 'vitest';
import { modelOf } from '../../flow/run-yaml.js';
import { type Edit, said } from '../read-small.js';

const BAKE = '{ step: bake, at: oven, process: 50 min }',
  OVEN = 'oven: { places: 4,';
const bake = (setting: string): Edit => [BAKE, `{ step: bake, at: oven, process: 50 min, ${setting} }`],
  oven = (changeover: string): Edit => [OVEN, `oven: { changeover: ${changeover}, places: 4,`],
  HEATS = oven('{ on: setting, process: 20 min }');

/** What a planner might do to small.yaml, and what is then said; worded by hand, no outside source. */
const cases: readonly (readonly [title: string, edits: readonly Edit[], expected: readonly string[]])[] = [
  ['nothing of a setting', [bake('setting: 80 degrees'), HEATS], []],
  ['nothing of a number', [bake('setting: 80'), HEATS], []],
  ['nothing of one by option', [bake('setting: { colour: { red: 80 }, usual: 60 }'), HEATS], []],
  [
    'a setting at a station without changeover',
    [bake('setting: 80 degrees')],
    [
      '36:46 route[1].setting: a setting only at a station with a changeover `on: setting`, such as { on: setting, process: 20 min }; got "oven", which has no changeover',
    ],
  ],
  [
    'a setting at a station that is set up for an option',
    [bake('setting: 80 degrees'), oven('{ on: colour, work: 15 min }')],
    [
      '36:46 route[1].setting: a setting only at a station with a changeover `on: setting`, such as { on: setting, process: 20 min }; got "oven", whose changeover is on colour',
    ],
  ],
  [
    'a step without setting at a station that is set up for them',
    [HEATS],
    [
      '36:13 route[1].step: a step with a setting, such as setting: 80 degrees, since "oven" is set up for it; got "bake", which has none',
    ],
  ],
  [
    'an option with the name of settings',
    [bake('setting: 80 degrees'), HEATS, ['stripe: 35 % }', 'stripe: 35 %, setting: 50 % }']],
    [
      '36:46 route[1].setting: no option with the name setting where steps have settings; give the option another name',
    ],
  ],
  [
    'a value of the option without setting',
    [bake('setting: { colour: { red: 80 } }'), HEATS],
    [
      '36:57 route[1].setting.colour: a setting for each value of the option, or `usual` for all others; got only red',
    ],
  ],
  [
    'settings by two options',
    [bake('setting: { colour: { red: 80 }, stripe: { yes: 70 }, usual: 60 }'), HEATS],
    [
      '36:55 route[1].setting: one option, such as { colour: { red: 80 degrees }, usual: 60 degrees }; got colour, stripe',
    ],
  ],
  [
    'a setting by option in a feeder of stock',
    [
      bake('setting: 60'),
      HEATS,
      [
        '{ step: build axle, at: line, work: 1 h }',
        '{ step: heat axle, at: line, work: 1 h, setting: { colour: { red: 80 }, usual: 60 } }',
      ],
      ['line: { buffer: unlimited }', 'line: { buffer: unlimited, changeover: { on: setting, work: 1 h } }'],
      ['  - { step: road test', '  - { step: road test, setting: 60'],
      ['    at: line\n    crew', '    at: line\n    setting: 60\n    crew'],
    ],
    [
      '25:83 feeders.axles.route[0].setting: nothing by option in a feeder of stock, whose sub-assemblies are not yet of a unit',
    ],
  ],
  [
    'a time between settings that no step has',
    [bake('setting: 80'), oven('{ on: setting, work: 9 min, from to: { 80: { 60: 1 h } } }')],
    [
      '17:72 sites.coachworks.stations.oven.changeover.from to.80.60: no setting of this name at a step of the station; got "60"; did you mean "80"?',
    ],
  ],
  [
    'a changeover of people and by itself',
    [bake('setting: 80'), oven('{ on: setting, work: 9 min, process: 20 min }')],
    [
      '17:64 sites.coachworks.stations.oven.changeover.process: either work or process: people set the place up, or it sets itself; got both',
    ],
  ],
  [
    'the word for settings, misspelt',
    [oven('{ on: seting, work: 9 min }')],
    [
      '17:33 sites.coachworks.stations.oven.changeover.on: no option of this name; got "seting"; did you mean "setting"?',
    ],
  ],
];

describe('settings', () => {
  it.each(cases)('report %s', (_, edits, expected) => {
    expect(said(...edits)).toEqual(expected);
  });

  it('are listed by station in the order of routes, and looked up by the value of the option', () => {
    const { steps, stations } = modelOf(`
scenario: two ovens
programme: { arrivals: saturated, quantity: 1, options: { colour: { red: 50 %, white: 30 %, lime: 20 % } } }
sites: { hall: { stations: { small: { changeover: { on: setting, work: 5 min } }, large: { changeover: { on: setting, process: 5 min } }, bay: { changeover: { on: colour, work: 1 min } } } } }
route:
  - { step: a, at: small, setting: warm }
  - { step: b, at: large, setting: { colour: { white: hot }, usual: warm } }
  - { step: c, at: small, setting: cold }
  - { step: d, at: bay }
`);
    expect(stations.changeoverValues).toEqual([
      ['warm', 'cold'],
      ['warm', 'hot'],
      ['red', 'white', 'lime'],
    ]);
    expect([...stations.changeoverOption, ...stations.changeoverAlone]).toEqual([-1, -1, 0, 0, 1, 0]);
    expect([...steps.settingOption]).toEqual([-1, 0, -1, 0]);
    expect([...steps.settingStart]).toEqual([0, 1, 4, 5]);
    expect([...steps.settingTable]).toEqual([0, 0, 1, 0, 1, 0, 1, 2]);
  });

  it('let an option of the name setting be what a changeover goes by, as it was before', () => {
    const { stations } = modelOf(`
scenario: an option
programme: { arrivals: saturated, quantity: 1, options: { setting: { hot: 50 %, cold: 50 % } } }
sites: { hall: { stations: { oven: { changeover: { on: setting, work: 5 min } } } } }
route: [{ step: bake, at: oven, process: 1 h }]
`);
    expect([...stations.changeoverOption]).toEqual([0]);
    expect(stations.changeoverValues).toEqual([['hot', 'cold']]);
  });
});
