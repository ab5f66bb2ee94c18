/** Undo: which change, talk or job put aside it takes back, and the memory without it. */
import type { Entry } from '../message.ts'
import { by, type Change, type Job, reverted, type UndoBody, type UseBody, withChange } from './job.ts'
import type { Memory } from './memory.ts'
import { moved } from './parked.ts'

/** What undo would do now: the job's last change, the talk's, the job put aside, or nothing. */
export function undoable(memory: Memory): 'change' | 'talk' | 'parked' | null {
  const change = memory.job.changes.findLast(stillStands)
  const { talk, talkBefore, talkMessage } = memory
  if (talkBefore !== null && talk !== null && talk.lastSaid.length > 0 && talkMessage !== change?.messageId)
    return 'talk'
  if (change) return 'change'
  return memory.parked.length > 0 ? 'parked' : null
}

/** The undo that the next entry would be, with what it takes back of the log. */
export function undoEntry(memory: Memory): { readonly kind: 'undo'; readonly version: 1; readonly body: UndoBody } {
  const change = undoable(memory) === 'change' ? memory.job.changes.findLast(stillStands) : undefined
  const uses = memory.job.changes.flatMap((c) =>
    c.is === 'use' && stillStands(c) && c.messageId === change?.messageId ? [c.id] : [],
  )
  return { kind: 'undo', version: 1, body: uses.length > 0 ? { uses } : {} }
}

const stillStands = (change: Change): boolean => change.is !== 'undo' && !change.undone

export function undone(memory: Memory, entry: Entry): Memory {
  const what = undoable(memory)
  if (what === null) return memory
  if (what === 'talk') return { ...memory, talk: memory.talkBefore, talkBefore: null, talkMessage: null, asked: null }
  if (what === 'parked') {
    const last = memory.parked[memory.parked.length - 1]
    return moved(memory, { act: 'open', n: last.job.n }, entry.at)
  }
  const { messageId } = memory.job.changes.findLast(stillStands) as Change
  const base = { ...memory, talkBefore: null, talkMessage: null, asked: null }
  const without = memory.job.changes.reduceRight(
    (m, change) => (stillStands(change) && change.messageId === messageId ? withoutChange(m, change) : m),
    base as Memory,
  )
  const changes = memory.job.changes.map((c) =>
    stillStands(c) && c.messageId === messageId ? { ...c, ...takenUse(c, memory.job), undone: true } : c,
  )
  return { ...without, job: withChange({ ...without.job, changes }, { ...by(entry), is: 'undo' }) }
}

/** What a log entry told, for the history, once it is taken back. */
function takenUse(change: Change, job: Job): { readonly use?: UseBody } {
  const use = change.is === 'use' ? job.uses.find(({ id }) => id === change.id) : undefined
  if (use === undefined) return {}
  const { id: _i, at: _a, person: _p, personName: _n, messageId: _m, ...told } = use
  return { use: told }
}

function withoutChange(memory: Memory, change: Change): Memory {
  const { job, talk } = memory
  switch (change.is) {
    case 'facts':
      return {
        ...memory,
        talk: talk && { ...talk, facts: reverted(talk.facts, change.keys, change.was) },
        facts: reverted(memory.facts, change.keys, change.was),
      }
    case 'use':
      return { ...memory, job: { ...job, uses: job.uses.filter((use) => use.id !== change.id) } }
    case 'reading':
      return { ...memory, job: { ...job, readings: job.readings.filter((r) => r.id !== change.id) } }
    case 'point': {
      const others = job.points.filter((point) => point.name !== change.name)
      return { ...memory, job: { ...job, points: change.was ? [...others, change.was] : others } }
    }
    case 'undo':
      return memory
  }
}
