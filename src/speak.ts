/** From what a topic told, or a problem, to the reply in the asker's words and units. */

import { csvText } from './core/csv.ts'
import { amountText, type Style } from './language/format.ts'
import type { Languages } from './language/languages.ts'
import { phraseText, problemText } from './language/tell.ts'
import type { Message } from './message.ts'
import type { Phrase } from './phrase.ts'
import { say } from './phrase.ts'
import { svgOfPage } from './pictures/page.ts'
import { svgOf } from './pictures/svg.ts'
import type { Problem } from './problem.ts'
import type { Reply, ReplyFile, Topic } from './reply.ts'
import type { Sketch } from './topics/picture.ts'
import type { Cell, PageSketch, Source, Table, Told } from './topics/topic.ts'

export type Speaker = { readonly language: string; readonly style: Style }

export function speakerOf(
  languages: Languages,
  language: string,
  metric: boolean,
  message: Message,
  zone: string | null,
): Speaker {
  const { intl, separators, phrases } = languages.locale(language)
  return { language, style: { intl, separators, metric, now: message.now, zone, phrases } }
}

const labels = (speaker: Speaker): Reply['labels'] => ({
  assumed: phraseText(say('label.assumed'), speaker.style),
  sources: phraseText(say('label.sources'), speaker.style),
  warning: phraseText(say('label.warning'), speaker.style),
})

/** Sources that only say where a figure is from are told in the crew's language; names of published texts stay as they are. */
const SAID_SOURCES: readonly [start: RegExp, key: string][] = [
  [/^common practice/, 'source.practice'],
  [/^generic figures/, 'source.generic'],
  [/^(?:trade knowledge, )?from memory/, 'source.memory'],
  [/^[^,:;(]+(?:, [^,:;(]+)?[,;] from memory$/, 'source.memory'],
  [/^density from memory/, 'source.memory'],
  [/^geometry/, 'source.geometry'],
  [/^judgement/, 'source.judgement'],
  [/^the product's data sheet/, 'source.sheet'],
]

/** The source's name; what it says stands in the config and in the workings. */
const shortName = (text: string): string => text.split(/[:;]/)[0]

const saidKeys = new Map<string, string | null>()

/** The phrase that tells a source, or null where it is told by its name. Sources stand in config/ and code, so they are few. */
function saidKeyOf(text: string): string | null {
  const known = saidKeys.get(text)
  if (known !== undefined) return known
  const key = SAID_SOURCES.find(([start]) => start.test(text))?.[1] ?? null
  saidKeys.set(text, key)
  return key
}

function sourceText(source: Source, speaker: Speaker): string {
  const key = saidKeyOf(source.text)
  const name = key
    ? phraseText(say(key), speaker.style)
    : source.edition
      ? `${shortName(source.text)} (${source.edition})`
      : shortName(source.text)
  if (source.memory) return phraseText(say('source.from-memory', { name: { is: 'quote', text: name } }), speaker.style)
  return source.reported
    ? phraseText(say('source.reported', { name: { is: 'quote', text: name } }), speaker.style)
    : name
}

export const unique = (list: readonly string[]): string[] => [...new Set(list)]

export function toldReply(told: Told, notes: readonly Phrase[], speaker: Speaker): Reply {
  const text = (phrase: Phrase): string => phraseText(phrase, speaker.style)
  const values: Record<string, number | string> = {}
  for (const [key, value] of Object.entries(told.values ?? {}))
    if (typeof value === 'string' || (typeof value === 'number' && Number.isFinite(value))) values[key] = value
  return {
    ok: true,
    topic: told.topic,
    language: speaker.language,
    answer: text(told.answer),
    details: (told.details ?? []).map(text),
    assumed: unique([...notes, ...(told.assumed ?? [])].map(text)),
    warnings: unique((told.warnings ?? []).map(text)),
    sources: unique((told.sources ?? []).map((s) => sourceText(s, speaker))),
    values,
    files: [
      ...(told.files ?? []),
      ...(told.drawings ?? []).map((sketch) => pictureFile(sketch, text)),
      ...(told.pages ?? []).map((sketch) => pageFile(sketch, speaker)),
      ...(told.tables ?? []).map((table) => tableFile(table, speaker)),
    ],
    offers: (told.offers ?? []).map((id) => ({
      id,
      label: text(say(`offer.${id}`)),
      say: text(say(`offer.${id}.say`)),
    })),
    problem: null,
    labels: labels(speaker),
  }
}

/** A drawing in the crew's words, as SVG; adapters make the PNG. */
const pictureFile = (sketch: Sketch, text: (phrase: Phrase) => string): ReplyFile => ({
  name: sketch.name,
  media_type: 'image/svg+xml',
  text: svgOf(sketch.draw(text), sketch.theme),
  alt: text(sketch.alt),
})

/** Files are read later: their instants carry the whole date. */
const keptStyle = ({ style }: Speaker): Style => ({ ...style, dated: true })

/** A page in the crew's words, as SVG; adapters make the PNG. */
function pageFile({ name, alt, page }: PageSketch, speaker: Speaker): ReplyFile {
  const style = keptStyle(speaker)
  const text = svgOfPage(page((phrase) => phraseText(phrase, style)))
  return { name, media_type: 'image/svg+xml', text, alt: phraseText(alt, speaker.style) }
}

/** A table as CSV in the crew's words. */
function tableFile({ name, head, rows }: Table, speaker: Speaker): ReplyFile {
  const style = keptStyle(speaker)
  const cell = (c: Cell): string | number | null =>
    c === null || typeof c === 'number' ? c : 'key' in c ? phraseText(c, style) : amountText(c, style)
  return { name, media_type: 'text/csv', text: csvText([head, ...rows].map((row) => row.map(cell))) }
}

export function problemReply(problem: Problem, topic: Topic, speaker: Speaker): Reply {
  const said = problemText(problem, speaker.style)
  const message = said.charAt(0).toLocaleUpperCase(speaker.style.intl) + said.slice(1)
  return {
    ok: false,
    topic,
    language: speaker.language,
    answer: message,
    details: [],
    assumed: [],
    warnings: [],
    sources: [],
    values: {},
    files: [],
    offers: [],
    problem: { code: problem.code, message, at: problem.at },
    labels: labels(speaker),
  }
}

/** The whole reply as plain text: the answer first, cautions and assumptions after, one line each. */
export function replyText(reply: Reply): string {
  const lines = [reply.answer, ...reply.details]
  for (const warning of reply.warnings) lines.push(`${reply.labels.warning} ${warning}`)
  if (reply.assumed.length > 0) lines.push(`${reply.labels.assumed} ${reply.assumed.join('; ')}`)
  if (reply.sources.length > 0) lines.push(`${reply.labels.sources} ${reply.sources.join('; ')}`)
  return lines.join('\n')
}
