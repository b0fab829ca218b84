/**
 * A log of events in the form of the open standard OCEL 2.0, in JSON (Berti et al. 2024, arXiv:2403.01975,
 * section 8; schema: ocel-standard.org/2.0/ocel20-schema-json.json). Values are text, as that schema demands.
 */
export interface Ocel {
  readonly eventTypes: readonly OcelType[];
  readonly objectTypes: readonly OcelType[];
  readonly events: readonly OcelEvent[];
  readonly objects: readonly OcelObject[];
}
export interface OcelType {
  readonly name: string;
  readonly attributes: readonly { readonly name: string; readonly type: string }[];
}
export interface OcelEvent {
  readonly id: string;
  readonly type: string;
  /** ISO 8601 with offset. */
  readonly time: string;
  readonly attributes?: readonly OcelValue[] | undefined;
  readonly relationships?: readonly OcelRelationship[] | undefined;
}
export interface OcelObject {
  readonly id: string;
  readonly type: string;
  /** Each holds from its time on. */
  readonly attributes?: readonly (OcelValue & { readonly time: string })[] | undefined;
  readonly relationships?: readonly OcelRelationship[] | undefined;
}
export interface OcelValue {
  readonly name: string;
  readonly value: string | number | boolean;
}
export interface OcelRelationship {
  readonly objectId: string;
  readonly qualifier: string;
}

/** Qualifies the object that an event happens to; the others are with it. */
export const ITSELF = 'itself';
/** Of what has no type in the floor log. */
export const UNTYPED = 'other';

/** Attributes of events that are columns of the floor log; a value of such a name has a word ahead of it. */
const COLUMNS: readonly string[] = ['step', 'station'];
const AHEAD = 'value ';

export const attributeOf = (key: string): string =>
  COLUMNS.includes(key) || key.startsWith(AHEAD) ? AHEAD + key : key;
/** Undefined: it is a column. */
export const keyOf = (attribute: string): string | undefined =>
  COLUMNS.includes(attribute)
    ? undefined
    : attribute.startsWith(AHEAD)
      ? attribute.slice(AHEAD.length)
      : attribute;
