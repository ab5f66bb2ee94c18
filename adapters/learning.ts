/** What each workspace's crews logged: read from the store now and then, and added to by each log of this process. */
import { LEARNED_KINDS, type Learned, learnedFrom } from '../src/jobs/learned.ts'
import type { Memory } from '../src/jobs/memory.ts'
import type { Entry } from '../src/message.ts'
import { type Store, workspaceOf } from './stores/store.ts'

/** The newest entries of a workspace that are read. */
const ENTRIES = 500
/** How long before what other instances logged is read again. */
const KEPT_MS = 10 * 60_000
/** How long a store that could not be read is left alone: the figures only add a line. */
const AFTER_FAILURE_MS = 30_000
/** What is held of all workspaces together, some ten megabytes. */
const MOST_WORKSPACES = 1000
const MOST_ENTRIES = 20_000

export type Learning = {
  /** The figures of a channel's workspace, and of no other. None where the store cannot be read: they only add a line. */
  readonly of: (channel: string) => Promise<readonly Learned[]>
  /** Told of what was kept, so that a new log counts at once. */
  readonly kept: (channel: string, entries: readonly Entry[]) => void
}

type Known = {
  untilMs: number
  /** By channel, message and part: what is read and told of counts once. */
  readonly entries: Map<string, Entry>
  reading: Promise<void>
  /** Null where entries came since it was worked out. */
  learned: readonly Learned[] | null
}

export function learning(store: Pick<Store<Memory>, 'learned'>, nowMs: () => number = Date.now): Learning {
  const known = new Map<string, Known>()
  const add = (to: Known, channel: string, entry: Entry) => {
    to.entries.set(`${channel} ${entry.part} ${entry.messageId}`, entry)
    to.learned = null
  }
  const read = (workspace: string): Known => {
    const one: Known = { untilMs: nowMs() + KEPT_MS, entries: new Map(), reading: Promise.resolve(), learned: null }
    one.reading = store.learned(workspace, LEARNED_KINDS, ENTRIES).then((found) => {
      if (found.ok) for (const { channel, entry } of found.value) add(one, channel, entry)
      else one.untilMs = nowMs() + AFTER_FAILURE_MS
    })
    return one
  }
  const makeRoom = () => {
    let entries = [...known.values()].reduce((sum, one) => sum + one.entries.size, 0)
    for (const [workspace, one] of known) {
      if (known.size < MOST_WORKSPACES && entries <= MOST_ENTRIES) return
      known.delete(workspace)
      entries -= one.entries.size
    }
  }
  return {
    async of(channel) {
      const workspace = workspaceOf(channel)
      let one = known.get(workspace)
      if (!one || one.untilMs <= nowMs()) {
        known.delete(workspace)
        makeRoom()
        one = read(workspace)
        known.set(workspace, one)
      }
      await one.reading
      one.learned ??= learnedFrom([...one.entries.values()])
      return one.learned
    },
    kept(channel, entries) {
      const one = known.get(workspaceOf(channel))
      if (one) for (const entry of entries) if (LEARNED_KINDS.includes(entry.kind)) add(one, channel, entry)
    },
  }
}
