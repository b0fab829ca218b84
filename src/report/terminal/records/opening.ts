import type { FloorAt } from '../../../study/validate/start/floor-at.js';
import type { StandingOrder } from '../../../study/validate/start/standing-orders.js';

/** JSON is YAML too: no name can be taken for a number or a mark. */
const quoted = (text: string): string => JSON.stringify(text);

/** A part of a scenario with the units that stand on the floor, for its `include`. */
export function openingPart(
  { said, log: { told }, notes, minute, stocked }: FloorAt,
  log: string,
  standing: readonly StandingOrder[],
): string {
  const map = (pairs: readonly (readonly [string, string | undefined])[]): string =>
    pairs.flatMap(([name, value]) => (value === undefined ? [] : [`${name}: ${quoted(value)}`])).join(', ');
  const rows = standing.flatMap(({ build, at, options, doneMin, open = [], sentBackBy }) => {
    const chosen = Object.entries(options).map(([name, value]) => `${quoted(name)}: ${quoted(value)}`),
      more = chosen.length === 0 ? '' : `, options: { ${chosen.join(', ')} }`,
      unit = map([
        ['at', at],
        ['build', build],
        ['done', doneMin === undefined ? undefined : `${doneMin} min`],
        ['sent back by', sentBackBy],
      ]);
    if (open.length === 0) return [`    - { ${unit}${more} }`];
    const items = open.map(
      ({ defect, madeAt, foundAt, chance }) =>
        `        { ${map([
          ['defect', defect],
          ['made at', madeAt],
          ['found at', foundAt],
        ])}${chance < 1 ? `, chance: ${chance}` : ''} },`,
    );
    return [`    - { ${unit}${more}, open: [`, ...items, '      ] }'];
  });
  const stocks = [...Object.entries(stocked.feeders), ...Object.entries(stocked.supplies)].flatMap(
    ([name, thing]) => ('kind' in thing && thing.kind === 'own' ? [] : [`${name} ${thing.atStart}`]),
  );
  return [
    `# Where the floor stood on ${said}, from ${log}.`,
    '# Take it in with `include`; the programme starts on that day.',
    ...[...told, ...notes].map((note) => `# ${note}`),
    ...(stocks.length === 0 ? [] : [`# In stock then, to be set as \`at start\`: ${stocks.join(', ')}.`]),
    'programme:',
    ...(minute === 0 ? [] : [`  start time: ${quoted(said.slice(-5))}`]),
    rows.length === 0 ? '  opening: []' : '  opening:',
    ...rows,
    '',
  ].join('\n');
}
