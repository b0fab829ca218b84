import type { Condition, Learning, StationStep } from '../types/steps.js';
import { REWORK_BOTH, REWORK_ONLY, REWORK_SKIP, type Model } from '../../flow/model/model.js';
import { ALWAYS, type CalendarBook } from '../calendar/book.js';
import { teamCalendars } from '../plant/carriers.js';
import { column, entriesOf, starts } from '../whole/columns.js';
import type { Chances, Slot, Thens } from './defects.js';
import { NO_DRAW, type Draws } from '../whole/draws.js';
import { bankName, found, type Names } from '../whole/ids.js';
import type { LaidRoutes, LaidStep } from './route.js';
import { workCalendar } from '../plant/stations.js';
import type { Scenario } from '../types/scenario.js';

const REWORK = { both: REWORK_BOTH, skip: REWORK_SKIP, only: REWORK_ONLY } as const;
/** Values of one option that a mask of 32 bits can tell apart. */
export const MOST_VALUES = 32;

export interface StepParts {
  readonly scenario: Scenario;
  readonly names: Names;
  readonly book: CalendarBook;
  readonly draws: Draws;
  readonly laid: LaidRoutes;
  readonly slots: readonly Slot[];
  readonly joining: readonly ReadonlySet<number>[];
  readonly chances: Chances;
  readonly thens: Thens;
  readonly resources: Model['resources'];
  readonly stays: Model['stays'];
}

interface Created {
  readonly slot: number;
  readonly chance: number;
  readonly draw: number;
}
interface Found extends Created {
  readonly then: number;
}
interface Factor {
  readonly option: number;
  readonly table: readonly number[];
}

interface StepRow {
  readonly laid: LaidStep;
  readonly station: number;
  readonly lane: number;
  readonly workCalendar: number;
  readonly workDraw: number;
  readonly passes: number;
  readonly settleDraw: number;
  readonly processDraw: number;
  readonly learning: Learning | undefined;
  readonly oneShift: boolean;
  readonly rework: number;
  readonly sampleN: number;
  readonly sampleDraw: number;
  readonly when: readonly { readonly option: number; readonly mask: number }[];
  readonly needs: readonly { readonly resource: number; readonly amount: number }[];
  readonly own: readonly number[];
  readonly off: readonly number[];
  readonly factors: readonly Factor[];
  readonly creates: readonly Created[];
  readonly finds: readonly Found[];
}

/** Steps of all routes, as columns. */
export function compileSteps(parts: StepParts): Model['steps'] {
  const rows = parts.laid.steps.map((laid, id) =>
    laid.kind === 'step' ? stationRow(laid, laid.step, id, parts) : passingRow(laid, parts),
  );
  const tableSizes = rows.flatMap((row) => row.factors.map((factor) => factor.table.length));
  let offset = 0;
  const offsets = tableSizes.map((size) => {
    const here = offset;
    offset += size;
    return here;
  });
  return {
    count: rows.length,
    names: rows.map((row) => row.laid.name),
    route: column(rows, (row) => row.laid.route),
    station: column(rows, (row) => row.station),
    lane: column(rows, (row) => row.lane),
    workCalendar: column(rows, (row) => row.workCalendar),
    workDraw: column(rows, (row) => row.workDraw),
    passes: column(rows, (row) => row.passes),
    settleDraw: column(rows, (row) => row.settleDraw),
    processDraw: column(rows, (row) => row.processDraw),
    learnExponent: Float64Array.from(rows, ({ learning }) =>
      learning === undefined ? 0 : Math.log2(learning.rate),
    ),
    learnCumulative: Uint8Array.from(rows, ({ learning }) => Number(learning?.curve === 'cumulative mean')),
    learnFloor: Float64Array.from(rows, ({ learning }) => learning?.floor ?? 0),
    learnBefore: column(rows, ({ learning }) => learning?.builtBefore ?? 0),
    oneShift: Uint8Array.from(rows, (row) => Number(row.oneShift)),
    attendedEnd: Uint8Array.from(rows, ({ laid }) => Number(laid.kind === 'step' && laid.step.attendedEnd)),
    rework: Uint8Array.from(rows, (row) => row.rework),
    whenStart: starts(rows, (row) => row.when),
    whenOption: entriesOf(
      rows,
      (row) => row.when,
      (when) => when.option,
    ),
    whenMask: entriesOf(
      rows,
      (row) => row.when,
      (when) => when.mask,
    ),
    sampleN: column(rows, (row) => row.sampleN),
    sampleDraw: column(rows, (row) => row.sampleDraw),
    needStart: starts(rows, (row) => row.needs),
    needResource: entriesOf(
      rows,
      (row) => row.needs,
      (need) => need.resource,
    ),
    needAmount: entriesOf(
      rows,
      (row) => row.needs,
      (need) => need.amount,
    ),
    ownStart: starts(rows, (row) => row.own),
    ownRoute: entriesOf(
      rows,
      (row) => row.own,
      (route) => route,
    ),
    offStart: starts(rows, (row) => row.off),
    offRoute: entriesOf(
      rows,
      (row) => row.off,
      (route) => route,
    ),
    factorStart: starts(rows, (row) => row.factors),
    factorOption: entriesOf(
      rows,
      (row) => row.factors,
      (factor) => factor.option,
    ),
    factorOffset: Int32Array.from(offsets),
    factorTable: Float64Array.from(rows.flatMap((row) => row.factors.flatMap((factor) => factor.table))),
    createStart: starts(rows, (row) => row.creates),
    createSlot: entriesOf(
      rows,
      (row) => row.creates,
      (create) => create.slot,
    ),
    createChance: entriesOf(
      rows,
      (row) => row.creates,
      (create) => create.chance,
    ),
    createDraw: entriesOf(
      rows,
      (row) => row.creates,
      (create) => create.draw,
    ),
    findStart: starts(rows, (row) => row.finds),
    findSlot: entriesOf(
      rows,
      (row) => row.finds,
      (find) => find.slot,
    ),
    findChance: entriesOf(
      rows,
      (row) => row.finds,
      (find) => find.chance,
    ),
    findDraw: entriesOf(
      rows,
      (row) => row.finds,
      (find) => find.draw,
    ),
    findThen: entriesOf(
      rows,
      (row) => row.finds,
      (find) => find.then,
    ),
  };
}

/** A lane, or the bank after it: nothing is done there. */
function passingRow(laid: LaidStep & { kind: 'lane' | 'bank' }, { names }: StepParts): StepRow {
  const isLane = laid.kind === 'lane';
  return {
    laid,
    station: isLane ? -1 : found(names.station, bankName(laid.lane), 'station'),
    lane: isLane ? found(names.lane, laid.lane, 'lane') : -1,
    workCalendar: ALWAYS,
    workDraw: NO_DRAW,
    passes: 1,
    settleDraw: NO_DRAW,
    processDraw: NO_DRAW,
    learning: undefined,
    oneShift: false,
    rework: REWORK_BOTH,
    sampleN: 0,
    sampleDraw: NO_DRAW,
    when: conditions(laid.when, names),
    needs: [],
    own: [],
    off: [],
    factors: [],
    creates: [],
    finds: [],
  };
}

function stationRow(
  laid: LaidStep & { kind: 'step' },
  step: StationStep,
  id: number,
  parts: StepParts,
): StepRow {
  const { scenario, names, book, draws, resources } = parts;
  const { name } = step;
  const site = found(names.siteOfStation, step.at, 'station');
  const crews = Object.entries(step.crew).map(([crew, amount]) => ({
    resource: names.crew(site, crew),
    amount,
  }));
  const stocks = Object.entries(step.parts).flatMap(([part, amount]) =>
    amount === 'own' ? [] : [{ resource: names.part(part), amount }],
  );
  const ownParts = Object.keys(step.parts).filter((feeder) => step.parts[feeder] === 'own');
  const routeOf = (feeder: string): number => found(names.feeder, feeder, 'feeder');
  const isSampled = step.sample !== undefined && step.sample.oneIn > 1;
  return {
    laid,
    station: found(names.station, step.at, 'station'),
    lane: -1,
    workCalendar: workCalendar(
      scenario,
      site,
      step.at,
      [...crews.map((crew) => resources.calendar[crew.resource]), ...teamCalendars(parts, laid.group ?? id)],
      book,
    ),
    workDraw: draws.add(`${name}/work`, step.passes?.work ?? step.work),
    passes: step.passes?.count ?? 1,
    settleDraw: draws.add(`${name}/settle`, step.passes?.settle),
    processDraw: draws.add(`${name}/process`, step.process),
    learning: step.learning,
    oneShift: step.oneShift,
    rework: REWORK[step.rework],
    sampleN: isSampled ? step.sample.oneIn : 0,
    sampleDraw: isSampled && step.sample.by === 'random' ? draws.chance(`${name}/sample`) : NO_DRAW,
    when: [
      ...conditions(laid.group === undefined ? {} : parts.laid.steps[laid.group].when, names),
      ...conditions(step.when, names),
    ],
    needs: [...crews, ...stocks],
    own: ownParts.map(routeOf),
    off: step.takesOff.map(routeOf),
    factors: Object.entries(step.workFactor).map(([option, byValue]) => ({
      option: found(names.option, option, 'option'),
      table: Object.keys(scenario.programme.options[option]).map((value) => byValue[value] ?? 1),
    })),
    ...quality(step, id, laid.route, parts),
  };
}

/**
 * What the step may create and find. A find is one row for each slot of its kind on the same route or brought
 * by what joins it; they share what follows.
 */
function quality(
  step: StationStep,
  id: number,
  route: number,
  { draws, laid, slots, joining, chances, thens }: StepParts,
): Pick<StepRow, 'creates' | 'finds'> {
  const { name } = step;
  const creates = Object.entries(step.creates).map(([kind, chance]) => ({
    slot: slots.findIndex((slot) => slot.kind === kind && slot.step === id),
    chance: chances.add(chance),
    draw: draws.chance(`${name}/creates ${kind}`),
  }));
  const finds: Found[] = Object.entries(step.finds).flatMap(([kind, find]) => {
    const then = thens.add(name, kind, find);
    const chance = chances.add(find.chance);
    return slots.flatMap((slot, s) =>
      slot.kind === kind && (slot.route === route || joining[route].has(slot.route))
        ? [
            {
              slot: s,
              chance,
              then,
              draw: draws.chance(`${name}/finds ${kind} from ${laid.steps[slot.step].name}`),
            },
          ]
        : [],
    );
  });
  if (step.fails !== undefined) {
    finds.push({
      slot: -1,
      chance: chances.add(step.fails.chance),
      then: thens.add(name, 'failed test', step.fails),
      draw: draws.chance(`${name}/fails`),
    });
  }
  return { creates, finds };
}

function conditions(when: Condition, names: Names): StepRow['when'] {
  return Object.entries(when).map(([option, values]) => {
    const mask = values.reduce((bits, value) => {
      const bit = names.value(option, value);
      if (bit >= MOST_VALUES)
        throw new RangeError(
          `programme.options.${option}: expected at most ${MOST_VALUES} values where a step has a ` +
            'condition on it, saw more; merge values that are built alike',
        );
      return bits | (1 << bit);
    }, 0);
    return { option: found(names.option, option, 'option'), mask };
  });
}
