/** Picks a store by where it lies, and loads only that one. */
import type { Rules, Store } from './store.ts'

/** Where the job memory lies. */
export type Where =
  | { readonly in: 'memory' }
  | { readonly in: 'file'; readonly file: string }
  | { readonly in: 'postgres'; readonly url: string; readonly connections?: number }

/** A store, not yet opened: a fault of file or server shows at its first operation, as a value. */
export async function openStore<Memory>(where: Where, rules: Rules<Memory>): Promise<Store<Memory>> {
  switch (where.in) {
    case 'memory':
      return (await import('./memory.ts')).memoryStore(rules)
    case 'file':
      return new (await import('./sqlite.ts')).SqliteStore(where.file, rules)
    case 'postgres':
      return new (await import('./postgres.ts')).PostgresStore(where.url, rules, where.connections)
  }
}

/** What a user names on a command line or in the environment: a PostgreSQL address, else a file. */
export const whereIs = (named: string): Where =>
  /^postgres(ql)?:\/\//i.test(named) ? { in: 'postgres', url: named } : { in: 'file', file: named }
