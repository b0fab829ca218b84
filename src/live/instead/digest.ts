import { canonicalJson } from '../../scenario/canonical.js';
import type { Scenario } from '../../scenario/types/scenario.js';

/**
 * What `scenario/digest.ts` is in a page, which has no hash that answers at once: the canonical JSON itself.
 * It tells scenarios apart as well, and never leaves the page.
 */
export const digest = (scenario: Scenario): string => canonicalJson(scenario);
