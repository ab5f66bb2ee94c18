/** Which messages ask of a wall's first course, by their words. */
import type { Heard } from '../language/heard.ts'

/** How high the bottom course goes: by the ledger's name, the course's, or a tub or wall that is out of level. */
export const ledgerAsked = (heard: Heard): boolean =>
  heard.quantities.length > 0 &&
  (heard.has('ledger') ||
    (heard.has('first-course') && heard.has('off-level', 'out-of-level', 'tub-word', 'wall', 'shower')) ||
    (heard.has('off-level') && heard.has('tub-word')) ||
    (heard.has('off-level') && heard.has('floor') && heard.has('wall') && heard.facts.tile !== undefined))
