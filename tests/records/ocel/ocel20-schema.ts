/**
 * The JSON schema of OCEL 2.0, draft 07, as published at
 * https://www.ocel-standard.org/2.0/ocel20-schema-json.json (copy of 2026-08-06), written with its repeats
 * named. The standard: Berti et al. 2024, arXiv:2403.01975.
 */
const text = { type: 'string' },
  time = { type: 'string', format: 'date-time' },
  list = (properties: object, required: readonly string[]) => ({
    type: 'array',
    items: { type: 'object', properties, required },
  });
const types = list({ name: text, attributes: list({ name: text, type: text }, ['name', 'type']) }, [
    'name',
    'attributes',
  ]),
  relationships = list({ objectId: text, qualifier: text }, ['objectId', 'qualifier']);

export const OCEL_SCHEMA = {
  $schema: 'http://json-schema.org/draft-07/schema#',
  type: 'object',
  properties: {
    eventTypes: types,
    objectTypes: types,
    events: list(
      {
        id: text,
        type: text,
        time,
        attributes: list({ name: text, value: text }, ['name', 'value']),
        relationships,
      },
      ['id', 'type', 'time'],
    ),
    objects: list(
      {
        id: text,
        type: text,
        relationships,
        attributes: list({ name: text, value: text, time }, ['name', 'value', 'time']),
      },
      ['id', 'type'],
    ),
  },
  required: ['eventTypes', 'objectTypes', 'events', 'objects'],
};
