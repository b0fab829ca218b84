import { describe, expect, it } from 'vitest';
import type { FloorEvent } from '../../../src/records/log/event.js';
import type { ValidateResults } from '../../../src/study/validate/results.js';
import { type Changed, shop } from '../../study/validate/shop.js';
import { built, scenarioBuilt } from '../built.js';

const SLOW = 300_000,
  LOGS = 20;
const scenario = scenarioBuilt(shop({}));

/** The log of a line that is as the model says, but for what is changed. */
function logOf(changed: Changed, seed: string): FloorEvent[] {
  const real = scenarioBuilt(shop(changed)),
    model = built.compile(real),
    { happenings } = built.floorLog(built.prepare(model), seed, 1);
  return [...built.eventsOfRun(happenings, model, built.runSpan(real).origin)];
}

async function validated(changed: Changed, name: string): Promise<ValidateResults[]> {
  const found: ValidateResults[] = [];
  for (let i = 0; i < LOGS; i++) {
    const events = logOf(changed, `${name} ${i}`);
    found.push(
      await built.validateStudy({
        scenario,
        file: 'shop.yaml',
        log: {
          file: 'made.csv',
          read: (take) => {
            take(events);
            return Promise.resolve(null);
          },
        },
        seed: `model ${i}`,
        replications: 20,
      }),
    );
  }
  return found;
}

/** Truth is known: the logs are made by the same line, changed in one input or in none. */
describe('20 logs of 200 units', () => {
  it('raise a false alarm in no more than 2, if the line is as the model says', {
    timeout: SLOW,
  }, async () => {
    const alarms = (await validated({}, 'none')).filter(({ verdict }) => verdict !== 'agrees').length;
    console.log(`false alarms: ${alarms} of ${LOGS}`);
    expect(alarms).toBeLessThanOrEqual(2);
  });

  it.each<[string, Changed, RegExp]>([
    ['a step 15 % slower', { weld: '172.5 min' }, /^working minutes of weld: .* longer$/],
    ['a blind inspection', { found: '1 %' }, /^dirt found, of those .* at inspect: /],
    ['a crew that is one smaller', { fitters: 4 }, /^people of fitters: never more than 4 /],
  ])('name %s first in at least 18', { timeout: SLOW }, async (what, changed, wanted) => {
    const first = (await validated(changed, what)).map(({ causes }) => causes[0]?.words ?? 'none'),
      right = first.filter((words) => wanted.test(words)).length;
    console.log(
      `${what}: ${right} of ${LOGS}`,
      first.filter((words) => !wanted.test(words)),
    );
    expect(right).toBeGreaterThanOrEqual(18);
  });
});
