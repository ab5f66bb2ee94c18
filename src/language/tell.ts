/** Phrases to sentences: the locale's catalogue, the asker's units, plurals by Intl. */
import type { Amount, Arg, Phrase } from '../phrase.ts'
import type { Problem } from '../problem.ts'
import { amountText, type Style } from './format.ts'

const pluralRules = new Map<string, Intl.PluralRules>()

/** Which of the forms a template lists fits the number: one named by its plural ("few=…"), else the first for one, the last for the rest. */
function pluralForm(intl: string, n: number, forms: readonly string[]): string {
  let rules = pluralRules.get(intl)
  if (!rules) {
    rules = new Intl.PluralRules(intl)
    pluralRules.set(intl, rules)
  }
  const plural = rules.select(n)
  const named = forms.find((f) => f.startsWith(`${plural}=`))
  if (named) return named.slice(named.indexOf('=') + 1)
  return plural === 'one' ? forms[0] : (forms.at(-1) as string)
}

const numberOf = (arg: Arg | undefined): number => {
  if (arg === undefined || Array.isArray(arg) || !('is' in arg)) return 2
  return 'n' in arg ? arg.n : 'h' in arg ? arg.h : 'min' in arg ? arg.min : 2
}

/** `{name}` stands for an amount, `{name|tile|tiles}` for the form that fits its number. */
const PLACE = /\{([a-zA-Z0-9_]+)(?:\|([^{}]*))?\}/g

/** A template cut at its places. `before`: the text since the place before. */
type Template = { readonly places: readonly Place[]; readonly end: string }
type Place = { readonly before: string; readonly name: string; readonly forms: readonly string[] | null }

const templates = new Map<string, Template>()

function templateOf(text: string): Template {
  const known = templates.get(text)
  if (known) return known
  let from = 0
  const places = [...text.matchAll(PLACE)].map(({ 0: all, 1: name, 2: forms, index }): Place => {
    const before = text.slice(from, index)
    from = index + all.length
    return { before, name, forms: forms?.split('|') ?? null }
  })
  const template = { places, end: text.slice(from) }
  templates.set(text, template)
  return template
}

export function phraseText(phrase: Phrase, style: Style): string {
  const text = style.phrases[phrase.key]
  if (text === undefined) throw new Error(`no phrase ${phrase.key}`)
  const { places, end } = templateOf(text)
  let told = ''
  for (const { before, name, forms } of places) {
    const arg = phrase.args[name]
    if (arg === undefined) throw new Error(`phrase ${phrase.key} lacks ${name}`)
    told += before + (forms === null ? argText(arg, style) : pluralForm(style.intl, numberOf(arg), forms))
  }
  told += end
  // "5 p.m." at the end of a sentence ends it.
  return told.includes('..') ? told.replaceAll(/(?<=\w\.)\.(?=\s|$)/g, '') : told
}

function argText(arg: Arg, style: Style): string {
  if (Array.isArray(arg)) return (arg as readonly (Amount | Phrase)[]).map((one) => argText(one, style)).join(', ')
  const one = arg as Amount | Phrase
  return 'key' in one ? phraseText(one, style) : amountText(one, style)
}

/** A problem as a sentence. Its facts become amounts here: lengths by their unit, names by the catalogue. */
export function problemText(problem: Problem, style: Style): string {
  const { facts } = problem
  if (facts['question'] !== undefined)
    return phraseText({ key: `ask.${facts['question']}`, args: argsOf(facts) }, style)
  if (facts['why'] !== undefined) {
    const key = `why.${facts['why']}`
    if (style.phrases[key] !== undefined) return phraseText({ key, args: argsOf(facts) }, style)
  }
  return phraseText({ key: `problem.${problem.code}`, args: argsOf(facts) }, style)
}

function argsOf(facts: Readonly<Record<string, unknown>>): Record<string, Arg> {
  const unit = facts['unit'] ?? (facts['why'] === 'cold' || facts['why'] === 'freeze' ? 'C' : undefined)
  const args: Record<string, Arg> = {}
  for (const [name, value] of Object.entries(facts)) {
    if (typeof value === 'number') args[name] = amountIn(unit, value)
    else if (name === 'field') args[name] = { is: 'word', word: `field.${value}` }
    else if (typeof value === 'object' && value !== null && ('is' in value || 'key' in value || Array.isArray(value)))
      args[name] = value as Arg
    else args[name] = { is: 'quote', text: String(value) }
  }
  return args
}

function amountIn(unit: unknown, n: number): Amount {
  switch (unit) {
    case 'mm':
      return Math.abs(n) > 3000 ? { is: 'room', mm: n } : { is: 'small', mm: n }
    case 'm2':
      return { is: 'area', m2: n }
    case 'kg':
      return { is: 'mass', kg: n }
    case 'C':
      return { is: 'temperature', c: n }
    case 'h':
      return { is: 'hours', h: n }
    case 'min':
      return { is: 'minutes', min: n }
    case 'share':
      return { is: 'percent', pct: n * 100 }
    default:
      return { is: 'number', n, digits: 3 }
  }
}
