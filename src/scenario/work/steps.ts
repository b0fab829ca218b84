import type { Feeder, LaneStep, Learning, RouteEntry, StationStep } from '../types/steps.js';
import { z } from 'zod';

import { besideSchema } from './side-by-side.js';
import { chanceByOption, conditionSchema, findSchema } from './finds.js';
import { comparisonSchema, holdSchema } from './holds.js';
import { chance, flag, keys, name, named, oneOrMore, positive, whole, word } from '../values/keys.js';
import type { TimeSchema } from '../values/time.js';

const when = conditionSchema
  .optional()
  .describe(
    'Only units that meet this visit the step; all options named must hold. `when: stripe` means ' +
      '{ stripe: yes }. Default: every unit. Example: { stripe: yes, colour: [red, lime] }',
  );

const sample = z.union(
  [
    z
      .string({ error: 'a sample, such as 1 in 5' })
      .regex(/^1 in [1-9]\d{0,5}$/, { error: 'a sample, such as 1 in 5' })
      .transform((text): StationStep['sample'] => ({ oneIn: Number(text.slice(5)), by: 'turn' })),
    keys(
      {
        '1 in': whole(1).describe('One of so many units visits the step. Example: 5'),
        by: word('turn', 'random')
          .default('turn')
          .describe('`turn`: every n-th unit (default); `random`: each unit with chance 1/n.'),
      },
      'a map with the key 1 in',
    ).transform((s): StationStep['sample'] => ({ oneIn: s['1 in'], by: s.by })),
  ],
  { error: 'a sample, such as 1 in 5 or { 1 in: 5, by: random }' },
);

const learning = keys(
  {
    rate: chance
      .refine((rate) => rate > 0, { error: 'a rate above 0 %, such as 85 %' })
      .describe('What each doubling of the number built leaves of the work time. Example: 85 %'),
    curve: word('unit', 'cumulative mean')
      .default('unit')
      .describe(
        'What the rate is about: `unit`, the time of the n-th unit itself (Crawford; default), or ' +
          '`cumulative mean`, the mean time of the first n (Wright).',
      ),
    floor: chance
      .default(0)
      .describe("No unit takes less than this part of the first unit's time. Default: 0. Example: 60 %"),
    'built before': whole(0)
      .default(0)
      .describe(
        'Units already built when the run starts; the work time given is that of the very first. ' +
          'Default: 0. Example: 20',
      ),
  },
  'learning: a map with the key rate, such as { rate: 85 %, floor: 60 % }',
).transform(
  (l): Learning => ({ rate: l.rate, curve: l.curve, floor: l.floor, builtBefore: l['built before'] }),
);

const partCount = z.union([whole(1), word('own')], { error: 'a whole number from 1, or own' });

function passesSchema(time: TimeSchema) {
  return keys(
    {
      count: whole(1, 1000).describe('How many passes (coats). Example: 2'),
      work: time.describe('Work of one pass. Example: { low: 35 min, likely: 42 min, high: 60 min }'),
      settle: time
        .optional()
        .describe(
          'Wait on the place after each pass, without people, also through breaks and nights. Default: ' +
            'none. Example: { low: 6 min, high: 14 min }',
        ),
    },
    'passes: a map with the keys count and work',
  );
}

export function stepSchema(time: TimeSchema) {
  const find = findSchema(time);
  return keys(
    {
      step: name('the name of the step').describe(
        'The name of the step, unique over all routes. Example: prime',
      ),
      at: name('the name of a station').describe(
        'The station. Two steps in a row at the same station: the unit keeps its place. Example: prime booth',
      ),
      when,
      crew: named(whole(1), 'crews with the number of people, such as { painters: 2 }')
        .default({})
        .describe(
          'People needed, from the crews of the site of the station; claimed all together. Default: ' +
            'none. Example: { painters: 2 }',
        ),
      work: time
        .optional()
        .describe(
          'Work by people: it stops at breaks and at the end of a shift and goes on after them. ' +
            'Default: none. Example: 20 min',
        ),
      passes: passesSchema(time)
        .optional()
        .describe(
          'Instead of `work`: several like passes with a settling wait after each. Paint work follows ' +
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
          'The work time falls with the number of times the step was done. Default: it stays. Example: ' +
            '{ rate: 85 %, floor: 60 %, built before: 20 }',
        ),
      process: time
        .optional()
        .describe(
          'After the work: a process without people that goes on through breaks and nights and keeps ' +
            'the place, such as a bake. Default: none. Example: 50 min',
        ),
      'attended end': flag
        .default(false)
        .describe(
          'True: a process that is over while nobody is on shift is ended with the first working ' +
            'minute of the step (its station and crews), as an oven that has to be opened by somebody. ' +
            'Default: false',
        ),
      'in one shift': flag
        .default(false)
        .describe(
          'True: the work must not straddle a shift end. It starts only where it can end in the same ' +
            'shift (breaks do not end one); until then its people are free for other work and the place ' +
            'waits. Default: false',
        ),
      rework: word('both', 'skip', 'only')
        .default('both')
        .describe(
          '`both`: also visited by a unit in rework (default); `skip`: not done again; `only`: visited ' +
            'only after a send-back.',
        ),
      sample: sample
        .optional()
        .describe(
          'Only some units visit the step: `1 in 5` is every fifth; { 1 in: 5, by: random } draws. ' +
            'Default: every unit',
        ),
      parts: named(partCount, 'feeders and supplies with how many, such as { axles: 2, cab doors: own }')
        .default({})
        .describe(
          'Parts that join here: a number from the stock of a feeder or a supply, or `own` for those ' +
            'taken off this very unit. A step of a feeder may take parts too. Example: { axles: 2, power ' +
            'packs: 1, cab doors: own }',
        ),
      'takes off': oneOrMore(
        name('the name of a feeder of own parts'),
        'the name of a feeder of own parts, or a list',
      )
        .optional()
        .describe(
          'Own parts that leave the unit when the step ends and go through their feeder. Example: cab doors',
        ),
      creates: named(chanceByOption, 'kinds of defect with their chances, such as { runs: 4 % }')
        .default({})
        .describe(
          'Defects that the step may make, with their chances. Example: { dirt in primer: 6 %, runs: { ' +
            'usual: 4 %, colour: { red: 7 % } } }',
        ),
      finds: named(find, 'kinds of defect, each with a chance and what then')
        .default({})
        .describe(
          'Open defects that the step may find, each with its chance and what follows; those missed ' +
            'may be found later. Example: { runs: { chance: 90 %, back to: prime, limit: 3 } }',
        ),
      fails: find
        .optional()
        .describe(
          'A test that may fail, whatever the defects: its chance and what follows. Example: { chance: ' +
            '4 %, back to: fit doors }',
        ),
      hold: holdSchema(time)
        .optional()
        .describe(
          'Units with noted items (`carry`, or passed on at the limit of a loop) may not pass: each ' +
            'takes a place, and the crew mends its items one after another before the work of the step. ' +
            'A unit without any passes the step over, unless it has work, a process or another task for ' +
            'all. A `process` here is the wait for release. Example: { mend: 45 min }',
        ),
      'compares with': comparisonSchema(time)
        .optional()
        .describe(
          'A second measurement: how often it agrees with an earlier inspection on whether something ' +
            'is found, first visits of both. Example: { step: measure wheels, if it differs: 40 min }',
        ),
    },
    'a step: a map with the keys step and at',
  )
    .superRefine((step, context) => {
      if (context.issues.length > 0) return; // misspelt keys first
      if (step['attended end'] && step.process === undefined)
        context.addIssue({
          code: 'custom',
          path: ['attended end'],
          message: 'a process that ends; this step has none',
          params: { seen: 'true' },
        });
      if (step.work !== undefined && step.passes !== undefined)
        context.addIssue({
          code: 'custom',
          path: ['passes'],
          message: 'either work or passes; the work of a pass stands inside passes',
          params: { seen: 'both' },
        });
    })
    .transform(
      (s): StationStep => ({
        kind: 'step',
        name: s.step,
        at: s.at,
        when: s.when ?? {},
        crew: s.crew,
        work: s.work,
        passes: s.passes && { count: s.passes.count, work: s.passes.work, settle: s.passes.settle },
        process: s.process,
        attendedEnd: s['attended end'],
        oneShift: s['in one shift'],
        workFactor: s['work factor'],
        learning: s.learning,
        rework: s.rework,
        sample: s.sample,
        parts: s.parts,
        takesOff: s['takes off'] ?? [],
        creates: s.creates,
        finds: s.finds,
        fails: s.fails,
        hold: s.hold,
        comparesWith: s['compares with'],
        sideBySide: undefined,
      }),
    );
}

const laneStep = keys(
  {
    lane: name('the name of a lane').describe(
      'The unit travels by this lane to the next site. Example: coachworks to final plant',
    ),
    when,
  },
  'a map with the key lane',
).transform((l): LaneStep => ({ kind: 'lane', lane: l.lane, when: l.when ?? {} }));

export function routeSchema(time: TimeSchema) {
  const step = stepSchema(time);
  const entry = z.union([step, laneStep, besideSchema(step)], {
    error:
      'a step { step: ..., at: ... }, a lane { lane: ... } or steps side by side { at: ..., side ' +
      'by side: [...] }',
  });
  return z
    .array(entry, { error: 'a list of steps' })
    .min(1, { error: 'at least one step' })
    .transform((entries): RouteEntry[] => entries)
    .meta({ id: 'route', description: 'Steps and lanes in order.' });
}

export function feederSchema(route: ReturnType<typeof routeSchema>) {
  return keys(
    {
      stock: whole(1)
        .optional()
        .describe(
          'For interchangeable sub-assemblies: the target of a pull loop, those in stock and in the ' +
            'making together. Example: 3',
        ),
      'at start': whole(0)
        .optional()
        .describe('Sub-assemblies in stock when the run starts. Default: 0. Example: 3'),
      own: z
        .literal(true, { error: 'true, or leave the key out' })
        .optional()
        .describe('True for parts that are taken off a unit and rejoin the same unit. Instead of `stock`.'),
      route: route.describe(
        'The steps of the sub-assembly. Example: [{ step: build axle, at: axle bench, work: 2 h }]',
      ),
    },
    'a feeder: a map with stock or own, and route',
  )
    .superRefine((f, context) => {
      if (context.issues.length > 0) return; // misspelt keys first
      const wrong = (path: string[], message: string, seen?: string): void => {
        context.addIssue({ code: 'custom', path, message, params: { seen } });
      };
      if ((f.stock === undefined) === (f.own === undefined))
        wrong([], 'exactly one of stock and own: true', f.stock === undefined ? 'neither' : 'both');
      if (f['at start'] !== undefined && f.own === true)
        wrong(['at start'], 'no stock at start for own parts');
      if (f.stock !== undefined && (f['at start'] ?? 0) > f.stock)
        wrong(['at start'], `at most the target stock, ${f.stock}`);
    })
    .transform(
      (f): Feeder => ({
        kind: f.own === true ? 'own' : 'stock',
        target: f.stock ?? 0,
        atStart: f['at start'] ?? 0,
        route: f.route,
      }),
    );
}
