import { exact, number } from '../../../study/format.js';
import type { JourneyActivity } from '../../../study/programme/activities.js';
import type { Journey } from '../../../study/programme/journey.js';
import type { Results } from '../../../study/simulate/results.js';
import { axisOf, drawing } from '../../drawing.js';
import { paint } from '../../hatch.js';
import { DARK_EDGE, type Fill, INK, MUTED, PALETTE, STATE_FILLS } from '../../style.js';
import { BOX_LEGEND, type Chart } from '../chart.js';
import { filledBars } from '../datasets.js';
import { foremost } from '../foremost.js';
import { dayAxis, momentOf } from '../over-time/days.js';
import { heading, rowChart, rowHeight, rowsBySite } from '../row-chart.js';

/** What is told apart in the picture, in the order of its key. */
const KINDS: readonly {
  readonly name: string;
  readonly fill: Fill;
  readonly of: readonly JourneyActivity[];
}[] = [
  { name: 'work', fill: STATE_FILLS['working'], of: ['work'] },
  {
    name: 'repair',
    fill: { colour: PALETTE.blue, hatch: 'crossed', hatchColour: '#ffffff', edge: PALETTE.blue },
    of: ['repair'],
  },
  { name: 'changeover', fill: STATE_FILLS['changeover'], of: ['changeover'] },
  { name: 'unattended', fill: STATE_FILLS['unattended'], of: ['settling', 'process'] },
  {
    name: 'loading, driving, unloading',
    fill: { colour: '#007a59', hatch: 'plain', hatchColour: '#007a59', edge: '#007a59' },
    of: ['loading', 'driving', 'unloading'],
  },
  {
    name: 'waiting for a place',
    fill: { colour: '#ffffff', hatch: 'rising', hatchColour: '#8a8a8a', edge: MUTED },
    of: ['waiting for a place'],
  },
  { name: 'no room ahead', fill: STATE_FILLS['blocked'], of: ['no room ahead'] },
  { name: 'short of crew', fill: STATE_FILLS['short of crew'], of: ['short of crew'] },
  { name: 'short of parts', fill: STATE_FILLS['short of parts'], of: ['short of parts'] },
  { name: 'short of carrier', fill: STATE_FILLS['short of carrier'], of: ['short of carrier'] },
  { name: 'short of equipment', fill: STATE_FILLS['short of equipment'], of: ['short of equipment'] },
  {
    name: 'gathering a lot',
    fill: { colour: '#ffffff', hatch: 'dots', hatchColour: DARK_EDGE, edge: DARK_EDGE },
    of: ['gathering a lot'],
  },
  {
    name: 'waiting for truck or dock',
    fill: { colour: '#ffffff', hatch: 'upright', hatchColour: '#007a59', edge: '#007a59' },
    of: ['waiting for a truck', 'waiting for a dock', 'waiting in the truck'],
  },
  { name: 'down', fill: STATE_FILLS['down'], of: ['down'] },
  { name: 'off shift', fill: STATE_FILLS['off shift'], of: ['off shift'] },
];

/**
 * One unit's way in one replication, from its entry to its shipping: a strip for the whole of it, and one a
 * step.
 */
export function journey(results: Results): Chart | null {
  const { journey: told } = results;
  if (told === null) return null;
  const { shown, note } = foremost(told.steps, ({ hours }) => hours, 'steps', 'that took longest');
  const rows = [
    { ...heading('whole way'), isDrawn: true },
    ...rowsBySite(shown.map((step) => ({ ...step, name: step.step }))),
  ];
  const rowOf = new Map(rows.map(({ item }, row) => [item?.step, row]));
  const seen = KINDS.filter(({ of }) => told.parts.some(({ what }) => of.includes(what)));
  const from = momentOf(told.entered),
    to = momentOf(told.parts.at(-1)?.to ?? told.entered);
  return rowChart({
    finding: finding(told),
    how:
      `Replication ${told.replication} of ${exact(results.replications)}, ` +
      `${spoken(told.entered)} to ${spoken(told.parts.at(-1)?.to ?? '')}: one build, no mean` +
      (told.chosen === 'by name' ? '' : '; the unit with the middle lead time') +
      `. Each step with the wait for it; active: not waiting.${note}`,
    above: 110,
    each: rowHeight(rows.length),
    rows,
    columns: [
      [['hours'], ({ hours }) => hours.toFixed(1)],
      [['active'], ({ activeHours }) => activeHours.toFixed(1)],
    ],
    values: dayAxis(from, to, 0),
    // For the key alone: the strips are drawn apart.
    datasets: seen.map(({ name, fill }) => filledBars(name, [], fill)),
    legend: BOX_LEGEND,
    plugins: [strips(told, seen, rowOf, rowHeight(rows.length) - 7)],
  });
}

/**
 * Every part at its time in the row of its step and in that of the whole way; at least a hair wide, so that
 * none is lost.
 */
function strips(
  told: Journey,
  seen: typeof KINDS,
  rowOf: ReadonlyMap<string | undefined, number>,
  height: number,
) {
  return drawing('strips', (context, live) => {
    const x = axisOf(live, 'x'),
      y = axisOf(live, 'y');
    const paints = seen.map(({ fill }) => paint(fill));
    context.lineWidth = 0.6;
    for (const { step, what, from, to } of told.parts) {
      const kind = seen.findIndex(({ of }) => of.includes(what)),
        left = x.getPixelForValue(momentOf(from)),
        width = Math.max(0.8, x.getPixelForValue(momentOf(to)) - left);
      context.fillStyle = paints[kind] ?? INK;
      context.strokeStyle = seen[kind]?.fill.edge ?? INK;
      for (const row of [0, rowOf.get(step) ?? 0]) {
        const top = y.getPixelForValue(row) - height / 2;
        context.fillRect(left, top, width, height);
        if (width > 2) context.strokeRect(left, top, width, height);
      }
    }
  });
}

/** `2027-03-01 06:00`. */
const spoken = (dateTime: string): string => dateTime.slice(0, 16).replace('T', ' ');

function finding({ build, leadDays, shipped, totals }: Journey): string {
  const [scale, unit] = leadDays < 2 ? [24, 'hours'] : [1, 'days'],
    said = (days: number): string => number(Number((days * scale).toPrecision(2)));
  const longest = totals.filter(({ what }) => what !== 'work').slice(0, 2),
    work = totals.find(({ what }) => what === 'work')?.days ?? 0;
  return (
    `Unit ${build} ${shipped === null ? 'is inside for' : 'takes'} ${said(leadDays)} ${unit}: ` +
    [...longest.map(({ what, days }) => `${said(days)} ${what}`), `${said(work)} work`].join(', ')
  );
}
