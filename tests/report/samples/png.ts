import { createCanvas, Image } from '@napi-rs/canvas';

/** What a PNG shows, read with the decoder of the canvas package. */
export interface Pixels {
  readonly width: number;
  readonly height: number /** Share of pixels that are not white. */;
  readonly ink: number /** Whether a frame of `edge` pixels is all white. */;
  frameIsWhite(edge: number): boolean;
}

export function readPng(png: Buffer): Pixels {
  const image = new Image();
  image.src = png;
  const { width, height } = image;
  const context = createCanvas(width, height).getContext('2d');
  context.drawImage(image, 0, 0);
  const { data } = context.getImageData(0, 0, width, height);
  const white = (x: number, y: number): boolean =>
    [0, 1, 2, 3].every((channel) => data[4 * (y * width + x) + channel] === 255);
  let inked = 0;
  for (let at = 0; at < data.length; at += 4)
    if (data[at] !== 255 || data[at + 1] !== 255 || data[at + 2] !== 255) inked++;
  return {
    width,
    height,
    ink: inked / (width * height),
    frameIsWhite(edge) {
      for (let y = 0; y < height; y++) {
        for (let x = 0; x < width; x++) {
          const inside = x >= edge && x < width - edge && y >= edge && y < height - edge;
          if (inside) x = width - edge - 1;
          else if (!white(x, y)) return false;
        }
      }
      return true;
    },
  };
}
