/** The time of a run, minutes since the programme's start. One object is shared by all that keep accounts. */
export class Clock {
  // Not a number at first, so that the engine of JavaScript keeps the field as a float from the beginning.
  now = Number.NaN;

  constructor() {
    this.now = 0;
  }
}
