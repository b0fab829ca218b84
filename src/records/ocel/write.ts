import type { FloorEvent } from '../log/event.js';
import { referenceTo, referredBy } from '../log/references.js';
import { isoTime } from '../log/write.js';
import {
  attributeOf,
  ITSELF,
  type Ocel,
  type OcelEvent,
  type OcelObject,
  type OcelRelationship,
  type OcelType,
  UNTYPED,
} from './types.js';

/**
 * Events of a floor log in the form of OCEL 2.0. Units, sub-assemblies, carriers and trucks are objects, with
 * the reference of the floor log for an id; options, the values of `enter`, are attributes of the object from
 * then on, and of the event. What joins an object is related to it as `part`.
 */
export function ocelOf(events: Iterable<FloorEvent>): Ocel {
  const objects = new Objects(),
    eventTypes = new Types(),
    written: OcelEvent[] = [];
  for (const event of events) {
    const { at, kind, object, type, step, station, others, values } = event,
      time = isoTime(at, 0),
      own = objects.of(referenceTo(type, object)),
      attributes = [
        ...(step === '' ? [] : [{ name: 'step', value: step }]),
        ...(station === '' ? [] : [{ name: 'station', value: station }]),
        ...Object.entries(values).map(([key, value]) => ({ name: attributeOf(key), value })),
      ],
      relationships: OcelRelationship[] = [{ objectId: own.id, qualifier: ITSELF }];
    for (const { name } of attributes) eventTypes.declare(kind, name);
    eventTypes.declare(kind);
    if (kind === 'enter')
      for (const [name, value] of Object.entries(values)) objects.sets(own, { name, value, time });
    for (const other of others) {
      const { id, type: its } = objects.of(other);
      relate(relationships, id, qualifierOf(kind, its));
      if (kind === 'join') relate(own.relationships, id, 'part');
    }
    written.push({ id: `e${written.length + 1}`, type: kind, time, attributes, relationships });
  }
  return {
    eventTypes: eventTypes.list(),
    objectTypes: objects.types.list(),
    events: written,
    objects: objects.list(),
  };
}

const qualifierOf = (kind: FloorEvent['kind'], type: string): string =>
  type === 'truck' || type === 'carrier' ? type : kind === 'join' ? 'part' : 'with';

/** The same object is named once more with a number: no two relationships are the same. */
function relate(relationships: OcelRelationship[], objectId: string, qualifier: string): void {
  const before = relationships.filter(
    (each) => each.objectId === objectId && each.qualifier !== ITSELF,
  ).length;
  relationships.push({ objectId, qualifier: before === 0 ? qualifier : `${qualifier} ${before + 1}` });
}

type Attributes = { name: string; value: string; time: string }[];
type Written = OcelObject & { readonly attributes: Attributes; readonly relationships: OcelRelationship[] };

class Objects {
  readonly types = new Types();
  private readonly known = new Map<string, Written>();

  of(reference: string): Written {
    const known = this.known.get(reference);
    if (known !== undefined) return known;
    const type = reference.includes(':') ? referredBy(reference).type : UNTYPED,
      made: Written = { id: reference, type, attributes: [], relationships: [] };
    this.types.declare(type);
    this.known.set(reference, made);
    return made;
  }

  sets({ type, attributes }: Written, attribute: Attributes[number]): void {
    this.types.declare(type, attribute.name);
    attributes.push(attribute);
  }

  list(): readonly OcelObject[] {
    return [...this.known.values()];
  }
}

/** Types in the order in which they come up, with their attributes. */
class Types {
  private readonly known = new Map<string, Set<string>>();

  declare(type: string, attribute?: string): void {
    const attributes = this.known.get(type) ?? new Set();
    this.known.set(type, attributes);
    if (attribute !== undefined) attributes.add(attribute);
  }

  list(): OcelType[] {
    return Array.from(this.known, ([name, attributes]) => ({
      name,
      attributes: Array.from(attributes, (attribute) => ({ name: attribute, type: 'string' })),
    }));
  }
}
