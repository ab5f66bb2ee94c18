/** Cues: which words of a message point to a meaning. A locale holds them as data; this file reads them.
 *
 *  A cue is terms joined by ` + `; all must be there, in any order. A term is alternatives joined by `|`, each a word or
 *  a phrase that matches from its first letter on ("stagger" matches "staggered"); `$` at its end asks for the whole
 *  word. A term that begins with `!` must not be there. A cue that begins with `^` outweighs others. */

export type CueTable = Readonly<Record<string, readonly string[]>>

/** A meaning that a message's words point to; the higher the score the more of its words were there. */
export type CueHit = { readonly name: string; readonly score: number }

/** What `^` adds to a score. */
const OUTWEIGHS = 3

/** What a term may say; `whole`: nothing may follow within the word. */
type Alternative = { readonly said: string; readonly whole: boolean }
type Term = { readonly alternatives: readonly Alternative[]; readonly refused: boolean }
type Cue = { readonly name: string; readonly terms: readonly Term[]; readonly weight: number }
export type CueIndex = {
  /** First words of cues by their first letter, each with its cues. */
  readonly starts: ReadonlyMap<string, readonly { readonly start: string; readonly cues: readonly Cue[] }[]>
  /** The same by whole words of messages, as they are met; bounded. */
  readonly met: Map<string, readonly Cue[]>
}

/** Lower case, no accents, straight quotes, figures apart from signs, single spaces. */
export function plainWords(text: string): string {
  const short = text.slice(0, LONGEST_READ)
  // A byte is enough for most messages; accents are taken off only where there are any.
  const bare = /[^\x20-\x7e]/.test(short) ? short.normalize('NFD').replace(/[\u0300-\u036f]/g, '') : short
  return bare
    .toLowerCase()
    .replace(/[‘’′`´]/g, "'")
    .replace(/[“”″]/g, '"')
    .replace(/%/g, ' % ')
    .replace(/[^\p{L}\p{N}%#'"/.<>=-]+/gu, ' ')
    .replace(/[.](?!\d)/g, ' ')
    .replace(/'(?=[a-z])/g, '')
    .replace(/(?<=[a-z])-(?=[a-z])/g, ' ')
    .trim()
}

/** Enough for any question of a crew. */
const LONGEST_READ = 2000

/** Compiles a table. The first term of each cue indexes it, so that a message tries only cues whose words it has.
 *  @throws on a cue whose first term is refused: a bug in the table */
export function indexCues(table: CueTable): CueIndex {
  const starts = new Map<string, Cue[]>()
  for (const [name, cues] of Object.entries(table))
    for (const said of cues) {
      const weight = said.startsWith('^') ? OUTWEIGHS : 0
      const parts = said.replace('^', '').split(' + ')
      if (parts[0]!.startsWith('!')) throw new Error(`the cue "${said}" of ${name} begins with a refusal`)
      const cue = { name, terms: parts.map(termOf), weight }
      for (const alternative of parts[0]!.split('|')) {
        const start = alternative.replace('$', '').split(' ')[0]!
        const known = starts.get(start)
        if (!known) starts.set(start, [cue])
        else if (!known.includes(cue)) known.push(cue)
      }
    }
  const byLetter = new Map<string, { start: string; cues: Cue[] }[]>()
  for (const [start, cues] of starts) byLetter.set(start[0]!, [...(byLetter.get(start[0]!) ?? []), { start, cues }])
  return { starts: byLetter, met: new Map() }
}

/** A text as cues are looked for in it.
 *  @param plain from plainWords */
export type Wording = { readonly plain: string; readonly words: readonly string[] }
export const wordingOf = (plain: string): Wording => ({ plain, words: plain.split(' ') })

const NOTHING: readonly CueHit[] = []

/** Every meaning that the words point to, best first. */
export function matchCues(index: CueIndex, { plain, words }: Wording): readonly CueHit[] {
  const tried = new Set<Cue>()
  const best = new Map<string, number>()
  for (const word of words)
    for (const cue of cuesOf(index, word)) {
      if (tried.has(cue)) continue
      tried.add(cue)
      const score = scoreOf(cue, plain)
      if (score > (best.get(cue.name) ?? 0)) best.set(cue.name, score)
    }
  if (best.size === 0) return NOTHING
  return [...best].map(([name, score]) => ({ name, score })).sort((a, b) => b.score - a.score)
}

/** The meanings in a table, by name, without their order. */
export const namesIn = (index: CueIndex, wording: Wording): string[] => matchCues(index, wording).map((hit) => hit.name)

/** Words to mend slips of the thumb by. */
export type Vocabulary = {
  readonly byLetter: ReadonlyMap<string, readonly string[]>
  readonly mended: Map<string, string>
}

/** The trade's words that a slip may be of. */
export function vocabularyOf(words: readonly string[]): Vocabulary {
  const byLetter = new Map<string, string[]>()
  for (const word of words) byLetter.set(word[0]!, [...(byLetter.get(word[0]!) ?? []), word])
  return { byLetter, mended: new Map() }
}

const LONG_WORD = 9
const MOST_KEPT = 4000

/** The text with words that nothing knows turned into the one word they are a slip of. */
export function mend(vocabulary: Vocabulary, plain: string): string {
  return plain.replace(/(?<![\p{L}\p{N}])\p{L}{5,}(?![\p{L}\p{N}])/gu, (word) => {
    const known = vocabulary.mended.get(word)
    if (known !== undefined) return known
    const meant = meantBy(vocabulary, word)
    if (vocabulary.mended.size < MOST_KEPT) vocabulary.mended.set(word, meant)
    return meant
  })
}

function meantBy({ byLetter }: Vocabulary, word: string): string {
  const near = byLetter.get(word[0]!) ?? []
  if (near.some((known) => word.startsWith(known) || known.startsWith(word))) return word
  const reach = word.length >= LONG_WORD ? 2 : 1
  let best = word
  let least = reach + 1
  for (const known of near) {
    if (Math.abs(known.length - word.length) > reach) continue
    const slips = slipsBetween(word, known, least)
    if (slips < least) [best, least] = [known, slips]
  }
  return best
}

/** Letters put in, left out, changed or swapped with the next; counted up to a limit. */
function slipsBetween(a: string, b: string, limit: number): number {
  let before: number[] = []
  let last = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i]
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1]
      let slips = Math.min(last[j - 1]! + (same ? 0 : 1), last[j]! + 1, row[j - 1]! + 1)
      if (!same && i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        slips = Math.min(slips, before[j - 2]! + 1)
      row.push(slips)
    }
    if (Math.min(...row) >= limit) return limit
    before = last
    last = row
  }
  return last.at(-1)!
}

/** The cues that a word may begin. */
function cuesOf({ starts, met }: CueIndex, word: string): readonly Cue[] {
  const known = met.get(word)
  if (known) return known
  const begun = (starts.get(word[0]!) ?? []).filter(({ start }) => word.startsWith(start)).flatMap(({ cues }) => cues)
  if (met.size >= MOST_KEPT) met.clear()
  met.set(word, begun)
  return begun
}

function scoreOf(cue: Cue, plain: string): number {
  let score = cue.weight
  for (const { alternatives, refused } of cue.terms) {
    const length = lengthFound(alternatives, plain)
    if (refused ? length > 0 : length === 0) return 0
    if (!refused) score += 2 + length / 10
  }
  return score
}

/** How long the alternative is that stands first in the text; 0 where none does. */
function lengthFound(alternatives: readonly Alternative[], plain: string): number {
  let first = plain.length
  let length = 0
  for (const { said, whole } of alternatives) {
    const at = placeOf(said, whole, plain)
    if (at >= 0 && at < first) {
      first = at
      length = said.length
    }
  }
  return length
}

/** Where a word or phrase begins in the text at the beginning of a word; -1 where it does not. */
function placeOf(said: string, whole: boolean, plain: string): number {
  let at = plain.indexOf(said)
  while (at >= 0 && (isInWord(plain, at - 1) || (whole && isInWord(plain, at + said.length))))
    at = plain.indexOf(said, at + 1)
  return at
}

const LETTER_OR_FIGURE = /^[\p{L}\p{N}]$/u

function isInWord(text: string, at: number): boolean {
  const code = text.charCodeAt(at)
  if (code < 0x80) return (code >= 97 && code <= 122) || (code >= 48 && code <= 57)
  return code >= 0x80 && LETTER_OR_FIGURE.test(text[at]!)
}

function termOf(said: string): Term {
  const refused = said.startsWith('!')
  const alternatives = (refused ? said.slice(1) : said).split('|').map((alternative) => {
    const whole = alternative.endsWith('$')
    return { said: whole ? alternative.slice(0, -1) : alternative, whole }
  })
  return { alternatives, refused }
}
