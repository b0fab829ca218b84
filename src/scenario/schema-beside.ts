import { z } from 'zod';
import type { Condition, StationStep } from './scenario.js';
import { keys, name } from './schema-quantity.js';
import type { stepSchema } from './schema-route.js';

/** Steps done side by side on one unit in one place: a step of the route without work of its own, and those in it. */
export function besideSchema(step: ReturnType<typeof stepSchema>) {
  const {
    when,
    crew,
    work,
    passes,
    'work factor': factor,
    learning,
    process,
    'in one shift': oneShift,
    parts,
    creates,
    step: stepName,
  } = step.in.shape;
  // Whatever else a step may have stays at its default.
  const plain = step.parse({ step: 'step', at: 'station' });
  const inner = keys(
    {
      step: stepName,
      when,
      crew,
      work,
      passes,
      'work factor': factor,
      learning,
      process,
      'in one shift': oneShift,
      parts,
      creates,
    },
    'a step: a map with the key step',
  )
    .superRefine((s, context) => {
      if (context.issues.length > 0) return; // misspelt keys first
      if (s.work !== undefined && s.passes !== undefined)
        context.addIssue({
          code: 'custom',
          path: ['passes'],
          message: 'either work or passes; the work of a pass stands inside passes',
          params: { seen: 'both' },
        });
    })
    .transform(
      (s): StationStep => ({
        ...plain,
        name: s.step,
        when: (s.when ?? {}) as Condition,
        crew: s.crew,
        work: s.work,
        passes: s.passes && { count: s.passes.count, work: s.passes.work, settle: s.passes.settle },
        workFactor: s['work factor'],
        learning: s.learning,
        process: s.process,
        oneShift: s['in one shift'],
        parts: s.parts,
        creates: s.creates,
      }),
    );
  return keys(
    {
      at: name('the name of a station').describe(
        'The station in one place of which all the steps are done. Example: dress-up station',
      ),
      'side by side': z
        .array(inner, { error: 'a list of steps' })
        .min(2, { error: 'at least two steps' })
        .describe(
          'The steps, with the keys of a step that are listed here; the unit goes on when all are done. All begin at once; one that would bring in more people than the station lets into a place waits until others are over, the first listed first. Inspect in a step of its own behind them. Example: [{ step: fit dashboard, work: 90 min }, { step: route cables, work: 1 h }]',
        ),
      when,
    },
    'steps side by side: a map with the keys at and side by side',
  ).transform(
    (g): StationStep => ({
      ...plain,
      name: g['side by side'].map((each) => each.name).join(' / '),
      at: g.at,
      when: (g.when ?? {}) as Condition,
      sideBySide: g['side by side'].map((each) => ({ ...each, at: g.at })),
    }),
  );
}
