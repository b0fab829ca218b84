import { describe, expect, it } from 'vitest';
import { paint } from '../../src/report/hatch.js';
import {
  DARK_EDGE,
  INK,
  LINES,
  MUTED,
  PALETTE,
  STATE_FILLS,
  STATE_ORDER,
  VALUE_FILLS,
} from '../../src/report/style.js';
import { PLACE_STATES } from '../../src/study/sections/stations.js';

/** Contrast with white, WCAG 2.2 definitions of relative luminance and contrast ratio. */
function contrastOnWhite(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5]
    .map((at) => parseInt(colour.slice(at, at + 2), 16) / 255)
    .map((value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4));
  return 1.05 / (0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05);
}

describe('style', () => {
  it('measures contrast as WCAG does: black on white is 21, #767676 the palest grey that passes 4.5', () => {
    expect(contrastOnWhite('#000000')).toBeCloseTo(21, 6);
    expect(contrastOnWhite('#767676')).toBeGreaterThan(4.5);
    expect(contrastOnWhite('#777777')).toBeLessThan(4.5);
  });

  it('writes text with a contrast of 4.5 at least', () => {
    for (const colour of [INK, MUTED]) expect(contrastOnWhite(colour)).toBeGreaterThanOrEqual(4.5);
  });

  it('draws every line and the edge of every state with a contrast of 3 at least', () => {
    for (const { colour } of LINES) expect(contrastOnWhite(colour), colour).toBeGreaterThanOrEqual(3);
    for (const state of STATE_ORDER)
      expect(contrastOnWhite(STATE_FILLS[state].edge), state).toBeGreaterThanOrEqual(3);
  });

  it('gives orange, sky and yellow, which are too pale on white, a dark edge', () => {
    const pale = Object.values(STATE_FILLS).filter(({ colour }) =>
      [PALETTE.orange, PALETTE.sky, PALETTE.yellow].includes(colour as never),
    );
    expect(pale).toHaveLength(4);
    for (const { edge } of pale) expect(edge).toBe(DARK_EDGE);
  });

  it('covers all place states, no two of them alike, and hatches all but a few', () => {
    expect([...STATE_ORDER].sort()).toEqual([...PLACE_STATES].sort());
    const looks = STATE_ORDER.map((state) => `${STATE_FILLS[state].colour} ${STATE_FILLS[state].hatch}`);
    expect(new Set(looks).size).toBe(PLACE_STATES.length);
    const hatches = STATE_ORDER.map((state) => STATE_FILLS[state].hatch).filter((hatch) => hatch !== 'plain');
    expect(new Set(hatches).size).toBe(hatches.length);
    expect(hatches).toHaveLength(7);
  });

  it('draws values of an option without any colour, each with a hatch of its own, as a value may be named for a colour', () => {
    for (const { colour, hatchColour, edge } of VALUE_FILLS)
      for (const each of [colour, hatchColour, edge]) {
        const [red, green, blue] = [1, 3, 5].map((at) => each.slice(at, at + 2));
        expect([green, blue], each).toEqual([red, red]);
      }
    expect(new Set(VALUE_FILLS.map(({ colour, hatch }) => `${colour} ${hatch}`)).size).toBe(
      VALUE_FILLS.length,
    );
  });

  it('paints hatched states with a pattern and plain ones with their colour', () => {
    expect(paint(STATE_FILLS['working'])).toBe(PALETTE.blue);
    expect(typeof paint(STATE_FILLS['blocked'])).toBe('object');
  });

  it('draws no two lines with the same dash', () => {
    expect(new Set(LINES.map(({ dash }) => dash.join())).size).toBe(LINES.length);
  });
});
