/** A small backing for tests: echoes what it hears, keeps in memory, and remembers which messages it answered. */
import type { Backing, Pressed } from '../../adapters/contract.ts'
import type { Message } from '../../src/message.ts'
import type { Reply } from '../../src/reply.ts'
import { testWords } from './words.ts'

export const LABELS = { assumed: 'Assumed:', sources: 'Sources:', warning: 'Caution:' }

/** A reply with nothing but its answer, and whatever is given over it. */
export const replyOf = (over: Partial<Reply> = {}): Reply => ({
  ok: true,
  topic: 'tile',
  language: 'en',
  answer: '12 boxes',
  details: [],
  assumed: [],
  warnings: [],
  sources: [],
  values: {},
  files: [],
  offers: [],
  problem: null,
  labels: LABELS,
  ...over,
})

export type Heard = { readonly channel: string; readonly message: Message; readonly pressed?: Pressed }

export type TestBacking = Backing & {
  readonly heard: Heard[]
  /** What keep holds: hand it to another backing for a restart. */
  readonly kept: Map<string, string>
  readonly answered: Set<string>
}

export type TestBackingOptions = {
  readonly answer?: (message: Message, channel: string) => Reply | Promise<Reply>
  readonly kept?: Map<string, string>
  readonly answered?: Set<string>
  /** ms that looking something up takes. */
  readonly recallMs?: number
  readonly picture?: (svg: string) => Promise<Uint8Array>
}

export const PNG = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0])

export function testBacking(options: TestBackingOptions = {}): TestBacking {
  const heard: Heard[] = []
  const kept = options.kept ?? new Map<string, string>()
  const answered = options.answered ?? new Set<string>()
  const answer = options.answer ?? ((message: Message) => replyOf({ answer: `heard: ${message.text}` }))

  const once = async (channel: string, message: Message, pressed?: Pressed): Promise<Reply | null> => {
    const id = `${channel}/${message.id}`
    if (answered.has(id)) return null
    heard.push(pressed ? { channel, message, pressed } : { channel, message })
    const reply = await answer(message, channel)
    answered.add(id)
    return reply
  }

  return {
    heard,
    kept,
    answered,
    answerer: {
      handle: (channel, message) => once(channel, message),
      press: (channel, pressed, message) => once(channel, message, pressed),
      setup: async () => ({ language: 'en', units: 'feet and inches' }),
    },
    keep: async (key, json) => void kept.set(key, json),
    recall: async (key) => {
      if (options.recallMs) await new Promise((resolve) => setTimeout(resolve, options.recallMs))
      return kept.get(key) ?? null
    },
    words: () => testWords,
    languages: ['en'],
    choices: { sizes: ['18x18', '8x48'], materials: ['grey mortar', 'fine grout'] },
    picture: options.picture ?? (async () => PNG),
    close: async () => {},
  }
}

/** Polls until the check gives something; fails with what it waited for. */
export async function until<T>(
  what: string,
  check: () => T | undefined | null | false,
  timeoutMs = 10_000,
): Promise<T> {
  const end = performance.now() + timeoutMs
  for (;;) {
    const found = check()
    if (found) return found
    if (performance.now() > end) throw new Error(`waited ${timeoutMs} ms for ${what}`)
    await new Promise((resolve) => setTimeout(resolve, 5))
  }
}
