import { saySeen } from '../../file/problem.js';
import { routesOf, stepsOf } from '../../lookup/placed.js';
import type { Finding, Path } from '../../types/problem.js';
import type { OpenItem } from '../../types/programme.js';
import type { Scenario } from '../../types/scenario.js';
import { nearest } from '../../values/nearest.js';
import type { Standing } from './held.js';
import { findAt, finderOf, makersOf, senderOf, sendersTargets, stateOf, stepsWith } from './items.js';

/** Items of the opening that cannot be there, and units that were sent back from where they never were. */
export function* itemFindings(scenario: Scenario, standing: readonly Standing[]): Iterable<Finding> {
  const told = new Set<string>();
  for (const stands of standing) {
    const { order } = stands,
      { written, open = [], sentBackBy } = order,
      key = JSON.stringify(written.path);
    // Several units alike have one entry.
    if (told.has(key)) continue;
    told.add(key);
    const wrong = sentBackBy === undefined ? undefined : senderFinding(scenario, stands, sentBackBy);
    if (wrong !== undefined) {
      yield wrong;
      continue;
    }
    for (const [i, item] of open.entries())
      yield* itemFinding(scenario, stands, item, [...written.path, 'open', i]);
  }
}

function senderFinding(scenario: Scenario, stands: Standing, named: string): Finding | undefined {
  const path = [...stands.order.written.path, 'sent back by'],
    [unit] = routesOf(scenario),
    sender = senderOf(scenario, stands),
    senders = stepsOf(unit).filter(
      (placed) => sendersTargets(scenario, placed).length > 0 && placed.index >= stands.index,
    );
  if (sender === undefined)
    return noStep(
      path,
      named,
      stepsOf(unit).map(({ step }) => step.name),
    );
  const targets = sendersTargets(scenario, sender);
  if (targets.length === 0 || sender.index < stands.index)
    return {
      path,
      wanted:
        `an inspection or test, not before ${saySeen(nameOf(stands))}, that sends units back` +
        list(senders.map(({ step }) => step.name)),
      seen: saySeen(named),
    };
  const first = Math.min(...targets);
  if (stands.index >= first) return undefined;
  return {
    path: [...stands.order.written.path, 'at'],
    wanted: `a step not before the first to which ${saySeen(named)} sends units back`,
    seen: saySeen(nameOf(stands)),
  };
}

function* itemFinding(scenario: Scenario, stands: Standing, item: OpenItem, path: Path): Iterable<Finding> {
  const { defect, madeAt, foundAt } = item,
    where = saySeen(nameOf(stands));
  if (defect !== undefined) {
    const kinds = Object.keys(scenario.defects);
    if (!kinds.includes(defect)) {
      yield {
        path: [...path, 'defect'],
        wanted: 'no kind of defect of this name',
        seen: saySeen(defect),
        suggestion: nearest(defect, kinds),
      };
      return;
    }
    const makers = makersOf(scenario, stands, defect, foundAt).map(({ step }) => step.name);
    if (makers.length === 0) {
      yield {
        path: [...path, 'defect'],
        wanted: `a defect that a step behind the unit at ${where} may have made`,
        seen:
          (saySeen(defect) ?? '') +
          made(stepsWith(scenario, ({ step }) => Object.hasOwn(step.creates, defect))),
      };
      return;
    }
    if (madeAt !== undefined && !makers.includes(madeAt)) {
      yield {
        path: [...path, 'made at'],
        wanted: `a step behind the unit at ${where} that may have made it` + list(makers),
        seen: saySeen(madeAt),
        suggestion: nearest(madeAt, makers),
      };
      return;
    }
    if (madeAt === undefined && makers.length > 1) {
      yield { path, wanted: `made at, one of the steps that make it` + list(makers), seen: 'none' };
      return;
    }
  }
  if (foundAt === undefined) return;
  const finder = finderOf(scenario, foundAt),
    [unit] = routesOf(scenario);
  if (finder === undefined) {
    yield noStep(
      [...path, 'found at'],
      foundAt,
      stepsOf(unit).map(({ step }) => step.name),
    );
    return;
  }
  if (findAt(finder, defect) === undefined) {
    const finders = stepsOf(unit).filter((placed) => findAt(placed, defect) !== undefined);
    yield {
      path: [...path, 'found at'],
      wanted:
        (defect === undefined
          ? 'a test that may fail'
          : `a step of the unit's route that finds ${saySeen(defect)}`) +
        list(finders.map(({ step }) => step.name)),
      seen: saySeen(foundAt),
    };
    return;
  }
  const state = stateOf(scenario, stands, item);
  if (typeof state === 'string')
    yield {
      path: [...path, 'found at'],
      wanted: `an inspection that leaves it open on the unit at ${where}`,
      seen: `${saySeen(foundAt)}: ${state}`,
    };
}

const nameOf = ({ entry }: Standing): string => (entry.kind === 'lane' ? entry.lane : entry.name);

const noStep = (path: Path, step: string, known: readonly string[]): Finding => ({
  path,
  wanted: "no step of this name in the unit's route",
  seen: saySeen(step),
  suggestion: nearest(step, known),
});

const MOST_NAMES = 8;
const list = (names: readonly string[]): string =>
  names.length === 0 || names.length > MOST_NAMES ? '' : `: ${names.map((name) => saySeen(name)).join(', ')}`;
const made = (names: readonly string[]): string =>
  names.length === 0
    ? ', which no step makes'
    : `, which is made at ${names.slice(0, MOST_NAMES).join(', ')}`;
