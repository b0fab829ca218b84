import { mapOf, type Outline, type RawMap } from './names-outline.js';
import type { Look } from './names.js';
import type { Path } from './problem.js';

/** Values of the option in the times from one to another. */
export function changeoverValues(path: Path, changeover: RawMap, outline: Outline, look: Look): void {
  const option = changeover['on'];
  if (typeof option !== 'string') return;
  const value = (at: Path, name: string): void =>
    look([...at, name], name, outline.options?.get(option), `value of this name in option ${option}`, true);
  for (const [from, times] of Object.entries(mapOf(changeover['from to']))) {
    value([...path, 'from to'], from);
    for (const to of Object.keys(mapOf(times))) value([...path, 'from to', from], to);
  }
}
