import { FONT_FAMILY } from '../canvas.js';
import { INK, SIZE } from '../style.js';

const AT_TOP = { display: true, position: 'top', align: 'start', onClick: () => undefined } as const;

/** A box of each fill with its name. */
export const BOX_LEGEND = {
  ...AT_TOP,
  labels: {
    color: INK,
    boxWidth: 26,
    boxHeight: 13,
    padding: 12,
    font: { family: FONT_FAMILY, size: SIZE.small },
  },
} as const;

/** Marks about as large as in the plot; what has no name is left out. */
export const MARK_LEGEND = {
  ...AT_TOP,
  labels: {
    color: INK,
    usePointStyle: true,
    boxHeight: 8,
    padding: 14,
    font: { size: SIZE.small },
    filter: ({ text }: { text: string }) => text !== '',
  },
} as const;
