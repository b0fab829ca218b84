import type { Model } from '../../flow/model/model.js';
import { ALWAYS } from '../calendar/book.js';
import { at, int32 } from '../lookup/columns.js';
import type { Compilation } from '../lookup/compilation.js';
import { bankName } from '../lookup/ids.js';
import { type LaidStep } from '../lookup/laid.js';
import { equipmentKey, equipmentNeeds } from '../plant/equipment.js';
import { workCalendar } from '../plant/stations.js';
import { teamCalendars } from '../plant/teams.js';
import type { StationStep } from '../types/steps.js';
import { keys, name, together } from '../values/keys.js';
import type { TimeSchema } from '../values/time.js';
import { noSetting, type SettingRow, settingColumns, settingKey, settingRow } from '../whole/settings.js';
import { createsKey, inspectionKeys } from './inspections.js';
import {
  crewKey,
  crewNeeds,
  type NeedsRow,
  NO_NEEDS,
  needsColumns,
  needsRow,
  partKeys,
  waitKey,
} from './needs.js';
import { type FindsRow, findsColumns, findsRow, type Quality } from './quality.js';
import { checkTask, NO_TASK, type TaskRow, taskColumns, taskKeys, taskRow } from './tasks.js';
import { type VisitRow, visitColumns, visitKeys, visitOf, visitRow, whenKey } from './visits.js';

export const stepName = name('the name of the step').describe(
  'The name of the step, unique over all routes. Example: prime',
);

export function stepSchema(time: TimeSchema) {
  return (
    keys(
      {
        step: stepName,
        at: name('the name of a station').describe(
          'The station. Two steps in a row at the same station: the unit keeps its place. Example: ' +
            'prime booth',
        ),
        when: whenKey,
        crew: crewKey,
        equipment: equipmentKey(time),
        ...taskKeys(time),
        setting: settingKey,
        ...visitKeys,
        ...partKeys,
        'wait for parts': waitKey,
        creates: createsKey,
        ...inspectionKeys(time),
      },
      'a step: a map with the keys step and at',
    )
      .superRefine(together(checkTask))
      // The digest of a scenario goes by the order of keys.
      .transform(
        ({ step, at, when, crew, work, passes, process, attendedEnd, inOneShift, ...rest }): StationStep => ({
          kind: 'step',
          name: step,
          at,
          when,
          crew,
          work,
          passes,
          process,
          attendedEnd,
          oneShift: inOneShift,
          ...rest,
          sideBySide: undefined,
        }),
      )
  );
}

export type StepSchema = ReturnType<typeof stepSchema>;

interface StepRow extends TaskRow, VisitRow, NeedsRow, FindsRow {
  readonly name: string;
  readonly route: number;
  readonly station: number;
  readonly lane: number;
  readonly onTo: number;
  readonly workCalendar: number;
  readonly setting: SettingRow;
}

/** What steps are compiled with. */
export interface Steps extends Compilation, Quality {
  readonly resources: Model['resources'];
  readonly companions: Model['companions'];
}

/** Steps of all routes, as columns. */
export function compileSteps(all: Steps): Model['steps'] {
  const rows = all.laid.steps.map((laid, id) =>
    laid.kind === 'step' ? stationRow(laid, id, all) : passingRow(laid, all),
  );
  return {
    count: rows.length,
    names: rows.map((row) => row.name),
    ...int32(rows, 'route', 'station', 'lane', 'onTo', 'workCalendar'),
    ...taskColumns(rows),
    ...settingColumns(rows.map(({ setting }) => setting)),
    ...visitColumns(rows),
    ...needsColumns(rows),
    ...findsColumns(rows),
  };
}

/** A lane, or the bank after it: nothing is done there. */
function passingRow(laid: LaidStep & { kind: 'lane' | 'bank' }, all: Steps): StepRow {
  const isLane = laid.kind === 'lane',
    { ids } = all;
  return {
    name: laid.name,
    route: laid.route,
    station: isLane ? -1 : ids.station(bankName(laid.lane)),
    lane: isLane ? ids.lane(laid.lane) : -1,
    onTo: laid.onTo ?? -1,
    workCalendar: ALWAYS,
    setting: noSetting(laid.name),
    ...NO_TASK,
    ...visitOf([laid.when], all),
    ...NO_NEEDS,
    creates: [],
    finds: [],
  };
}

function stationRow(laid: LaidStep & { kind: 'step' }, id: number, all: Steps): StepRow {
  const { step, group } = laid,
    { ids, resources } = all;
  const site = ids.siteOfStation(step.at),
    claimed = [...crewNeeds(step, site, all), ...equipmentNeeds(step, site, all)],
    conditions = group === undefined ? [step.when] : [at(all.laid.steps, group).when, step.when],
    hours = workCalendar(all, site, step.at, [
      ...claimed.map(({ resource }) => at(resources.calendar, resource)),
      ...teamCalendars(all, group ?? id),
    ]);
  return {
    name: laid.name,
    route: laid.route,
    station: ids.station(step.at),
    lane: -1,
    onTo: -1,
    workCalendar: hours,
    setting: group === undefined ? settingRow(step, all, hours) : noSetting(laid.name),
    ...taskRow(step, all),
    ...visitRow(step, conditions, all),
    ...needsRow(step, claimed, all),
    ...findsRow(step, id, laid.route, all),
  };
}
