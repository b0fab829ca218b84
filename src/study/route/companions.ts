import { meanOf } from '../../random/distribution.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { Companion } from './types.js';

/** Carriers, teams, pulse lines. */
export const companionsOf = ({ carriers, teams, pulseLines }: Scenario): Companion[] => [
  ...Object.entries(carriers).map(([name, { count, from, to, return: back }]) => ({
    kind: 'carrier' as const,
    name,
    from,
    to,
    count,
    returnMin: meanOf(back),
  })),
  ...Object.entries(teams).map(([name, { crew, people, from, to }]) => ({
    kind: 'team' as const,
    name,
    from,
    to,
    crew,
    people,
  })),
  ...Object.entries(pulseLines).map(([name, line]) => ({ kind: 'pulse line' as const, name, ...line })),
];
