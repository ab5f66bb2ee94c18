/** Number words become numbers: "five", "twenty four", "three eighths", "two and a half", "a hundred sixty". */
import type { NumberToken, NumberWriting, Token } from './tokens.ts'

const own = (table: Readonly<Record<string, number>>, key: string): number | undefined =>
  Object.hasOwn(table, key) ? table[key] : undefined

const wordAt = (tokens: readonly Token[], i: number): string => {
  const token = tokens[i]
  return token?.kind === 'word' ? token.text : ''
}

export function spellOut(tokens: readonly Token[], writing: NumberWriting): Token[] {
  const out: Token[] = []
  let i = 0
  while (i < tokens.length) {
    if (writing.partBehindNoun && addPartBehindNoun(tokens, i, out, writing)) {
      i += 2
      continue
    }
    const read = spelledNumber(tokens, i, writing)
    out.push(read ? read.token : tokens[i])
    i = read ? read.next : i + 1
  }
  return out
}

/** "2 pulgadas y media", "un bulto y medio": the part goes to the whole before the noun. True when it did. */
function addPartBehindNoun(tokens: readonly Token[], i: number, out: Token[], writing: NumberWriting): boolean {
  const part = own(writing.parts, wordAt(tokens, i + 1))
  if (part === undefined || !writing.and.includes(wordAt(tokens, i))) return false
  if (writing.doubtful?.before.includes(wordAt(tokens, i + 2))) return false
  const [whole, noun] = [out.at(-2), out.at(-1)]
  if (noun?.kind === 'number' || !whole) return false
  const n = whole.kind === 'number' ? whole.value : writing.one.includes(whole.text) ? 1 : null
  if (n === null || !Number.isInteger(n)) return false
  const text = `${whole.text} ${wordAt(tokens, i)} ${wordAt(tokens, i + 1)}`
  const token: NumberToken = {
    kind: 'number',
    value: n + part,
    text,
    from: whole.from,
    to: whole.to,
    decimals: 0,
    fraction: true,
    whole: null,
    spelled: true,
  }
  out[out.length - 2] = token
  return true
}

const isNumberWord = (word: string, { words, parts, one }: NumberWriting): boolean =>
  own(words, word) !== undefined || own(parts, word) !== undefined || one.includes(word)

function spelledNumber(
  tokens: readonly Token[],
  start: number,
  writing: NumberWriting,
): { token: NumberToken; next: number } | null {
  const first = tokens[start]
  if (first.kind === 'sign' || (first.kind === 'word' && !isNumberWord(first.text, writing))) return null
  const whole = first.kind === 'number' ? figure(first, start) : wholeWords(tokens, start, writing)
  const part = partAt(tokens, whole?.next ?? start, whole !== null, writing)
  // "8x48 half offset" is no half of 48: after figures only "3 eighths" and "2 and a half" belong together.
  if (part?.multiplies && first.kind === 'number' && !/s$/.test(wordAt(tokens, part.next - 1))) return null
  if (!part && (whole === null || first.kind === 'number')) return null
  const next = part?.next ?? (whole?.next as number)
  const value = part
    ? part.multiplies
      ? (whole?.value ?? 1) * part.value
      : (whole?.value ?? 0) + part.value
    : (whole?.value as number)
  const text = tokens.slice(start, next).map((t) => t.text)
  return {
    next,
    token: {
      kind: 'number',
      value,
      text: text.join(' '),
      from: first.from,
      to: tokens[next - 1].to,
      decimals: 0,
      fraction: part !== null,
      whole: null,
      spelled: true,
    },
  }
}

type Whole = { readonly value: number; readonly next: number }

const figure = (token: NumberToken, at: number): Whole | null =>
  Number.isInteger(token.value) ? { value: token.value, next: at + 1 } : null

function wholeWords(tokens: readonly Token[], start: number, writing: NumberWriting): Whole | null {
  let value: number | null = null
  let i = start
  // "a hundred": the article counts as one only before such a word.
  if (writing.one.includes(wordAt(tokens, i)) && (own(writing.words, wordAt(tokens, i + 1)) ?? 0) >= 100) i++
  for (let n = own(writing.words, wordAt(tokens, i)); n !== undefined; n = own(writing.words, wordAt(tokens, i))) {
    const next: number | null = value === null ? n : joined(value, n)
    if (next === null) break
    value = next
    i++
    // "ciento veinte y cinco", "a hundred and five"
    if (
      next >= 20 &&
      writing.and.includes(wordAt(tokens, i)) &&
      (own(writing.words, wordAt(tokens, i + 1)) ?? 100) < 100 &&
      next % 10 === 0
    )
      i++
  }
  return value === null ? null : { value, next: i }
}

/** "twenty" and "four", "two" and "hundred", "mil" and "doscientos"; null where two words are two numbers. */
function joined(value: number, n: number): number | null {
  const thousands = Math.floor(value / 1000) * 1000
  const rest = value - thousands
  if (n === 1000) return thousands === 0 ? value * 1000 : null
  if (n === 100 && rest > 0 && rest < 10) return thousands + rest * 100
  if (n >= 100) return rest === 0 ? value + n : null
  if (rest % 100 === 0) return value + n
  return rest % 10 === 0 && rest % 100 >= 20 && n < 10 ? value + n : null
}

/** A part of one at place i: "half", "an eighth", "and a half"; after a whole number also "eighths". */
function partAt(
  tokens: readonly Token[],
  at: number,
  afterWhole: boolean,
  writing: NumberWriting,
): { value: number; next: number; multiplies: boolean } | null {
  const joined = afterWhole && writing.and.includes(wordAt(tokens, at))
  let i = joined ? at + 1 : at
  if ((joined || !afterWhole) && writing.one.includes(wordAt(tokens, i))) i++
  const value = own(writing.parts, wordAt(tokens, i))
  if (value === undefined || (!joined && isNoun(tokens, at, i, writing))) return null
  // "two half bags" is two halves, "three eighths" three of them; "two and a half" adds.
  return { value, next: i + 1, multiplies: afterWhole && !joined }
}

/** "un cuarto de 4 x 5": the word for a part is a noun here, unless what stands beside it takes a part. */
function isNoun(tokens: readonly Token[], start: number, i: number, { doubtful }: NumberWriting): boolean {
  if (!doubtful?.words.includes(wordAt(tokens, i))) return false
  const next = doubtful.of.includes(wordAt(tokens, i + 1)) ? i + 2 : i + 1
  if (tokens[next]?.kind === 'number') return true
  if (doubtful.before.includes(wordAt(tokens, next)) || tokens[next]?.text === '"') return false
  return ![1, 2, 3, 4].some((back) => doubtful.after.includes(wordAt(tokens, start - back)))
}
