import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { reference } from '../../tools/docs/reference.js';

const text = z.string();
const jsonOf = (schema: z.ZodType) =>
  z.toJSONSchema(schema, { io: 'input', target: 'draft-7', reused: 'inline' }) as Record<string, unknown>;
const berth = z.strictObject({
  depth: z.int().min(1).describe('How deep it is. Default: 4 m. Example: 6'),
  crane: z
    .strictObject({ reach: text.optional().describe('How far | it reaches, such as { far: 1 }.') })
    .optional()
    .describe('The crane.'),
});
const file = (more: Record<string, z.ZodType> = {}) =>
  jsonOf(
    z.strictObject({
      harbour: text.describe('Its name. Example: North'),
      berths: z.record(text, berth).optional().describe('Berths by name.'),
      ...more,
    }),
  );
const template =
  '# Page\n\nContents: <!-- contents -->\n\n## Keys\n\n<!-- keys: (top) -->\n\n## Berths\n\nKept prose.\n\n<!-- keys: berths.* -->\n\n<!-- other sections -->\n\n## End\n';

describe('the reference made from a schema', () => {
  it('has the prose of the template, a contents line and the keys at their marks', () => {
    const page = reference(file(), template);
    expect(page).toContain('Contents: [keys](#keys) | [berths](#berths) | [end](#end)\n');
    expect(page).toContain('| `harbour` | text | Its name. Example: `North` | required |\n');
    expect(page).toContain(
      '| `berths` | by name: `{ depth, crane }` | Berths by name. Keys: [berths](#berths). |  |\n',
    );
    expect(page).toContain(
      'Kept prose.\n\n| key | written as | meaning | default |\n|---|---|---|---|\n| `depth` | whole number from 1 | How deep it is. Example: `6` | required |\n',
    );
    expect(page.endsWith('## End\n')).toBe(true);
  });

  it('has the keys of an inner map below it, bars escaped and maps in code marks', () => {
    expect(reference(file(), template)).toContain(
      '| `crane` | `{ reach }` | The crane. |  |\n| `crane` › `reach` | text | How far \\| it reaches, such as `{ far: 1 }`. |  |\n',
    );
  });

  it('gives a part of the file that no mark names a section of its own, also in the contents', () => {
    const page = reference(
      file({
        tugs: z
          .record(text, z.strictObject({ power: z.number().describe('Its power.') }))
          .optional()
          .describe('Tugs by name.'),
      }),
      template,
    );
    expect(page).toContain('[berths](#berths) | [tugs](#tugs) | [end](#end)');
    expect(page).toContain(
      '## Tugs\n\n| key | written as | meaning | default |\n|---|---|---|---|\n| `power` | number | Its power. | required |\n\n## End',
    );
  });

  it('gives one of several forms that no mark names a section too', () => {
    const entry = z.union([
      z.strictObject({ sail: text.describe('A sail.') }),
      z.strictObject({ wait: text.describe('A wait.') }),
    ]);
    const page = reference(
      file({ trip: z.array(entry).describe('Stages.') }),
      `${template}\n## Trip\n\n<!-- keys: trip with sail -->\n`,
    );
    expect(page).toContain(
      '## Trip: wait\n\n| key | written as | meaning | default |\n|---|---|---|---|\n| `wait` | text | A wait. | required |\n',
    );
    expect(page).toMatch(/## Trip\n\n.*\n.*\n\| `sail` \| text \| A sail. \| required \|\n$/);
  });

  it('refuses a mark that names nothing', () => {
    expect(() => reference(file(), '<!-- keys: berths.*.crane.hook -->')).toThrow(
      'the template names keys that the schema does not have: <!-- keys: berths.*.crane.hook -->',
    );
  });
});
