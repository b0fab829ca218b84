import { describe, expect, it } from 'vitest';
import type { FloorEvent } from '../../../src/records/log/event.js';
import { openingPart } from '../../../src/report/terminal/records/opening.js';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import { forecastStudy } from '../../../src/study/forecast/forecast.js';
import { floorAt } from '../../../src/study/validate/start/floor-at.js';
import { standingOrder } from '../../../src/study/validate/start/standing-orders.js';
import { logOf, scenarioOf, sourceOf } from './shop.js';

/**
 * No chance in it: a unit an hour from 6:00, four a day; two hours at each of two steps with two places. Unit k
 * of a day comes at 5 + k, is at cut until 7 + k and out at 9 + k, all on its day.
 */
const yaml = (start: string, more = ''): string => `
scenario: Exact
${more}
programme: { start: ${start}, rate: { per day: 4 }, quantity: 12, options: { colour: { red: 50 %, white: 50 % } } }
calendars: { day: { hours: ["06:00-10:00", "10:00-18:00"], on: Mon-Fri } }
sites:
  shop:
    zone: UTC
    calendar: day
    stations: { saw: { places: 1 }, bench: { places: 1, buffer: 8 } }
route:
  - { step: cut, at: saw, work: 2 h }
  - { step: fit, at: bench, work: 150 min }
`;
// By hand: released every 3 h from 6:00; cut 2 h; fit 2.5 h: out at 10:30, 13:30, 16:30; the fourth comes at
// 15:00, is cut by 17:00, and fitted by 7:30 of the next day.
const scenario = scenarioOf(yaml('2027-03-01')),
  log = sourceOf(logOf(scenario, 'exact')),
  at = (text: string) => ({ minutes: Date.parse(`${text}Z`) / 60_000, isLocal: false });

describe('the floor at a moment', () => {
  it('has units at the step that they are about to begin, those in work at theirs with what is done', async () => {
    const names = async (text: string): Promise<string[]> => {
      const { opening } = await floorAt(log, { scenario, model: compile(scenario) }, at(text)),
        { steps } = compile(scenario);
      return opening.placed.map(
        ({ unit, step, done }) => `${unit} ${steps.names[step]}${done > 0 ? ` ${done}` : ''}`,
      );
    };
    expect(await names('2027-03-01T07:00')).toEqual(['1 cut 60']);
    expect(await names('2027-03-01T09:30')).toEqual(['1 fit 90', '2 cut 30']);
    expect(await names('2027-03-01T14:30')).toEqual(['3 fit 30']);
    expect(await names('2027-03-02T00:00')).toEqual(['4 fit 60']);
  });

  it('has a unit that waits to be cleared, though none was shipped so far', async () => {
    const hold = scenarioOf(`
scenario: A hold at the end
programme: { start: 2027-03-01, quantity: 9, rate: { per day: 2 } }
defects: { gap: {} }
sites: { shop: { zone: UTC, crews: { fitters: 2 }, stations: { saw: {}, yard: { places: 4 } } } }
route:
  - { step: cut, at: saw, work: 1 h, creates: { gap: 50 % }, finds: { gap: { chance: 90 %, carry: 10 min } } }
  - { step: clear, at: yard, crew: { fitters: 1 }, hold: { mend: 10 min } }
`),
      minute = Date.parse('2027-03-01T06:00Z') / 60_000,
      event = (after: number, kind: FloorEvent['kind'], step: string): FloorEvent => ({
        ...{ at: minute + after, kind, step, object: 'A', type: 'unit', station: '', others: [], values: {} },
      });
    const events = [
        event(0, 'enter', ''),
        event(0, 'start', 'cut'),
        event(60, 'end', 'cut'),
        event(60, 'arrive', 'clear'),
        event(300, 'start', 'clear'),
        event(310, 'end', 'clear'),
        event(310, 'ship', ''),
      ],
      { opening, shipped } = await floorAt(
        sourceOf(events),
        { scenario: hold, model: compile(hold) },
        at('2027-03-01T08:00'),
      );
    expect([shipped, opening.placed.map(({ unit, step }) => `${unit} ${step}`)]).toEqual([0, ['A 1']]);
  });

  it('is written as a part that the reader of scenarios takes', async () => {
    const floor = await floorAt(log, { scenario, model: compile(scenario) }, at('2027-03-02T00:00')),
      model = compile(scenario),
      standing = floor.opening.placed.map((unit) => standingOrder(unit, model)),
      part = openingPart(floor, 'made.csv', standing);
    const { scenario: read, problems } = readScenario(
      yaml('2027-03-02', 'include: opening.yaml'),
      'exact.yaml',
      () => part,
    );
    expect(problems).toBeUndefined();
    const [only, ...others] = read?.programme.orders.list ?? [];
    expect(others).toEqual([]);
    expect(only).toMatchObject({ build: '4', at: 'fit', options: floor.opening.placed[0]?.options });
    expect(Object.keys(only.options)).toEqual(['colour']);
  });
});

describe('the forecast from a moment', () => {
  it('ships the rest on the days on which the log then ships it', async () => {
    const found = await forecastStudy({
      scenario,
      file: 'exact.yaml',
      log,
      at: at('2027-03-02T00:00'),
      seed: '1',
      replications: 3,
    });
    const events = logOf(scenario, 'exact'),
      shippedOn = (unit: string): string =>
        new Date((events.find(({ kind, object }) => kind === 'ship' && object === unit)?.at ?? NaN) * 60_000)
          .toISOString()
          .slice(0, 10);
    expect(found.units).toEqual({ standing: 1, shipped: 3, toCome: 8 });
    expect(found.orders.map(({ unit }) => unit)).toEqual(['4', '5', '6', '7', '8', '9', '10', '11', '12']);
    // The fourth, in work over night, has an hour and a half left.
    for (const { unit, half, fourInFive } of found.orders)
      expect([unit, half, fourInFive]).toEqual([unit, shippedOn(unit), shippedOn(unit)]);
  });
});
