/** The types of chart.js name the drawing context of a browser; here it is the one of the canvas package. */
declare global {
  type CanvasRenderingContext2D = import('@napi-rs/canvas').SKRSContext2D;
}

export {};
