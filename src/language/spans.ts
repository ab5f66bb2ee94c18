/** Times told in words without a figure of their own: "an hour and a half", "half past 2", "every day". */
import type { Heard } from './heard.ts'

/** Patterns over plain text with what they mean in minutes. */
type Minutes = readonly (readonly [pattern: string, minutes: number])[]

/** How often something comes again: each day, every other one, each working day or week, or after the span that is told. */
export type Every = 'day' | 'other-day' | 'workday' | 'week' | 'span'

/** A locale's words for such times. */
export type SpanWords = {
  /** A span in words alone: "an hour". */
  readonly alone: Minutes
  /** What is added right after hours: "and a half". */
  readonly added: Minutes
  /** Right before the hour of a clock: "half past". */
  readonly beforeHour: Minutes
  /** Right after it: "menos cuarto". */
  readonly afterHour: Minutes
  readonly every: readonly (readonly [pattern: string, every: Every])[]
  /** Words of a time that no word list knows. */
  readonly timely: string
}

type Compiled = { readonly [K in keyof SpanWords]: readonly (readonly [RegExp, never])[] }
const compiled = new WeakMap<SpanWords, Compiled>()

function compiledOf(words: SpanWords): Compiled {
  let found = compiled.get(words)
  if (!found) {
    const table = (rows: readonly (readonly [string, unknown])[], start = '', end = '') =>
      rows.map(([pattern, means]) => [new RegExp(`${start}(?:${pattern})${end}`), means as never] as const)
    found = {
      alone: table(words.alone, '(?<![\\d/] ?)\\b', '\\b'),
      added: table(words.added, '^ ?,? ?', '\\b'),
      beforeHour: table(words.beforeHour, '\\b', ' $'),
      afterHour: table(words.afterHour, '^ ', '\\b'),
      every: table(words.every, '\\b', '\\b'),
      timely: table([[words.timely, null]], '\\b', '\\b'),
    }
    compiled.set(words, found)
  }
  return found
}

type Found<T> = { readonly means: T; readonly from: number; readonly to: number }

function first<T>(table: readonly (readonly [RegExp, never])[], text: string): Found<T> | null {
  for (const [pattern, means] of table) {
    const at = pattern.exec(text)
    if (at) return { means, from: at.index, to: at.index + at[0].length }
  }
  return null
}

const tableOf = (heard: Heard): Compiled => compiledOf(heard.reader.lexicon.locale.times.spans)

/** How often a message wants something, and where that stands in its plain text. Null for once. */
export const everyIn = (heard: Heard): Found<Every> | null => first(tableOf(heard).every, heard.plain.text)

/** The first span of a message, "1 hour 30 min" and "an hour and a half" in one; later ones belong to what it is
 *  about. [h] */
export function spanIn(heard: Heard): { readonly h: number; readonly from: number; readonly to: number } | null {
  const { alone, added } = tableOf(heard)
  const { text } = heard.plain
  const spans = heard.quantities
    .filter((q) => q.dimension === 'time' && q.si !== null)
    .map((q) => ({ h: q.si as number, from: heard.tokens[q.first].from, to: heard.tokens[q.last].to }))
  const words = first<number>(alone, text)
  if (words && !spans.some((span) => span.from < words.to && span.to > words.from))
    spans.push({ h: words.means / 60, from: words.from, to: words.to })
  const [one, two] = spans.toSorted((a, b) => a.from - b.from)
  if (!one) return null
  const more = one.h >= 1 ? first<number>(added, text.slice(one.to)) : null
  if (more) return { h: one.h + more.means / 60, from: one.from, to: one.to + more.to }
  const joined = two !== undefined && two.h < one.h && text.slice(one.to, two.from).trim().length <= 3
  return joined ? { h: one.h + two.h, from: one.from, to: two.to } : one
}

type Clock = { readonly from: number; readonly to: number; readonly text: string }

/** "half past 2" as "2:30", with the place of its words in the plain text. */
export function spokenClocks(heard: Heard): Clock[] {
  const { beforeHour, afterHour } = tableOf(heard)
  const { text } = heard.plain
  return heard.tokens.flatMap((token): Clock[] => {
    if (token.kind !== 'number' || !Number.isInteger(token.value) || token.value < 1 || token.value > 12) return []
    const before = first<number>(beforeHour, text.slice(0, token.from))
    const after = before ? null : first<number>(afterHour, text.slice(token.to))
    const minutes = (before ?? after)?.means
    if (minutes === undefined) return []
    const hour = minutes < 0 ? ((token.value + 10) % 12) + 1 : token.value
    const clock = `${hour}:${String((minutes + 60) % 60).padStart(2, '0')}`
    return [{ from: before ? before.from : token.from, to: after ? token.to + after.to : token.to, text: clock }]
  })
}

/** Where the times told in words stand in the plain text. */
export function timePlaces(heard: Heard): { readonly from: number; readonly to: number }[] {
  const every = everyIn(heard)
  const span = spanIn(heard)
  const timely = first(tableOf(heard).timely, heard.plain.text)
  return [...spokenClocks(heard), ...(every ? [every] : []), ...(span ? [span] : []), ...(timely ? [timely] : [])]
}
