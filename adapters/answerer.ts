/** What answers behind every platform: the pure core over a store, joined with the catalogue's words and the picture maker. */
import path from 'node:path'
import type { Tools } from '../src/answer/brief.ts'
import { fold } from '../src/jobs/fold.ts'
import { emptyMemory, type Memory } from '../src/jobs/memory.ts'
import { platformWords } from '../src/language/platform.ts'
import type { Entry, Message } from '../src/message.ts'
import type { Reply } from '../src/reply.ts'
import type { Settings } from '../src/settings.ts'
import { remindWith } from './answerer-reminders.ts'
import type { Answerer, Backing, BackingOptions, Choices } from './contract.ts'
import { learning } from './learning.ts'
import type { Log } from './logging.ts'
import { memoryRules } from './memory-rules.ts'
import { Keeper } from './stores/keep.ts'
import { openStore } from './stores/open.ts'
import type { Json, Kept, Store } from './stores/store.ts'
import { KEPT_MS, keepTidy } from './tidying.ts'
import { loadTools } from './tools.ts'
import { notKept, type OnBug, type Work, workSafely } from './working.ts'

/** Where values that belong to no channel are kept. */
const SHELL = 'shell:values:kept'

/** The file of the job memory in the data folder. */
export const STORE_FILE = 'jobs.db'

/** @throws where config/ is wrong, naming file, path and what was expected */
export async function createAnswerer(options: BackingOptions): Promise<Backing> {
  const { dataFolder, databaseUrl, log, now = Date.now } = options
  const loaded = loadTools()
  if (!loaded.ok) throw new Error(loaded.message)
  const tools = loaded.value
  const { settings, languages } = tools
  const store: Store<Memory> = await openStore(
    databaseUrl === undefined
      ? { in: 'file', file: path.join(dataFolder, STORE_FILE) }
      : { in: 'postgres', url: databaseUrl },
    memoryRules((_channel, entry) =>
      log.warn({ kind: entry.kind, version: entry.version }, 'an entry was passed over'),
    ),
  )
  const tidying = keepTidy(store, now, log)
  return {
    answerer: answererOver(store, tools, log, now, tidying.heard),
    keep: async (key, json) => void good(await store.put(SHELL, key, json, now() + KEPT_MS)),
    recall: async (key) => good(await store.get(SHELL, key, now())) as string | null,
    words: (language) => platformWords(language, settings.defaults.language),
    languages: [settings.defaults.language, ...languages.codes.filter((code) => code !== settings.defaults.language)],
    choices: choicesOf(settings),
    picture,
    warm: () => warm(tools),
    remind: remindWith(store, tools, log, now),
    close: async () => {
      tidying.stop()
      await store.close()
    },
  }
}

/** The value, where it could be had.
 *  @throws the store's failure, for a caller that cannot go on without */
function good<T>(kept: Kept<T>): T {
  if (kept.ok) return kept.value
  throw new Error(`${kept.failure.code}: ${kept.failure.detail}`)
}

function answererOver(store: Store<Memory>, tools: Tools, log: Log, now: () => number, heard: () => void): Answerer {
  const keeper = new Keeper(store)
  const bug = (error: unknown) => log.error({ stack: error instanceof Error ? error.stack : String(error) }, 'a bug')

  const learned = learning(store, now)

  const answerWith = async (
    channel: string,
    said: Message,
    work: (message: Message, memory: Memory) => Work,
  ): Promise<Reply | null> => {
    heard()
    const message = { ...said, learned: await learned.of(channel) }
    let reply: Reply | null = null
    let forget = false
    let kept: readonly Entry[] = []
    const done = await keeper.answer(channel, message, (memory) => {
      const worked = work(message, memory)
      reply = worked.reply
      kept = worked.entries
      forget = worked.forget === true
      // The record tells what was said; pictures are left out of it, they would be most of the store.
      const { entries, reminders = [], cancels = [] } = worked
      return { reply: { ...worked.reply, files: [] } as unknown as Json, entries, reminders, cancels }
    })
    if (done.failure) log.error(done.failure, 'an answer was not kept')
    if (done.state === 'kept') learned.kept(channel, kept)
    if (done.state === 'already' || reply === null) return null
    if (forget && done.state === 'kept') good(await store.forget(channel))
    return done.state === 'lost' ? notKept(reply, tools) : reply
  }

  return {
    handle: (channel, said) => answerWith(channel, said, (message, memory) => workSafely(message, memory, tools, bug)),
    press: (channel, { about }, pressed) =>
      answerWith(channel, pressed, (message, memory) => workPressed(about, message, memory, tools, bug)),
    async setup(channel) {
      const { talk } = good(await store.load(channel)).memory
      const { defaults } = tools.settings
      const language = talk?.language ?? defaults.language
      const metric = talk?.metric ?? defaults.units === 'metric'
      const { phrases } = tools.languages.locale(language)
      return { language, units: phrases[metric ? 'shell.units-metric' : 'shell.units-imperial'] }
    },
  }
}

/** A button is pressed under its own answer, maybe long after the channel moved on: that message is worked out again, as it
 *  stands by itself, then with what the job knows; what the button says follows on it. The job is left as it is. */
function workPressed(about: string, message: Message, memory: Memory, tools: Tools, onBug: OnBug): Work {
  if (memory.talk?.text === about) return workSafely(message, memory, tools, onBug)
  for (const before of [
    { ...emptyMemory, people: memory.people },
    { ...memory, talk: null, asked: null },
  ]) {
    const again = workSafely({ ...message, text: about }, before, tools, onBug)
    if (!again.reply.ok) continue
    const after = again.entries.reduce(fold, before)
    // "Keep it", "undo": about the job as it is now, with the talk the button stands under.
    const steered = workSafely(message, { ...memory, talk: after.talk, talkBefore: null, asked: null }, tools, onBug)
    if (steered.reply.topic === 'job') return steered
    const { reply, entries } = workSafely(message, after, tools, onBug)
    return { reply, entries: entries.filter((entry) => entry.kind === 'talk') }
  }
  return workSafely(message, memory, tools, onBug)
}

/** A layout, a time and a picture, once, for nobody: they bring in the libraries that are loaded late. */
async function warm(tools: Tools): Promise<void> {
  const message = { id: 'warm', person: 'nobody', now: '2026-01-01T12:00:00Z', zone: null }
  for (const text of ['9x9 18x18 draw it', 'set at 2pm, when can we grout', '10 ft to m']) {
    const { reply } = workSafely({ ...message, text }, emptyMemory, tools, () => {})
    for (const file of reply.files) if (file.media_type === 'image/svg+xml') await picture(file.text)
  }
}

/** What autocomplete offers: the sizes of the default units first. */
function choicesOf({ defaults, materials }: Settings): Choices {
  const { imperial, metric } = defaults.tileSizes
  return {
    sizes: defaults.units === 'metric' ? [...metric, ...imperial] : [...imperial, ...metric],
    materials: Object.values(materials).map((material) => material.name),
  }
}

/** @throws where the renderer is not there: the reply goes out without the picture */
async function picture(svg: string): Promise<Uint8Array> {
  const { pngLater } = await import('./pictures.ts')
  return pngLater(svg)
}
