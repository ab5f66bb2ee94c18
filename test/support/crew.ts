/** A channel to talk to in tests: messages in, replies out, memory folded between. The clock stands still. */
import { loadTools } from '../../adapters/tools.ts'
import { type Work, work } from '../../adapters/working.ts'
import { fold } from '../../src/jobs/fold.ts'
import type { Learned } from '../../src/jobs/learned.ts'
import { emptyMemory, type Memory } from '../../src/jobs/memory.ts'
import type { Entry, Photo } from '../../src/message.ts'
import type { Reply } from '../../src/reply.ts'
import { NOW } from './now.ts'

const loaded = loadTools()
if (!loaded.ok) throw new Error(loaded.message)
export const tools = loaded.value

export { NOW }

export class Crew {
  memory: Memory = emptyMemory
  /** What the shell hands in of earlier jobs. */
  learned: readonly Learned[] = []
  /** All that was to be kept, sent later, or not sent, so far. */
  readonly entries: Entry[] = []
  last: Work | null = null
  private said = 0

  say(
    text: string,
    options: { now?: string; person?: string; zone?: string | null; photos?: readonly Photo[] } = {},
  ): Reply {
    this.said++
    const message = {
      text,
      id: `m${this.said}`,
      person: options.person ?? 'lead',
      now: options.now ?? NOW,
      zone: options.zone ?? null,
      ...(options.photos ? { photos: options.photos } : {}),
    }
    this.last = work({ ...message, learned: this.learned }, this.memory, tools)
    const { reply, entries } = this.last
    this.memory = entries.reduce(fold, this.memory)
    this.entries.push(...entries)
    return reply
  }
}

/** One message in a channel that knows nothing. */
export const ask = (text: string, options: { now?: string } = {}): Reply => new Crew().say(text, options)
