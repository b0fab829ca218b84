import { describe, expect, it } from 'vitest';
import type { FileTable } from '../../../src/report/files/folder/csv.js';
import {
  changesData,
  frontierData,
  planFiles,
  reachFiles,
  stepsData,
} from '../../../src/report/files/reach.js';
import { NOT_REACHED, SAMPLE } from '../samples/reach.js';

/** Rows of a file as items by head. */
const rows = ({ head, rows: all }: FileTable): Record<string, string | number>[] =>
  all.map((row) => Object.fromEntries(row.map((cell, i) => [head[i] ?? '', cell])));

describe('the files of reach', () => {
  it('have a row a step with its money, days, rates, and what stops it then', () => {
    const [now, first, , last] = rows(stepsData(SAMPLE));
    expect(now).toMatchObject({
      step: 0,
      change: '',
      price: '',
      money: 0,
      seen: '',
      stops_name: 'colour booth',
    });
    expect(first).toMatchObject({
      step: 1,
      change: 'second colour booth',
      times: 1,
      price: 420000,
      order_by: '2027-03-16',
      shipped_per_day_mean: 3.73597561,
      last_unit_p80: '2028-04-13',
      last_unit_p95: '',
      seen: 'brings more',
      stops_at_per_day: 4,
    });
    expect(last).toMatchObject({ money: 465000, stops_at_per_day: 4.4, stops_kind: 'hours' });
    expect(rows(stepsData(NOT_REACHED)).at(-1)).toMatchObject({ seen: 'no gain seen' });
  });

  it('have a row a set and a row a change', () => {
    const sets = rows(frontierData(SAMPLE));
    expect(sets.map(({ chosen }) => chosen)).toEqual(['no', 'no', 'no', 'no', 'no', 'yes']);
    expect(sets.map(({ changes }) => changes)).toEqual([0, 1, 2, 4, 2, 3]);
    expect(sets[0].set).toBe('');
    expect(rows(changesData(SAMPLE)).at(-1)).toMatchObject({
      change: 'masking cut ahead',
      made: 0,
      price: '',
    });
  });

  it('are those of every study, with the plan and the way to it beside them', async () => {
    const files = await reachFiles(SAMPLE);
    expect([...files.keys()].sort()).toEqual([
      '01-steps.png',
      '02-most-for-each-sum.png',
      '03-last-unit-by-step.png',
      '04-losses.png',
      '05-trials.png',
      'changes.csv',
      'frontier.csv',
      'losses.csv',
      'plan-reached.yaml',
      'report.html',
      'report.xlsx',
      'results.json',
      'steps-reached.yaml',
      'steps.csv',
      'trials.csv',
    ]);
    expect(String(files.get('plan-reached.yaml'))).toContain('include:\n  - rescue-tender.yaml\n');
  });

  it('have no plan where nothing is changed', () => {
    expect(planFiles({ ...SAMPLE, steps: SAMPLE.steps.slice(0, 1) }).size).toBe(0);
  });
});
