import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Box } from '../../../src/report/map/shapes.js';
import {
  type Drawing,
  type Group,
  type Shape,
  type TextShape,
  textBox,
} from '../../../src/report/map/shapes.js';
import { compile } from '../../../src/scenario/compile.js';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { routeMap } from '../../../src/study/route/route.js';
import type { RouteMap } from '../../../src/study/route/types.js';

/** A scenario and its routes, as the map takes them. */
export interface Mapped {
  readonly scenario: Scenario;
  readonly route: RouteMap;
}

export function mapped(yaml: string, folder = '.'): Mapped {
  const { scenario, problems } = readScenario(yaml, 'test.yaml', (name) =>
    readFileSync(join(folder, name), 'utf8'),
  );
  if (scenario === undefined) throw new Error(problems.map(sayProblem).join('\n'));
  return { scenario, route: routeMap(scenario, compile(scenario)) };
}

export const mappedFile = (file: string): Mapped => mapped(readFileSync(file, 'utf8'), dirname(file));

/** Every scenario of the repository. */
export const SCENARIO_FILES = ['scenarios', 'scenarios/rules'].flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => `${folder}/${name}`),
);

/** What a shape takes up, without its stroke; of a curve that of its points. */
export function boxOf(shape: Shape): Box {
  if (shape.kind === 'text') return textBox(shape);
  if (shape.kind === 'rect')
    return { left: shape.x, top: shape.y, right: shape.x + shape.width, bottom: shape.y + shape.height };
  const points = pointsOf(shape.d);
  return {
    left: Math.min(...points.map(([x]) => x)),
    top: Math.min(...points.map(([, y]) => y)),
    right: Math.max(...points.map(([x]) => x)),
    bottom: Math.max(...points.map(([, y]) => y)),
  };
}

/** Points of a path; of an arc its end. */
export const pointsOf = (d: string): [x: number, y: number][] =>
  [...d.matchAll(/[MLQA]([^MLQAZ]*)/g)].flatMap(([command, rest]): [number, number][] => {
    const numbers = (rest.match(/-?[\d.]+/g) ?? []).map(Number);
    if (command.startsWith('A')) return [[numbers.at(-2) ?? NaN, numbers.at(-1) ?? NaN]];
    return Array.from({ length: numbers.length / 2 }, (_, i) => [
      numbers[2 * i] ?? NaN,
      numbers[2 * i + 1] ?? NaN,
    ]);
  });

export const textsOf = (groups: readonly Group[]): TextShape[] =>
  groups.flatMap(({ shapes }) => shapes.filter((shape): shape is TextShape => shape.kind === 'text'));

const meet = (a: Box, b: Box, room: number): boolean =>
  a.left < b.right - room && b.left < a.right - room && a.top < b.bottom - room && b.top < a.bottom - room;

const wider = ({ left, top, right, bottom }: Box, by: number): Box => ({
  left: left - by,
  top: top - by,
  right: right + by,
  bottom: bottom + by,
});

interface Boxed {
  readonly text: string;
  readonly box: Box;
}
/** Measured once: each is held against all others. */
const boxed = (groups: readonly Group[]): Boxed[] =>
  textsOf(groups).map((words) => ({ text: words.text, box: textBox(words) }));

/** Brackets over a text, a mark or one another. */
function bracketFaults(groups: readonly Group[], texts: readonly Boxed[]): string[] {
  const linesOf = ({ shapes }: Group): Box[] => shapes.filter(({ kind }) => kind !== 'text').map(boxOf),
    brackets = groups
      .filter(({ kind }) => kind === 'bracket')
      .map((group) => ({ about: group.about, lines: linesOf(group) })),
    marks = groups.filter(({ kind }) => kind === 'stop').flatMap(linesOf);
  return brackets.flatMap((one, i) => {
    const { lines } = one,
      isMet = (box: Box): boolean => lines.some((line) => meet(box, line, 0.5));
    return [
      ...texts.filter(({ box }) => isMet(box)).map(({ text }) => `${text} over ${one.about}`),
      ...(marks.some(isMet) ? [`a mark over ${one.about}`] : []),
      ...brackets
        .slice(i + 1)
        .filter((other) => other.about !== one.about && other.lines.some((line) => isMet(wider(line, 3))))
        .map(({ about }) => `${about} over ${one.about}`),
    ];
  });
}

/** What is wrong with a drawing: texts over texts, over marks, over brackets, out of the picture. */
export function faultsOf({ width, height, groups }: Drawing): string[] {
  const texts = boxed(groups),
    marks = groups
      .filter(({ kind }) => kind === 'stop')
      .flatMap(({ shapes }) => shapes.filter(({ kind }) => kind !== 'text').map(boxOf)),
    outside = groups
      .flatMap(({ shapes }) => shapes)
      .filter((shape) => {
        const { left, top, right, bottom } = boxOf(shape);
        return !(left >= 0 && top >= 0 && right <= width && bottom <= height);
      }),
    written = boxed(groups.filter(({ kind }) => kind !== 'stop'));
  return [
    ...bracketFaults(groups, texts),
    ...outside.map((shape) => `outside: ${shape.kind === 'text' ? shape.text : JSON.stringify(shape)}`),
    ...texts.flatMap((one, i) =>
      texts
        .slice(i + 1)
        .flatMap((other) => (meet(one.box, other.box, 0.5) ? [`${one.text} over ${other.text}`] : [])),
    ),
    ...written.flatMap((one) =>
      marks.some((mark) => meet(one.box, mark, 0.5)) ? [`${one.text} over a mark`] : [],
    ),
  ];
}
