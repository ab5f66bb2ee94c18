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

type Term = { readonly pattern: RegExp; readonly refused: boolean }
type Cue = { readonly name: string; readonly terms: readonly Term[]; readonly weight: number }
export type CueIndex = { readonly byWord: ReadonlyMap<string, readonly Cue[]>; readonly longest: number }

/** Lower case, no accents, straight quotes, figures apart from signs, single spaces. */
export function plainWords(text: string): string {
  return text
    .slice(0, LONGEST_READ)
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
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
  const byWord = new Map<string, Cue[]>()
  let longest = 0
  for (const [name, cues] of Object.entries(table))
    for (const said of cues) {
      const weight = said.startsWith('^') ? OUTWEIGHS : 0
      const parts = said.replace('^', '').split(' + ')
      if (parts[0]!.startsWith('!')) throw new Error(`the cue "${said}" of ${name} begins with a refusal`)
      const cue = { name, terms: parts.map(termOf), weight }
      for (const alternative of parts[0]!.split('|')) {
        const word = alternative.replace('$', '').split(' ')[0]!
        longest = Math.max(longest, word.length)
        byWord.set(word, [...(byWord.get(word) ?? []), cue])
      }
    }
  return { byWord, longest }
}

/** Every meaning that the words point to, best first.
 *  @param plain from plainWords */
export function matchCues(index: CueIndex, plain: string): CueHit[] {
  const best = new Map<string, number>()
  for (const cue of candidates(index, plain)) {
    const score = scoreOf(cue, plain)
    if (score > (best.get(cue.name) ?? 0)) best.set(cue.name, score)
  }
  return [...best].map(([name, score]) => ({ name, score })).sort((a, b) => b.score - a.score)
}

/** The meanings in a table, by name, without their order. */
export const namesIn = (index: CueIndex, plain: string): string[] => matchCues(index, plain).map((hit) => hit.name)

function candidates(index: CueIndex, plain: string): Set<Cue> {
  const found = new Set<Cue>()
  for (const word of plain.split(' '))
    for (let length = 1; length <= Math.min(word.length, index.longest); length += 1)
      for (const cue of index.byWord.get(word.slice(0, length)) ?? []) found.add(cue)
  return found
}

function scoreOf(cue: Cue, plain: string): number {
  let score = cue.weight
  for (const { pattern, refused } of cue.terms) {
    const hit = pattern.exec(plain)
    if (refused) {
      if (hit) return 0
    } else {
      if (!hit) return 0
      score += 2 + hit[0].length / 10
    }
  }
  return score
}

function termOf(said: string): Term {
  const refused = said.startsWith('!')
  const alternatives = (refused ? said.slice(1) : said).split('|').map((alternative) => {
    const whole = alternative.endsWith('$')
    const text = (whole ? alternative.slice(0, -1) : alternative).replace(/[.*+?^{}()[\]\\/]/g, '\\$&')
    return whole ? `${text}(?![\\p{L}\\p{N}])` : text
  })
  return { pattern: new RegExp(`(?<![\\p{L}\\p{N}])(?:${alternatives.join('|')})`, 'u'), refused }
}
