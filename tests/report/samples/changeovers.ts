import type { ChangeoverResult, StripStay } from '../../../src/study/sections/changeovers.js';
import type { Estimate } from '../../../src/study/statistics/estimate.js';

/** Invented changeovers of two stations, one with more values than there are fills and three places. */
export function sampleChangeovers(
  names: readonly string[],
  around: (mean: number, halfWidth: number) => Estimate,
  random: () => number,
): ChangeoverResult[] {
  return names.slice(0, 2).map((name, index) => {
    const values =
      index === 0
        ? ['red', 'white', 'lime']
        : ['red', 'white', 'lime', 'silver grey metallic', 'sea blue', 'orange', 'sand', 'ivory', 'black'];
    const places = 1 + 2 * index,
      stays: StripStay[] = [];
    for (let place = 1; place <= places; place++) {
      let at = -2,
        last = 0;
      while (at < 160) {
        const value = Math.floor(random() * values.length),
          change = value === last ? 0 : 0.7,
          to = at + change + 2 + 2 * random();
        stays.push({
          place,
          value,
          from: at,
          to: to > 160 ? null : to,
          changedFrom: change > 0 ? last : null,
          changeFrom: change > 0 ? at : null,
          changeTo: change > 0 ? at + change : null,
        });
        last = value;
        at = to + (random() < 0.2 ? 6 * random() : 0);
      }
    }
    return {
      name,
      site: 'paint and finishing works',
      places,
      option: 'colour',
      values,
      per100Units: around(38 + 20 * index, 1.2),
      hoursPerWeek: around(12.4, 0.3),
      pairs: [
        { from: 'red', to: 'white', per100Units: around(19, 0.6), minutes: around(45, 1) },
        { from: 'white', to: 'red', per100Units: around(19, 0.6), minutes: around(15, 0.4) },
      ],
      strip: {
        replication: 1,
        start: '2027-06-07T00:00:00',
        hours: 168,
        days: [
          '2027-06-07',
          '2027-06-08',
          '2027-06-09',
          '2027-06-10',
          '2027-06-11',
          '2027-06-12',
          '2027-06-13',
        ],
        stays,
      },
    };
  });
}
