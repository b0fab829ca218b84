import { TimeReader } from '../table/times.js';
import type { Ocel, OcelRelationship, OcelType } from './types.js';

/** So many faults are told. */
const MOST = 20;

/** Types of values (arXiv:2403.01975, section 8). */
const VALUE_TYPES: readonly string[] = ['string', 'time', 'integer', 'float', 'boolean'];

/**
 * What the standard demands and its schema does not say (arXiv:2403.01975, definition 2): names of types and
 * ids are there once; types and their attributes are declared; relationships lead to objects of the log; times
 * are ISO 8601 with an offset. Each fault is a phrase with its path.
 */
export function ocelFaults({ eventTypes, objectTypes, events, objects }: Ocel): string[] {
  const faults: string[] = [],
    times = new TimeReader();
  const add = (path: string, expected: string, got: string): void => {
    if (faults.length < MOST) faults.push(`${path}: expected ${expected}, got ${JSON.stringify(got)}`);
  };
  const unique = (list: readonly string[], path: string, key: string): Set<string> => {
    const seen = new Set<string>();
    list.forEach((name, i) => {
      if (seen.has(name)) add(`${path}[${i}].${key}`, 'each once', name);
      seen.add(name);
    });
    return seen;
  };
  const declared = (types: readonly OcelType[], path: string): Map<string, ReadonlySet<string>> => {
    unique(
      types.map(({ name }) => name),
      path,
      'name',
    );
    for (const [t, { attributes }] of types.entries())
      for (const [a, { type }] of attributes.entries())
        if (!VALUE_TYPES.includes(type))
          add(`${path}[${t}].attributes[${a}].type`, VALUE_TYPES.join(', '), type);
    return new Map(types.map(({ name, attributes }) => [name, new Set(attributes.map((each) => each.name))]));
  };
  const ofEvents = declared(eventTypes, 'eventTypes'),
    ofObjects = declared(objectTypes, 'objectTypes'),
    ids = unique(
      objects.map(({ id }) => id),
      'objects',
      'id',
    );
  unique(
    events.map(({ id }) => id),
    'events',
    'id',
  );
  const lead = (relationships: readonly OcelRelationship[] | undefined, path: string): void => {
    const pairs = new Set<string>();
    relationships?.forEach(({ objectId, qualifier }, r) => {
      if (!ids.has(objectId)) add(`${path}.relationships[${r}].objectId`, 'an object of the log', objectId);
      const pair = JSON.stringify([objectId, qualifier]);
      if (pairs.has(pair)) add(`${path}.relationships[${r}]`, 'each once', pair);
      pairs.add(pair);
    });
  };
  const isTime = (text: string): boolean => {
    const read = times.read(text);
    return read !== undefined && !read.isLocal;
  };
  events.forEach(({ type, time, attributes, relationships }, e) => {
    const path = `events[${e}]`,
      known = ofEvents.get(type);
    if (known === undefined) add(`${path}.type`, 'a declared type', type);
    attributes?.forEach(({ name }, a) => {
      if (known?.has(name) === false) add(`${path}.attributes[${a}].name`, 'a declared attribute', name);
    });
    if (!isTime(time)) add(`${path}.time`, 'an ISO 8601 time with an offset', time);
    lead(relationships, path);
  });
  objects.forEach(({ type, attributes, relationships }, o) => {
    const path = `objects[${o}]`,
      known = ofObjects.get(type);
    if (known === undefined) add(`${path}.type`, 'a declared type', type);
    attributes?.forEach(({ name, time }, a) => {
      if (known?.has(name) === false) add(`${path}.attributes[${a}].name`, 'a declared attribute', name);
      if (!isTime(time)) add(`${path}.attributes[${a}].time`, 'an ISO 8601 time with an offset', time);
    });
    lead(relationships, path);
  });
  return faults;
}
