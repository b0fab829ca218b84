import type { Held, Holder } from '../../flow/gridlock/holder.js';
import type { Standstill } from '../../flow/gridlock/stuck.js';
import type { Whereabouts } from '../../flow/gridlock/whereabouts.js';
import { wantedBy, whereabouts } from '../answer/gridlock.js';
import { capital, exact } from '../format.js';

/** So many holders of one thing are named, and so many things are told of; the results hold all. */
const MOST_NAMED = 3,
  MOST_TOLD = 3;

/**
 * Who has the carriers, people and parts that a ring lacks, as sentences: `All 3 of dolly are held, by unit
 * 14 at frame bench, ..`. Who stands in the way of whom the ring tells itself.
 * @param nameOf what the planner calls a unit
 */
export function whoHolds(
  { ring, held }: Standstill,
  unitRoute: string,
  nameOf: (each: Whereabouts) => string,
): string {
  const inRing = new Set(ring.map(keyOf));
  const called = (each: Holder): string => {
    const { route, how, lacks } = each,
      waits = lacks.map((lack) => wantedBy(lack, each)).join(' and for ');
    const does = inRing.has(keyOf(each))
      ? ''
      : how === 'works'
        ? ' (at work)'
        : waits === ''
          ? ' (can go on)'
          : ` (waits for ${waits})`;
    return `${route === unitRoute ? 'unit' : route} ${nameOf(each)} ${whereabouts(each)}${does}`;
  };
  return held
    .flatMap((each) => sentence(each, called) ?? [])
    .slice(0, MOST_TOLD)
    .map((text) => `. ${capital(text)}`)
    .join('');
}

const keyOf = ({ number, route, in: where, where: name }: Whereabouts): string =>
  JSON.stringify([number, route, where, name]);

function sentence(held: Held, called: (each: Holder) => string): string | null {
  const { kind, name, all, wanted, free, coming, by } = held,
    ahead = by.find(({ how }) => how === 'claims'),
    others = by.filter((each) => each !== ahead),
    names = listed(others.map(called)),
    first = ahead === undefined ? '' : `; ${called(ahead)} claims them first`;
  switch (kind) {
    case 'carrier': {
      // The ring names the holder of a single one.
      if (all === null || all < 2) return null;
      const kept = others.length,
        back = coming === 0 ? '' : `; ${isAre(coming)} on ${coming === 1 ? 'its' : 'their'} way back`;
      return `${kept === all ? `all ${exact(all)}` : `${exact(kept)} of the ${exact(all)}`} of ${name} ${
        kept === 1 ? 'is' : 'are'
      } held, by ${names}${back}${first}`;
    }
    case 'crew': {
      if (all === null) return null;
      const kept = others.map(
        (each) => `${exact(each.amount)} ${each.how === 'stays' ? 'stay with' : 'by'} ${called(each)}`,
      );
      return (
        `of the ${exact(all)} people of ${name} ${isAre(others.reduce((n, { amount }) => n + amount, 0))} ` +
        `held (${listed(kept)}), ${isAre(free)} free and ${isAre(wanted)} wanted${first}`
      );
    }
    case 'parts':
      return (
        `of ${name} ${isAre(free)} in stock and ${isAre(wanted)} wanted; ` +
        (others.length === 0 ? 'none is in the making' : `in the making: ${names}`) +
        first
      );
    case 'supply':
      return `of ${name} ${isAre(free)} left and ${isAre(wanted)} wanted${first}`;
    default:
      return null;
  }
}

const isAre = (n: number): string => `${exact(n)} ${n === 1 ? 'is' : 'are'}`;

/** `a`, `a and b`, `a, b, c and 5 more`. */
function listed(names: readonly string[]): string {
  const shown = names.slice(0, MOST_NAMED),
    rest = names.length - shown.length,
    last = rest > 0 ? `${exact(rest)} more` : shown.pop();
  return [...(shown.length > 0 ? [shown.join(', ')] : []), last ?? 'nobody'].join(' and ');
}
