/** What each workspace's crews logged: read from the store now and then, and anew after a log of this process. */
import { LEARNED_KINDS, type Learned, learnedFrom } from '../src/jobs/learned.ts'
import type { Memory } from '../src/jobs/memory.ts'
import type { Entry } from '../src/message.ts'
import { type Store, workspaceOf } from './stores/store.ts'

const ENTRIES = 500
const KEPT_MS = 10 * 60_000
const MOST_WORKSPACES = 200

export type Learning = {
  /** The figures of a channel's workspace, and of no other. None where the store cannot be read: they only add a line. */
  readonly of: (channel: string) => Promise<readonly Learned[]>
  /** Told of what was kept, so that a new log counts at once. */
  readonly kept: (channel: string, entries: readonly Entry[]) => void
}

export function learning(store: Pick<Store<Memory>, 'learned'>, nowMs: () => number = Date.now): Learning {
  const known = new Map<string, { readonly untilMs: number; readonly learned: readonly Learned[] }>()
  return {
    async of(channel) {
      const workspace = workspaceOf(channel)
      const before = known.get(workspace)
      if (before && before.untilMs > nowMs()) return before.learned
      const found = await store.learned(workspace, LEARNED_KINDS, ENTRIES)
      const learned = found.ok ? learnedFrom(found.value.map(({ entry }) => entry)) : []
      if (known.size >= MOST_WORKSPACES) known.clear()
      known.set(workspace, { untilMs: nowMs() + KEPT_MS, learned })
      return learned
    },
    kept(channel, entries) {
      if (entries.some((entry) => LEARNED_KINDS.includes(entry.kind))) known.delete(workspaceOf(channel))
    },
  }
}
