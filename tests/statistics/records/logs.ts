import type { FloorEvent } from '../../../src/records/log/event.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import type { ValidateResults } from '../../../src/study/validate/results.js';
import { built } from '../built.js';

/** A test may take so long on a busy machine, ms; unhurried it takes a twentieth. */
export const SLOW = 900_000;
export const LOGS = 20;
const REPLICATIONS = 20;

/** The log of a line, by a seed. */
function logOf(real: Scenario, seed: string): FloorEvent[] {
  const model = built.compile(real),
    { happenings } = built.floorLog(built.prepare(model), seed, 1);
  return [...built.eventsOfRun(happenings, model, built.runSpan(real).origin)];
}

/** Answers on logs of a line, each with seeds of its own, as long as they are asked for. */
export async function* answers(
  scenario: Scenario,
  real: Scenario,
  name: string,
): AsyncGenerator<ValidateResults> {
  for (let i = 0; i < LOGS; i++) {
    const events = logOf(real, `${name} ${i}`);
    yield await built.validateStudy({
      scenario,
      file: 'made.yaml',
      log: {
        file: 'made.csv',
        read: (take) => {
          take(events);
          return Promise.resolve(null);
        },
      },
      seed: `model ${i}`,
      replications: REPLICATIONS,
    });
  }
}

/** False alarms among logs of the line itself; those beyond three are not asked for. */
export async function falseAlarms(scenario: Scenario): Promise<number> {
  let alarms = 0;
  for await (const { verdict, measures } of answers(scenario, scenario, 'none')) {
    if (verdict === 'agrees') continue;
    console.log(measures.filter(({ agrees }) => agrees === false));
    if (++alarms > 2) break;
  }
  console.log(`false alarms: ${alarms} of ${LOGS}`);
  return alarms;
}

/** In how many of the logs of a changed line the first cause is the one wanted; two may miss it. */
export async function named(scenario: Scenario, real: Scenario, wanted: RegExp): Promise<number> {
  const others: string[] = [];
  for await (const { causes } of answers(scenario, real, wanted.source)) {
    const words = causes[0]?.words ?? 'none';
    if (wanted.test(words)) continue;
    others.push(words);
    if (others.length > 2) break;
  }
  console.log(`${wanted.source}: missed in ${others.length} of ${LOGS}`, others);
  return LOGS - others.length;
}
