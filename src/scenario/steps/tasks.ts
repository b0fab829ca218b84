import type { Model } from '../../flow/model/model.js';
import { log2 } from '../../random/elementary.js';
import { float64, int32, ragged, uint8 } from '../lookup/columns.js';
import { type Compilation, NO_DRAW } from '../lookup/compilation.js';
import { foundIn } from '../lookup/ids.js';
import type { Lookup } from '../lookup/outline.js';
import type { Path } from '../types/problem.js';
import type { StationStep } from '../types/steps.js';
import { keys, named, type Wrong } from '../values/keys.js';
import { mapOf, type RawMap } from '../values/raw.js';
import { chance, flag, positive, whole, word } from '../values/scalars.js';
import type { TimeSchema } from '../values/time.js';
import { optionNames } from './conditions.js';

const learning = keys(
  {
    rate: chance
      .refine((rate) => rate > 0, { error: 'a rate above 0 %, such as 85 %' })
      .describe(
        'Work time after each doubling of the number built, as a share of the time before. Example: 85 %',
      ),
    curve: word('unit', 'cumulative mean')
      .default('unit')
      .describe(
        'What the rate applies to: `unit`, the time of the n-th unit itself (Crawford; default), or ' +
          '`cumulative mean`, the mean time of the first n (Wright).',
      ),
    floor: chance
      .default(0)
      .describe("Lowest work time, as a share of the first unit's. Default: 0. Example: 60 %"),
    'built before': whole(0)
      .default(0)
      .describe(
        'Units already built when the run starts; the work time given is that of the very first. ' +
          'Default: 0. Example: 20',
      ),
  },
  'learning: a map with the key rate, such as { rate: 85 %, floor: 60 % }',
);

function passesSchema(time: TimeSchema) {
  return keys(
    {
      count: whole(1, 1000).describe('How many passes (coats). Example: 2'),
      work: time.describe('Work of one pass. Example: { low: 35 min, likely: 42 min, high: 60 min }'),
      settle: time
        .optional()
        .describe(
          'Wait in the place after each pass, without people; it continues through breaks and ' +
            'nights. Default: none. Example: { low: 6 min, high: 14 min }',
        ),
    },
    'passes: a map with the keys count and work',
  );
}

/** Keys of a step, alone or side by side with others, that say how long it takes. */
export const workKeys = (time: TimeSchema) => ({
  work: time
    .optional()
    .describe(
      'Work by people: it stops at breaks and at the end of a shift and resumes after them. ' +
        'Default: none. Example: 20 min',
    ),
  passes: passesSchema(time)
    .optional()
    .describe(
      'Instead of `work`: several equal passes with a settling wait after each. Paint work follows ' +
        'local codes. Example: { count: 2, work: 40 min, settle: 10 min }',
    ),
  'work factor': named(
    named(positive(1000), 'values of the option with their factors, such as { red: 1.2 }'),
    'options with factors, such as { colour: { red: 1.2 } }',
  )
    .default({})
    .describe(
      'The work time is multiplied by this for units with these values. Default: 1. Example: { ' +
        'colour: { red: 1.2 } }',
    ),
  learning: learning
    .optional()
    .describe(
      'The work time falls with the number of times the step has been done. Default: no learning. ' +
        'Example: { rate: 85 %, floor: 60 %, built before: 20 }',
    ),
  process: time
    .optional()
    .describe(
      'After the work: a process without people that continues through breaks and nights and ' +
        'occupies the place, such as a bake. Default: none. Example: 50 min',
    ),
});

/** Also of a step alone or side by side. */
export const oneShiftKey = flag
  .default(false)
  .describe(
    'True: the work starts only if it can finish in the same shift (breaks do not count as its ' +
      'end); until then its people are free for other work and the place waits. Default: false',
  );

/** Keys of a step that say how long it takes. */
export const taskKeys = (time: TimeSchema) => ({
  ...workKeys(time),
  'attended end': flag
    .default(false)
    .describe(
      'True: a process that is over while nobody is on shift ends in the first working minute of ' +
        'the step (its station and crews), as with an oven that somebody has to open. Default: false',
    ),
  'in one shift': oneShiftKey,
});

/** What the keys of a task must be together. */
export function checkTask(
  { work, passes, process, attendedEnd }: Pick<StationStep, 'work' | 'passes' | 'process' | 'attendedEnd'>,
  wrong: Wrong,
): void {
  if (attendedEnd && process === undefined)
    wrong(['attended end'], 'a process that ends; this step has none', 'true');
  if (work !== undefined && passes !== undefined)
    wrong(['passes'], 'either work or passes; the work of a pass stands inside passes', 'both');
}

export function taskNames(path: Path, entry: RawMap, lookup: Lookup): void {
  for (const [option, factors] of Object.entries(mapOf(entry['work factor'])))
    optionNames(lookup, [...path, 'work factor', option], option, Object.keys(mapOf(factors)), true);
}

interface Factor {
  readonly option: number;
  readonly table: readonly number[];
}
export interface TaskRow {
  readonly workDraw: number;
  readonly passes: number;
  readonly settleDraw: number;
  readonly processDraw: number;
  readonly attendedEnd: boolean;
  readonly learnExponent: number;
  readonly learnCumulative: boolean;
  readonly learnFloor: number;
  readonly learnBefore: number;
  readonly oneShift: boolean;
  readonly factors: readonly Factor[];
}

/** Nothing is done. */
export const NO_TASK: TaskRow = {
  workDraw: NO_DRAW,
  passes: 1,
  settleDraw: NO_DRAW,
  processDraw: NO_DRAW,
  attendedEnd: false,
  learnExponent: 0,
  learnCumulative: false,
  learnFloor: 0,
  learnBefore: 0,
  oneShift: false,
  factors: [],
};

export function taskRow(step: StationStep, { scenario, ids, draws }: Compilation): TaskRow {
  const { name, work, passes, process, attendedEnd, learning, oneShift, workFactor } = step;
  return {
    workDraw: draws.add(`${name}/work`, passes?.work ?? work),
    passes: passes?.count ?? 1,
    settleDraw: draws.add(`${name}/settle`, passes?.settle),
    processDraw: draws.add(`${name}/process`, process),
    attendedEnd,
    learnExponent: log2(learning?.rate ?? 1),
    learnCumulative: learning?.curve === 'cumulative mean',
    learnFloor: learning?.floor ?? 0,
    learnBefore: learning?.builtBefore ?? 0,
    oneShift,
    factors: Object.entries(workFactor).map(([option, byValue]) => ({
      option: ids.option(option),
      table: Object.keys(foundIn(scenario.programme.options, option, 'option')).map(
        (value) => byValue[value] ?? 1,
      ),
    })),
  };
}

export function taskColumns(rows: readonly TaskRow[]) {
  const factors = ragged(rows, (row) => row.factors);
  let end = 0;
  return {
    ...int32(rows, 'workDraw', 'passes', 'settleDraw', 'processDraw', 'learnBefore'),
    ...float64(rows, 'learnExponent', 'learnFloor'),
    ...uint8(rows, 'learnCumulative', 'oneShift', 'attendedEnd'),
    factorStart: factors.start,
    factorOption: factors.column(({ option }) => option),
    factorOffset: factors.column(({ table }) => (end += table.length) - table.length),
    factorTable: Float64Array.from(factors.entries.flatMap(({ table }) => table)),
  } satisfies Partial<Model['steps']>;
}
