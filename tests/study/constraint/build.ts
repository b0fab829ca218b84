import type { ThingKind } from '../../../src/scenario/reliefs/thing.js';

/** What a build is bound by, or what is added to one. `release`: the rate asked itself. */
export interface Thing {
  readonly kind: ThingKind | 'release';
  readonly name: string;
}

/** One more of something: a place, a person, a space .. */
export interface OneMore {
  readonly of: Thing;
  /** What is added, in words. */
  readonly what: string;
  /** The build with it. */
  readonly yaml: string;
}

/** A small scenario whose constraint is known by argument. */
export interface Build {
  /** What the build is bound by, in a word. */
  readonly bound: string;
  readonly yaml: string;
  /** What stops it; `release` where nothing does but the rate asked. */
  readonly culprit: Thing;
  /** Other names under which the same is right. */
  readonly accepted: readonly Thing[];
  /** One more of the culprit: brings clearly more. Empty for `release`. */
  readonly helps: readonly OneMore[];
  /** What helps as well, but less: an hour a day helps most builds. */
  readonly lesser: readonly OneMore[];
  /** One more of each decoy, however busy or full it is: brings nothing. */
  readonly decoys: readonly OneMore[];
}

export type Edit = readonly [of: Thing, what: string, from: string, to: string];

interface Variants {
  readonly helps: readonly Edit[];
  readonly lesser?: readonly Edit[];
  readonly decoys: readonly Edit[];
  readonly accepted?: readonly Thing[];
}

/** A build with its variants, each made by one edit of its text. */
export function build(
  bound: string,
  culprit: Thing,
  yaml: string,
  { helps, lesser = [], decoys, accepted = [] }: Variants,
): Build {
  const edited = ([of, what, from, to]: Edit): OneMore => ({ of, what, yaml: replaced(yaml, from, to) });
  return {
    bound,
    yaml,
    culprit,
    accepted,
    helps: helps.map(edited),
    lesser: lesser.map(edited),
    decoys: decoys.map(edited),
  };
}

/** The text with one part of it replaced; the part must stand in it once, so that no edit is lost. */
function replaced(text: string, from: string, to: string): string {
  const parts = text.split(from);
  if (parts.length !== 2)
    throw new RangeError(
      `edit of a build: expected ${JSON.stringify(from)} once, got it ${parts.length - 1} times`,
    );
  return parts.join(to);
}

export const station = (name: string): Thing => ({ kind: 'station', name });
export const crew = (name: string): Thing => ({ kind: 'crew', name });
export const team = (name: string): Thing => ({ kind: 'team', name });
export const carrier = (name: string): Thing => ({ kind: 'carrier', name });
export const lane = (name: string): Thing => ({ kind: 'lane', name });
export const room = (name: string): Thing => ({ kind: 'room', name });
export const feeder = (name: string): Thing => ({ kind: 'feeder', name });
export const supply = (name: string): Thing => ({ kind: 'supply', name });
export const hours = (name: string): Thing => ({ kind: 'hours', name });
export const step = (name: string): Thing => ({ kind: 'step', name });

/** An hour a day more on the calendar that all builds have but one. */
export const HOUR: Edit = [hours('days'), 'an hour a day', '07:00-15:00', '07:00-16:00'];
