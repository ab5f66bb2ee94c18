/** Plain text cut into numbers, words and signs. Nothing is understood yet, nothing is lost. */
import { spellOut } from './spelled.ts'

type Place = { readonly text: string; readonly from: number; readonly to: number }

export type NumberToken = Place & {
  readonly kind: 'number'
  readonly value: number
  /** Figures after the decimal point; 0 for whole numbers and fractions. */
  readonly decimals: number
  readonly fraction: boolean
  /** The whole of a mixed number written with a space ("11 1/2"), which may turn out to be two numbers. */
  readonly whole: number | null
  /** Written as a word ("five"). */
  readonly spelled: boolean
}
export type WordToken = Place & { readonly kind: 'word' }
export type SignToken = Place & { readonly kind: 'sign' }
export type Token = NumberToken | WordToken | SignToken

/** How a locale writes numbers. */
export type NumberWriting = {
  /** Number words with their values ("five": 5). */
  readonly words: Readonly<Record<string, number>>
  /** Words that name a part of one ("eighth": 0.125), also as plurals. */
  readonly parts: Readonly<Record<string, number>>
  /** "and" between a whole and a part. */
  readonly and: readonly string[]
  /** "a", "an": one, before a part. */
  readonly one: readonly string[]
  /** A part may follow the noun of its whole: "2 pulgadas y media". */
  readonly partBehindNoun: boolean
  /** Words for a part that are nouns too ("cuarto", a quarter and a room): a part only right before one of `before`, an "of"
   *  between allowed, or within three words behind one of `after`. `before` also lists what a part behind a noun may not precede. */
  readonly doubtful: {
    readonly words: readonly string[]
    readonly of: readonly string[]
    readonly before: readonly string[]
    readonly after: readonly string[]
  } | null
  /** Spellings of units that an x may stick to ("12ftx14"). */
  readonly stuckUnits: readonly string[]
  /** Spellings of units of length that a 2 or 3 may stick to ("m2"). */
  readonly powered: readonly string[]
  /** A point before exactly three figures marks thousands. */
  readonly pointThousands: boolean
}

/** A figure that cannot be read as one number, kept with its place so that a reply can point at it. */
export type Unreadable = Place

export type Tokens = { readonly tokens: readonly Token[]; readonly unreadable: readonly Unreadable[] }

const THOUSANDS = String.raw`\d{1,3}(?:,\d{3})+(?![\d,])`
const FRACTION = /(\d{1,4})\/(\d{1,4})(?!\d)/y
const DECIMAL = new RegExp(String.raw`(${THOUSANDS}|\d*)[.,](\d+)(?![\d]|[.,]\d)`, 'y')
const IN_THOUSANDS = new RegExp(String.raw`${THOUSANDS}(?:\.\d+)?(?![\d,.])`, 'y')
const WHOLE_THOUSANDS = new RegExp(String.raw`${THOUSANDS}(?!\.\d)`, 'y')
const WHOLE = new RegExp(String.raw`${THOUSANDS}|\d+`, 'y')
const NOT_A_NUMBER =
  /\d+(?:\.\d+)?e[+-]?\d+|\d+(?:\s?(?:\^|\*\*)\s?\d+)+|\d+\/0+(?![\d.])|0x[a-f][0-9a-f]*|0x0+[0-9a-f]+|\d{13,}|\d*[.,]\d+[.,]\d[\d.,]*/y
/** What a locale's way of writing makes of figures and words. */
type Patterns = {
  /** "11 1/2", "11-1/2", "11 and 1/2" */
  readonly mixed: RegExp
  /** A word; "m2" and "ft3" keep their figure, "x2" does not. */
  readonly word: RegExp
  /** "ftx14": a unit with the x of a pair stuck to it, before a figure. */
  readonly stuckX: RegExp
}

const patterns = new WeakMap<NumberWriting, Patterns>()

function patternsOf(writing: NumberWriting): Patterns {
  let found = patterns.get(writing)
  if (!found) {
    found = {
      mixed: new RegExp(
        String.raw`(\d+)(?:\s+|\s?-\s?|[\s-]?(?:${writing.and.join('|')})\s+)(\d{1,3})\/([1-9]\d{0,2})(?![\d/])`,
        'y',
      ),
      word: new RegExp(String.raw`(?:${writing.powered.join('|')})[23](?![\d./x])|[a-zñ]+(?:'[a-z]+)*`, 'y'),
      stuckX: new RegExp(`^(?:${writing.stuckUnits.join('|')})x$`),
    }
    patterns.set(writing, found)
  }
  return found
}

const isDigit = (code: number): boolean => code >= 48 && code <= 57
const isLetter = (code: number): boolean => (code >= 97 && code <= 122) || code === 241

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at
  return pattern.exec(text)
}

/** Cuts plain text into tokens, in linear time. */
export function tokenize(text: string, writing: NumberWriting): Tokens {
  const tokens: Token[] = []
  const unreadable: Unreadable[] = []
  let at = 0
  while (at < text.length) {
    const code = text.charCodeAt(at)
    const pointed =
      (code === 46 || code === 44) && isDigit(text.charCodeAt(at + 1)) && !/[\d.,]/.test(text[at - 1] ?? ' ')
    if (code === 32) at++
    else if (isDigit(code) || pointed) at = takeFigure(text, at, writing, tokens, unreadable)
    else if (isLetter(code)) at = takeWord(text, at, writing, tokens)
    else at = takeSign(text, at, tokens)
  }
  return { tokens: spellOut(tokens, writing), unreadable }
}

function takeSign(text: string, at: number, tokens: Token[]): number {
  // "back-butter" is two words; the dash between letters says nothing.
  if (text[at] === '-' && isLetter(text.charCodeAt(at - 1)) && isLetter(text.charCodeAt(at + 1))) return at + 1
  // Two single quotes are an inch mark.
  const to = text.startsWith("''", at) ? at + 2 : at + 1
  tokens.push({ kind: 'sign', text: to === at + 2 ? '"' : text[at], from: at, to })
  return to
}

function takeFigure(
  text: string,
  at: number,
  writing: NumberWriting,
  tokens: Token[],
  unreadable: Unreadable[],
): number {
  const bad = match(NOT_A_NUMBER, text, at)
  if (bad && !match(IN_THOUSANDS, text, at)) {
    unreadable.push({ text: bad[0], from: at, to: at + bad[0].length })
    return at + bad[0].length
  }
  const number = readFigure(text, at, writing)
  tokens.push(number)
  return number.to
}

function readFigure(text: string, at: number, writing: NumberWriting): NumberToken {
  const make = (m: RegExpExecArray, value: number, rest: Partial<NumberToken> = {}): NumberToken => ({
    kind: 'number',
    value,
    text: m[0],
    from: at,
    to: at + m[0].length,
    decimals: 0,
    fraction: false,
    whole: null,
    spelled: false,
    ...rest,
  })
  const mixed = match(patternsOf(writing).mixed, text, at)
  if (mixed) {
    const spaced = !mixed[0].includes('-')
    const part = Number(mixed[2]) / Number(mixed[3])
    return make(mixed, Number(mixed[1]) + part, { fraction: true, whole: spaced ? Number(mixed[1]) : null })
  }
  const fraction = match(FRACTION, text, at)
  if (fraction) return make(fraction, Number(fraction[1]) / Number(fraction[2]), { fraction: true })
  const decimal = match(DECIMAL, text, at)
  if (decimal && !match(WHOLE_THOUSANDS, text, at)) {
    const [whole, figures] = [decimal[1].replaceAll(',', ''), decimal[2]]
    if (writing.pointThousands && figures.length === 3 && decimal[0].includes('.') && /^[1-9]\d{0,2}$/.test(whole))
      return make(decimal, Number(whole + figures))
    return make(decimal, Number(`${whole || '0'}.${figures}`), { decimals: figures.length })
  }
  const integer = match(WHOLE, text, at) as RegExpExecArray
  return make(integer, Number(integer[0].replaceAll(',', '')))
}

function takeWord(text: string, at: number, writing: NumberWriting, tokens: Token[]): number {
  const { word: pattern, stuckX } = patternsOf(writing)
  let word = (match(pattern, text, at) as RegExpExecArray)[0]
  const previous = tokens.at(-1)
  const afterFigure = previous !== undefined && previous.kind !== 'word'
  if (word === 'x' || (word[0] === 'x' && afterFigure && previous.to === at && word.length === 1)) {
    tokens.push({ kind: 'sign', text: 'x', from: at, to: at + 1 })
    return at + 1
  }
  if (stuckX.test(word) && /^\s*["'(]?\s*[.\d]/.test(text.slice(at + word.length, at + word.length + 6)))
    word = word.slice(0, -1)
  tokens.push({ kind: 'word', text: word, from: at, to: at + word.length })
  return at + word.length
}
