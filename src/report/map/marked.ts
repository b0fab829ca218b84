import type { Thing } from '../../scenario/reliefs/thing.js';
import type { BufferResults } from '../../study/buffers/results.js';
import type { CompareResults } from '../../study/compare/results.js';
import type { FactorsResults } from '../../study/factors/results.js';
import { count, exact, number, signed } from '../../study/format.js';
import { each } from '../../study/planners-unit.js';
import type { ReachResults } from '../../study/reach/results.js';
import { isPriced, madeOnTheWay, moneyText } from '../../study/reach/sentence.js';
import type { ReliefsResults } from '../../study/reliefs/results.js';
import type { Changed } from '../../study/route/changed.js';
import { figure } from '../first/figures.js';
import { inPlanners, lastOf, nowOf, stepVerdict } from '../first/reach/told.js';
import { type Marked, NO_FIGURES, type Seen } from './seen.js';

/** More places are not told apart by looking. */
const MOST = 5;

/** Where the changes stand that surely bring most, by fresh replications. */
export function markedReliefs({ reliefs, base, rateUnit }: ReliefsResults): Seen {
  const a = each(rateUnit),
    best = reliefs.filter(({ isFresh, gain: { low } }) => isFresh && low !== null && low > 0).slice(0, MOST);
  return {
    ...NO_FIGURES,
    head:
      `As it is it ships ${figure(base.throughput)} ${a}; ` +
      (best.length === 0
        ? 'no change that was tried surely brings more'
        : 'in broken frames: changes that bring most, each by itself'),
    marks: best.map(({ of, rank, text, gain }) => ({
      thing: of,
      text: `${exact(rank)}: ${text}, ${signed(gain)} ${a}`,
    })),
  };
}

/** How many spaces were chosen for each spot, or tried last. */
export function markedBuffers({ spots, chosen, present, answer, unit }: BufferResults): Seen {
  const isFound = answer.verdict !== 'not reached' && answer.verdict !== 'out of reach',
    word = isFound ? 'chosen' : 'tried';
  return {
    ...NO_FIGURES,
    head:
      `In broken frames: spaces ${word}, ${exact(chosen.total)} in all (today ${exact(present.total)}), ` +
      `which ship ${figure(chosen.rate)} ${unit}${isFound ? '' : ', not what was asked'}; ` +
      'drawn are those of today',
    marks: spots.map(({ kind, name, chosen: many, present: now }) => ({
      thing: { kind: 'room', name: name.replace(/: (arrival )?bank$/, ''), site: '' },
      text:
        `${kind === 'buffer' ? '' : `${kind}: `}${count(many, 'space')} ${word}, ` +
        (many === now ? 'as today' : `today ${number(now)}`),
    })),
  };
}

/** What is bought on the way, step by step, where it stands. */
export function markedReach(results: ReachResults): Seen {
  const { steps, possible, currency, rateUnit } = results,
    a = each(rateUnit),
    rate = (step: (typeof steps)[number]): string => figure(inPlanners(step.throughput, results)),
    touched = new Map(possible.map(({ name, things }) => [name, things])),
    many = madeOnTheWay(results)
      .filter(({ name }) => !isMarked(touched.get(name)))
      .map(({ name }) => name);
  return {
    ...NO_FIGURES,
    head:
      `As it is it ships ${rate(nowOf(results))} ${a}; ` +
      (steps.length < 2
        ? 'nothing has to be changed'
        : 'in broken frames: what is changed, step by step, after which it ships ' +
          `${rate(lastOf(results))} ${a}` +
          (many.length === 0 ? '' : `; not marked: ${many.join(', ')}`)),
    marks: steps.flatMap((step, i): Marked[] => {
      const { made, price, gain } = step,
        things = touched.get(made?.name ?? '');
      if (made === null || gain === null || !isMarked(things)) return [];
      const text =
        `step ${exact(i)}: ${made.times === 1 ? '' : `${exact(made.times)} × `}${made.name}` +
        (things.length > 1 ? ' (and elsewhere)' : '') +
        (isPriced(results) && price !== null ? `, ${moneyText(price, currency)}` : '') +
        (stepVerdict(step) === 'no gain seen'
          ? ', no gain seen'
          : `, ${signed(inPlanners(gain, results))} ${a}`);
      return things.map((thing) => ({ thing, text }));
    }),
  };
}

/** What can be pointed at, and is not half of the route. */
const isMarked = (things: readonly Thing[] | undefined): things is readonly Thing[] =>
  things !== undefined && things.length > 0 && things.length <= MOST_THINGS;

/** What each what-if changes, by name, and what it brings. */
export const markedWhatIfs = (
  { whatIfs, base, rateUnit }: CompareResults,
  changed: ReadonlyMap<string, Changed>,
): Seen =>
  markedChanges(
    base,
    rateUnit,
    'each what-if',
    whatIfs.map(({ name, compared }) => ({
      name,
      changed: changed.get(name),
      shipped: compared.find(({ measure }) => measure === 'throughput'),
    })),
  );

/** What each factor changes, and what its largest effect by itself is. */
export const markedFactors = (
  { effects, base, factors, rateUnit }: FactorsResults,
  changed: readonly Changed[],
): Seen =>
  markedChanges(
    base,
    rateUnit,
    'each factor',
    factors.map(({ name }, f) => {
      const [largest] = effects
        .filter(({ kind, factors: [only] }) => kind === 'alone' && only === f)
        .flatMap(({ measures, name: effect }) =>
          measures.filter(({ measure }) => measure === 'throughput').map((one) => ({ ...one, effect })),
        )
        .sort((x, y) => Math.abs(y.difference.mean) - Math.abs(x.difference.mean));
      return { name: largest?.effect ?? name, changed: changed[f], shipped: largest };
    }),
  );

type Brought = Pick<
  CompareResults['whatIfs'][number]['compared'][number],
  'difference' | 'words' | 'verdict'
>;

/** Things that changes change, with what these bring; of what changes nearly everything the name alone. */
function markedChanges(
  { values }: Pick<CompareResults['base'], 'values'>,
  rateUnit: CompareResults['rateUnit'],
  what: string,
  all: readonly {
    readonly name: string;
    readonly changed: Changed | undefined;
    readonly shipped: Brought | undefined;
  }[],
): Seen {
  const a = each(rateUnit),
    now = values.find(({ measure }) => measure === 'throughput'),
    isMany = ({ changed }: (typeof all)[number]): boolean => (changed?.things.length ?? 0) > MOST_THINGS,
    many = all.filter(isMany).map(({ name }) => name);
  return {
    ...NO_FIGURES,
    head:
      (now === undefined ? '' : `As it is it ships ${figure(now.value)} ${a}; `) +
      `in broken frames: what ${what} changes` +
      (many.length === 0 ? '' : `, but for what changes too much to be marked (${many.join(', ')})`),
    marks: all
      .filter((one) => !isMany(one))
      .flatMap(({ name, changed, shipped }): Marked[] => {
        const { things = [], isMore = false } = changed ?? {},
          also = things.length > 1 || isMore ? ' (and elsewhere)' : '';
        return things.map((thing: Thing) => ({
          thing,
          text: `${name}${also}${shipped === undefined ? '' : `: ${brings(shipped, a)}`}`,
        }));
      }),
  };
}

/** More than these would mark the whole route. */
const MOST_THINGS = 12;

const brings = ({ difference, words, verdict }: Brought, a: string): string =>
  verdict.endsWith('better') || verdict.endsWith('worse') ? `${signed(difference)} ${a}` : words;
