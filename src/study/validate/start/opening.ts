import type { Inside } from '../seen/inside.js';
import { doneOf, type Earlier } from './done.js';
import { type Histories, type Inspected, type Item, OpenItems } from './open-items.js';
import { Room } from './room.js';
import { Route } from './route.js';

/** A unit of the opening: the step that it is about to begin, by id of the model. */
export interface Placed {
  readonly unit: string;
  readonly step: number;
  /** Options that the scenario has, with values that it has. */
  readonly options: Readonly<Record<string, string>>;
  readonly items: readonly Item[];
  /** The inspection that sent it back and that it has not come to again; -1. */
  readonly sentBy: number;
  /** Minutes of its step that are done already; 0: it begins. */
  readonly done: number;
  /** In work there, or on the road: what was done of it is done again. */
  readonly again: boolean;
}

export interface Opening {
  /** The farthest along the route first, as the engine numbers them. */
  readonly placed: readonly Placed[];
  /** What the log cannot tell, or the scenario cannot have: plain sentences. */
  readonly notes: readonly string[];
}

/** What is known of the floor at a moment, minutes since 1970-01-01T00:00Z. */
export interface Known {
  readonly inside: Inside;
  readonly histories: Histories;
  readonly at: number;
  /** Whether the log tells of finds. */
  readonly tells: boolean;
}

/**
 * Where the floor stands, as the opening of a scenario: each unit at the step that it is about to begin, with
 * its open items, and what is done of its step. One that is on the road, or for which there is no room where
 * it is, stands at a step near by.
 */
export function openingOf({ inside, histories, at, tells }: Known, earlier: Earlier): Opening {
  const { model } = earlier,
    route = new Route(model),
    open = new OpenItems(model, route.ids, tells),
    wanted: Placed[] = [],
    out: string[] = [],
    unknown: string[] = [],
    taken: string[] = [];
  for (const unit of inside.units.values()) {
    const logged = route.optionsOf(unit),
      inspected = open.of(histories.units.get(unit.unit) ?? [], logged),
      step = route.stepOf(unit, logged, inspected, at);
    if (step === undefined) {
      out.push(unit.unit);
      continue;
    }
    const needed = route.needed(step, logged),
      options = { ...logged, ...needed },
      own = route.ids.get(unit.step),
      isAtWork = unit.phase === 'started' && step === own,
      done = isAtWork
        ? doneOf(earlier, step, { since: unit.since, mendedSince: inspected.mendedSince, at })
        : 0,
      again = done === 0 && (unit.phase === 'started' || (unit.phase === 'riding' && step === own));
    if (Object.keys(needed).length > 0) taken.push(unit.unit);
    if (Object.keys(options).length < model.options.length) unknown.push(unit.unit);
    // Come to the inspection, it is looked at like any other.
    const { items, sentBy } = inspected;
    wanted.push({
      unit: unit.unit,
      step,
      options,
      items,
      sentBy: sentBy === step ? -1 : sentBy,
      done,
      again,
    });
  }
  // As the engine places them: the farthest first.
  wanted.sort((a, b) => b.step - a.step);
  const room = new Room(model),
    placed: Placed[] = [],
    full: Placed[] = [],
    moved: string[] = [],
    left: string[] = [];
  for (const unit of wanted) (room.take(unit.step, unit.sentBy) ? placed : full).push(unit);
  for (const unit of full) {
    let step: number | undefined;
    for (const other of route.others(unit.step, unit.options, NEW))
      if (room.take(other, NEW.sentBy)) {
        step = other;
        break;
      }
    if (step === undefined) left.push(unit.unit);
    else {
      moved.push(unit.unit);
      placed.push({ ...unit, items: NEW.items, sentBy: NEW.sentBy, step, done: 0, again: false });
    }
  }
  placed.sort((a, b) => b.step - a.step);
  const again = placed.filter((unit) => unit.again).map(({ unit }) => unit),
    hidden = placed.filter(({ items }) => items.some(({ find }) => find < 0)).map(({ unit }) => unit);
  return {
    placed,
    notes: [
      told(again, 'in work or on the road', 'begins its step again', 'begin their steps again'),
      told(
        moved,
        'for which there is no room where it is',
        'stands at the nearest step',
        'stand at the nearest steps',
      ),
      told(unknown, 'with options that the log does not tell', 'has them drawn', 'have them drawn'),
      told(
        taken,
        'of whose options only the step tells',
        'has the first that it can',
        'have the first that they can',
      ),
      told(hidden, 'that may have defects nobody has found', 'has them by chance', 'have them by chance'),
      told(out, 'done with the last step, or at a step unknown', 'is left out', 'are left out'),
      told(left, 'without room anywhere', 'is left out', 'are left out'),
    ].filter((note) => note !== ''),
  };
}

/** Nothing is open on it. */
const NEW: Inspected = { items: [], sentBy: -1, sentTo: -1, mendedSince: NaN };

const SHOWN = 5;

function told(units: readonly string[], which: string, one: string, many: string): string {
  if (units.length === 0) return '';
  const names = units.slice(0, SHOWN).join(', ') + (units.length > SHOWN ? ', ..' : '');
  return units.length === 1
    ? `1 unit ${which} ${one}: ${names}.`
    : `${units.length} units ${which} ${many}: ${names}.`;
}
