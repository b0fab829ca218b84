import { z } from 'zod';
import { EVENT_KINDS, type EventKind, UNIT } from '../log/event.js';
import { referredBy } from '../log/references.js';
import type { LoggedEvent } from '../log/row-events.js';
import { TimeReader } from '../table/times.js';
import { Unreadable } from '../unreadable.js';
import { ITSELF, keyOf, type Ocel, type OcelEvent, type OcelObject } from './types.js';

const value = z.union([z.string(), z.number(), z.boolean()]),
  type = z.object({
    name: z.string(),
    attributes: z.array(z.object({ name: z.string(), type: z.string() })),
  }),
  relationships = z.array(z.object({ objectId: z.string(), qualifier: z.string() })).optional();
/** The shape of the standard's schema; numbers and booleans, which it has no word for, are read too. */
const SHAPE = z.object({
  eventTypes: z.array(type),
  objectTypes: z.array(type),
  events: z.array(
    z.object({
      id: z.string(),
      type: z.string(),
      time: z.string(),
      attributes: z.array(z.object({ name: z.string(), value })).optional(),
      relationships,
    }),
  ),
  objects: z.array(
    z.object({
      id: z.string(),
      type: z.string(),
      attributes: z.array(z.object({ name: z.string(), value, time: z.string() })).optional(),
      relationships,
    }),
  ),
});

/** @throws Unreadable where the text is no JSON or has another shape */
export function ocelIn(text: string): Ocel {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch (error) {
    throw new Unreadable(
      `expected JSON, got ${(error as Error).message}`,
      'a floor log is CSV or OCEL 2.0 (JSON)',
    );
  }
  const read = SHAPE.safeParse(data);
  if (read.success) return read.data;
  const [first] = read.error.issues;
  throw new Unreadable(
    `expected a log in the form of OCEL 2.0, got one with a fault at ${first?.path.join('.') ?? ''}: ` +
      (first?.message ?? ''),
    'docs/floor-log.md shows what is read',
  );
}

/** An event of the log that is none of the floor: why, and what of it. */
export interface NotRead {
  readonly kind: 'unknown event' | 'no object' | 'unreadable time';
  /** Position among the events, from 1. */
  readonly position: number;
  readonly example: string;
}

/**
 * The events of a log in the form of OCEL 2.0; `line` is the position among them, from 1. What an event
 * happens to is the object that it qualifies as `itself`, or else its first unit. Options that are attributes
 * of the object alone are those of its entry.
 */
export function* eventsOfOcel({ events, objects }: Ocel): Generator<LoggedEvent | NotRead> {
  const known = new Map(objects.map((object) => [object.id, object])),
    times = new TimeReader();
  for (const [e, event] of events.entries()) {
    const position = e + 1,
      kind = KINDS.get(event.type),
      time = times.read(event.time);
    if (kind === undefined) {
      yield { kind: 'unknown event', position, example: event.type };
      continue;
    }
    if (time === undefined || time.isLocal) {
      yield { kind: 'unreadable time', position, example: event.time };
      continue;
    }
    const own = ownOf(event, known);
    if (own === undefined) {
      yield { kind: 'no object', position, example: event.id };
      continue;
    }
    const all = event.relationships ?? [],
      at = all.findIndex((each) => each.objectId === own.id && each.qualifier === own.qualifier),
      { object, type } = named(own.id, known),
      attributes = event.attributes ?? [],
      column = (name: string): string => String(attributes.find((each) => each.name === name)?.value ?? '');
    const values = attributes.flatMap(({ name, value }) => {
      const key = keyOf(name);
      return key === undefined ? [] : [[key, String(value)] as const];
    });
    yield {
      at: time.minutes,
      kind,
      object,
      type,
      step: column('step'),
      station: column('station'),
      others: all.filter((_, i) => i !== at).map(({ objectId }) => objectId),
      values: Object.fromEntries(kind === 'enter' && values.length === 0 ? optionsOf(own.id, known) : values),
      line: position,
    };
  }
}

const KINDS: ReadonlyMap<string, EventKind> = new Map(EVENT_KINDS.map((kind) => [kind, kind]));

function ownOf(
  { relationships = [] }: OcelEvent,
  known: ReadonlyMap<string, OcelObject>,
): { readonly id: string; readonly qualifier: string } | undefined {
  const own =
    relationships.find(({ qualifier }) => qualifier === ITSELF) ??
    relationships.find(({ objectId }) => known.get(objectId)?.type === UNIT);
  return own === undefined ? undefined : { id: own.objectId, qualifier: own.qualifier };
}

/** By its reference, or an id of another's making with the type that is declared. */
function named(id: string, known: ReadonlyMap<string, OcelObject>): { object: string; type: string } {
  const said = referredBy(id),
    type = known.get(id)?.type ?? said.type;
  return said.type === type ? said : { object: id, type };
}

function optionsOf(id: string, known: ReadonlyMap<string, OcelObject>): (readonly [string, string])[] {
  return (known.get(id)?.attributes ?? []).map(({ name, value }) => [name, String(value)]);
}
