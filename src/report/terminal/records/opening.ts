import type { FloorAt } from '../../../study/validate/start/floor-at.js';

/** JSON is YAML too: no name can be taken for a number or a mark. */
const quoted = (text: string): string => JSON.stringify(text);

/**
 * A part of a scenario with the units that stand on the floor, for its `include`.
 * @param nameOf what the scenario calls a step
 */
export function openingPart(
  { opening: { placed }, date, log: { told }, notes }: FloorAt,
  log: string,
  nameOf: (step: number) => string,
): string {
  const rows = placed.map(({ unit, step, options }) => {
    const chosen = Object.entries(options).map(([name, value]) => `${quoted(name)}: ${quoted(value)}`),
      more = chosen.length === 0 ? '' : `, options: { ${chosen.join(', ')} }`;
    return `    - { at: ${quoted(nameOf(step))}, build: ${quoted(unit)}${more} }`;
  });
  return [
    `# Where the floor stood on ${date}, from ${log}.`,
    '# Take it in with `include`; the programme starts on that day.',
    ...[...told, ...notes].map((note) => `# ${note}`),
    'programme:',
    rows.length === 0 ? '  opening: []' : '  opening:',
    ...rows,
    '',
  ].join('\n');
}
