import type { ScenarioData } from '../../scenario/data.js';
import type { SetLever } from '../../scenario/levers.js';

/** What a page carries so that it can run the build itself, with changes of its reader's. */
export interface TryIt extends ScenarioData {
  readonly levers: readonly SetLever[];
}
