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

/** What a term may say; `whole`: nothing may follow within the word. Many cues share one, so it remembers the text it was last
 *  looked for in, and where it stood. */
type Alternative = { readonly said: string; readonly whole: boolean; lookedIn: Wording | null; at: number }
type Term = { readonly alternatives: readonly Alternative[]; readonly refused: boolean }
/** Its terms are read when a message first has a word that it may begin with: most never do. */
type Cue = { readonly table: string; readonly name: string; readonly said: string; terms: readonly Term[] | null }

/** Tables of cues, found by their words. */
export type CueBook = {
  /** First words of cues by their first letter, each with its cues. */
  readonly starts: ReadonlyMap<string, readonly { readonly start: string; readonly cues: readonly Cue[] }[]>
  /** The same by words that messages had; bounded. */
  readonly met: Map<string, readonly Cue[]>
  readonly alternatives: Map<string, Alternative>
}

/** A text whose cues are looked for. */
type Wording = { readonly plain: string }

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

/** Makes a book of tables. The first term of each cue indexes it, so that a message tries only cues whose words it has.
 *  @throws on a cue whose first term is refused: a bug in the table */
export function cueBook(tables: Readonly<Record<string, CueTable>>): CueBook {
  const starts = new Map<string, Cue[]>()
  for (const [table, meanings] of Object.entries(tables))
    for (const [name, cues] of Object.entries(meanings))
      for (const said of cues) {
        const cue = { table, name, said, terms: null }
        for (const start of startsOf(said)) {
          const known = starts.get(start)
          if (!known) starts.set(start, [cue])
          else if (known.at(-1) !== cue) known.push(cue)
        }
      }
  const byLetter = new Map<string, { start: string; cues: Cue[] }[]>()
  for (const [start, cues] of starts) {
    const same = byLetter.get(start[0]!)
    if (same) same.push({ start, cues })
    else byLetter.set(start[0]!, [{ start, cues }])
  }
  return { starts: byLetter, met: new Map(), alternatives: new Map() }
}

/** The first words of a cue's first term. */
function startsOf(said: string): string[] {
  const plus = said.indexOf(' + ')
  const first = said.slice(said.startsWith('^') ? 1 : 0, plus < 0 ? said.length : plus)
  if (first.startsWith('!')) throw new Error(`the cue "${said}" begins with a refusal`)
  return first.split('|').map((alternative) => alternative.replace('$', '').split(' ')[0]!)
}

export type CuesFound = {
  /** Every meaning in a table that the words point to, best first. */
  hits(table: string): readonly CueHit[]
  /** Their names, in the same order. */
  names(table: string): readonly string[]
}

const NOTHING: readonly never[] = []

/** The cues of a text; each table is looked at when it is first asked for.
 *  @param plain from plainWords */
export function cuesIn(book: CueBook, plain: string): CuesFound {
  const wording: Wording = { plain }
  const found = new Map<string, readonly CueHit[]>()
  let begun: ReadonlyMap<string, ReadonlySet<Cue>> | null = null
  const hits = (table: string): readonly CueHit[] => {
    const known = found.get(table)
    if (known) return known
    begun ??= cuesBegun(book, plain)
    const cues = begun.get(table)
    const hit = cues ? scored(book, cues, wording) : NOTHING
    found.set(table, hit)
    return hit
  }
  return { hits, names: (table) => hits(table).map((hit) => hit.name) }
}

function scored(book: CueBook, cues: Iterable<Cue>, wording: Wording): readonly CueHit[] {
  const best = new Map<string, number>()
  for (const cue of cues) {
    const score = scoreOf(book, cue, wording)
    if (score > (best.get(cue.name) ?? 0)) best.set(cue.name, score)
  }
  if (best.size === 0) return NOTHING
  return [...best].map(([name, score]) => ({ name, score })).sort((a, b) => b.score - a.score)
}

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

/** The cues that the words of a text may begin, by their table. */
function cuesBegun(book: CueBook, plain: string): ReadonlyMap<string, ReadonlySet<Cue>> {
  const begun = new Map<string, Set<Cue>>()
  for (const word of plain.split(' '))
    for (const cue of cuesOf(book, word)) {
      const same = begun.get(cue.table)
      if (same) same.add(cue)
      else begun.set(cue.table, new Set([cue]))
    }
  return begun
}

function cuesOf({ starts, met }: CueBook, word: string): readonly Cue[] {
  const known = met.get(word)
  if (known) return known
  const begun = (starts.get(word[0]!) ?? []).filter(({ start }) => word.startsWith(start)).flatMap(({ cues }) => cues)
  if (met.size >= MOST_KEPT) met.clear()
  met.set(word, begun)
  return begun
}

function scoreOf(book: CueBook, cue: Cue, wording: Wording): number {
  cue.terms ??= termsOf(book, cue.said)
  let score = cue.said.startsWith('^') ? OUTWEIGHS : 0
  for (const { alternatives, refused } of cue.terms) {
    const length = lengthFound(alternatives, wording)
    if (refused ? length > 0 : length === 0) return 0
    if (!refused) score += 2 + length / 10
  }
  return score
}

/** How long the alternative is that stands first in the text; 0 where none does. */
function lengthFound(alternatives: readonly Alternative[], wording: Wording): number {
  let first = wording.plain.length
  let length = 0
  for (const alternative of alternatives) {
    if (alternative.lookedIn !== wording) {
      alternative.lookedIn = wording
      alternative.at = placeOf(alternative, wording.plain)
    }
    const { at, said } = alternative
    if (at >= 0 && at < first) {
      first = at
      length = said.length
    }
  }
  return length
}

/** Where a word or phrase begins in the text at the beginning of a word; -1 where it does not. */
function placeOf({ said, whole }: Alternative, plain: string): number {
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

const termsOf = (book: CueBook, said: string): Term[] =>
  said
    .slice(said.startsWith('^') ? 1 : 0)
    .split(' + ')
    .map((term) => {
      const refused = term.startsWith('!')
      const alternatives = (refused ? term.slice(1) : term).split('|').map((one) => alternativeOf(book, one))
      return { alternatives, refused }
    })

function alternativeOf({ alternatives }: CueBook, written: string): Alternative {
  const known = alternatives.get(written)
  if (known) return known
  const whole = written.endsWith('$')
  const made = { said: whole ? written.slice(0, -1) : written, whole, lookedIn: null, at: -1 }
  alternatives.set(written, made)
  return made
}
