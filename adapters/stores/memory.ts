/** The store of a single run: everything the embedded one does, in memory, gone with the process. */
import { SqliteStore } from './sqlite.ts'
import { IN_MEMORY } from './sqlite-file.ts'
import type { Rules, Store } from './store.ts'

export const memoryStore = <Memory>(rules: Rules<Memory>): Store<Memory> => new SqliteStore(IN_MEMORY, rules)
