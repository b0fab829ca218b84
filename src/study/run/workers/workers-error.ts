/** No worker answers, or a replication ends every one: the user's to solve. `said`: what they wrote. */
export class WorkersError extends Error {
  constructor(
    message: string,
    readonly said: readonly string[],
  ) {
    super(message);
  }
}
