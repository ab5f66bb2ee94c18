/** Picks a store by where it lies, and loads only that one. */
import type { Rules, Store } from './store.ts'

/** Where the job memory lies. */
export type Where = { readonly in: 'memory' } | { readonly in: 'file'; readonly file: string }

/** A store, not yet opened: a fault of file or server shows at its first operation, as a value. */
export async function openStore<Memory>(where: Where, rules: Rules<Memory>): Promise<Store<Memory>> {
  switch (where.in) {
    case 'memory':
      return (await import('./memory.ts')).memoryStore(rules)
    case 'file':
      return new (await import('./sqlite.ts')).SqliteStore(where.file, rules)
  }
}
