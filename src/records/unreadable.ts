/** A file that cannot be read as it is: what was expected and came, and what to do. For the user to solve. */
export class Unreadable extends Error {
  override readonly name = 'Unreadable';

  constructor(
    message: string,
    readonly remedy: string,
  ) {
    super(message);
  }
}
