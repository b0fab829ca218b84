import { OWN_SHIFT } from '../../flow/model/crews.js';
import type { Model } from '../../flow/model/model.js';
import { CARRIER, CREW, EQUIPMENT } from '../../flow/model/resources.js';
import { at } from '../lookup/columns.js';
import { type ComparedPart, PARTS, type Rule, ruleOf, WORDS } from './columns.js';

/** Data that are the same: numbers, texts, lists and typed arrays of them, maps. */
export function same(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return Object.is(a, b);
  if (isList(a) && isList(b)) return a.length === b.length && range(a).every((i) => same(a[i], b[i]));
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => same((a as Columns)[key], (b as Columns)[key]))
  );
}

type List = ArrayLike<unknown>;
type Columns = Readonly<Record<string, unknown>>;

const isList = (value: object): value is List => Array.isArray(value) || ArrayBuffer.isView(value);
const range = ({ length }: List): number[] => Array.from({ length }, (_, i) => i);

/**
 * Why one model cannot become the next while a run goes on, in words; null if it can. What is cut at the date
 * (calendars, timetables) is not looked at.
 */
export function whyNot(before: Model, next: Model): string | null {
  const first = (differs: typeof namesDiffer): string | null => {
    for (const part of Object.keys(PARTS) as ComparedPart[]) {
      const reason = differs(part, before[part] as unknown as Columns, next[part] as unknown as Columns);
      if (reason !== null) return reason;
    }
    return null;
  };
  // Ids of draws stand in many columns, and rows go by names.
  return (
    first(namesDiffer) ??
    drawsDiffer(before, next) ??
    first(partDiffers) ??
    amountsDiffer(before, next) ??
    ordersDiffer(before, next)
  );
}

function namesDiffer(part: ComparedPart, before: Columns, next: Columns): string | null {
  const was = namesOf(before),
    is = namesOf(next);
  if (same(was, is)) return null;
  const odd = oddOne(was, is);
  return odd === undefined ? PARTS[part] : `${PARTS[part]} (${odd})`;
}

const namesOf = (part: Columns): readonly (string | undefined)[] =>
  isList(part) ? (part as unknown as string[]) : ((part['names'] as string[] | undefined) ?? []);

function partDiffers(part: ComparedPart, before: Columns, next: Columns): string | null {
  if (isList(before)) return same(before, next) ? null : PARTS[part];
  for (const [column, was] of Object.entries(before)) {
    const is = next[column],
      rule = ruleOf(part, column);
    if (rule === 'cut' || rule === 'calendar' || same(was, is)) continue;
    const row = isList(was as object) ? firstBroken(rule, was as List, is as List) : 0;
    if (row < 0) continue;
    const names = next['names'] as readonly (string | undefined)[] | undefined,
      name = (was as List).length === names?.length ? names[row] : undefined,
      what = (rule !== undefined && WORDS[column]) || PARTS[part];
    return name === undefined ? what : `${what} (${name})`;
  }
  return null;
}

/** The first row that may not be as it is; -1 if there is none. */
function firstBroken(rule: Rule | undefined, was: List, is: List): number {
  if (was.length !== is.length) return range(was).find((i) => !same(was[i], is[i])) ?? 0;
  return range(was).findIndex((i) => !same(was[i], is[i]) && !mayBecome(rule, Number(was[i]), Number(is[i])));
}

function mayBecome(rule: Rule | undefined, was: number, is: number): boolean {
  switch (rule) {
    case 'any':
      return true;
    case 'never less':
      return is >= was;
    case 'as many':
      // Passes: one is as none.
      return isSome(was) === isSome(is);
    default:
      return false;
  }
}

const isSome = (value: number): boolean => value !== 0 && value !== 1;

/**
 * People may leave unless teams of them wait for their own shift; carriers and equipment come and never go;
 * stocks begin as they do.
 */
function amountsDiffer({ resources: before }: Model, { resources: next, companions }: Model): string | null {
  for (const [r, name] of next.names.entries()) {
    if (companions.resource.includes(r) && hasLess(before.shifts[r], next.shifts[r]))
      return `fewer people in a shift for which a team waits (${name})`;
    const was = at(before.amount, r),
      is = at(next.amount, r);
    if (is === was) continue;
    switch (at(next.kind, r)) {
      case CREW:
        break;
      case CARRIER:
        if (is < was) return `fewer carriers (${name})`;
        break;
      case EQUIPMENT:
        if (is < was) return `fewer pieces of equipment (${name})`;
        break;
      default:
        return `another stock at the start (${name})`;
    }
  }
  const other = next.shifts.findIndex((shifts, r) => shifts?.handOver !== before.shifts[r]?.handOver);
  if (other >= 0) return `another hand-over (${at(next.names, other)})`;
  return null;
}

/** Where work waits for its own shift: whether a shift of the day has fewer people, or is no more. */
function hasLess(before: Shifts, next: Shifts): boolean {
  if (before?.handOver !== OWN_SHIFT) return false;
  return [...before.position].some(
    (p, k) => !next?.position.some((q, j) => q === p && at(next.people, j) >= at(before.people, k)),
  );
}

type Shifts = Model['resources']['shifts'][number] | undefined;

/** A supply that is ordered is not planned later, or the reverse. */
function ordersDiffer({ supplies: before }: Model, { supplies: next, resources }: Model): string | null {
  const row = next.level.findIndex((level, s) => level < 0 !== at(before.level, s) < 0);
  return row < 0
    ? null
    : `deliveries instead of orders, or the reverse (${at(resources.names, at(next.resource, row))})`;
}

function drawsDiffer({ draws: before }: Model, { draws: next }: Model): string | null {
  const was = before.map(({ name }) => name),
    is = next.map(({ name }) => name);
  return same(was, is)
    ? null
    : `a time or a chance that is no longer zero, or has become it (${oddOne(was, is) ?? ''})`;
}

/** The first that only one of two lists has. */
const oddOne = <T>(was: readonly T[], is: readonly T[]): T | undefined =>
  is.find((each) => !was.includes(each)) ?? was.find((each) => !is.includes(each));
