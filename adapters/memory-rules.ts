/** How the stores make a channel's memory out of its entries. */
import { fold, understands } from '../src/jobs/fold.ts'
import { emptyMemory, type Memory } from '../src/jobs/memory.ts'
import type { Rules } from './stores/store.ts'

/** To be raised whenever the fold makes something else of the same entries: stored snapshots of other versions are not used. */
const FOLD_VERSION = 4

export const memoryRules = (onSkipped?: Rules<Memory>['onSkipped']): Rules<Memory> => ({
  fold,
  emptyMemory,
  understands,
  foldVersion: FOLD_VERSION,
  ...(onSkipped ? { onSkipped } : {}),
})
