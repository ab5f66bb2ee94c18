/** Phrases to sentences: the locale's catalogue, the asker's units, plurals by Intl. */
import type { Amount, Arg, Phrase } from '../phrase.ts'
import type { Problem } from '../problem.ts'
import { amountText, type Style } from './format.ts'

const pluralRules = new Map<string, Intl.PluralRules>()

/** Which of the forms a template lists fits the number: the first for one, the last for the rest. */
function pluralForm(intl: string, n: number, forms: readonly string[]): string {
  let rules = pluralRules.get(intl)
  if (!rules) {
    rules = new Intl.PluralRules(intl)
    pluralRules.set(intl, rules)
  }
  const named = forms.find((f) => f.startsWith(`${rules.select(n)}=`))
  if (named) return named.slice(named.indexOf('=') + 1)
  return rules.select(n) === 'one' ? forms[0] : (forms.at(-1) as string)
}

const numberOf = (arg: Arg | undefined): number => {
  if (arg === undefined || Array.isArray(arg) || !('is' in arg)) return 2
  return 'n' in arg ? arg.n : 'h' in arg ? arg.h : 'min' in arg ? arg.min : 2
}

/** `{name}` stands for an amount, `{name|tile|tiles}` for the form that fits its number. */
const PLACE = /\{([a-zA-Z0-9_]+)(?:\|([^{}]*))?\}/g

export function phraseText(phrase: Phrase, style: Style): string {
  const template = style.phrases[phrase.key]
  if (template === undefined) throw new Error(`no phrase ${phrase.key}`)
  const told = template.replace(PLACE, (_, name: string, forms: string | undefined) => {
    const arg = phrase.args[name]
    if (arg === undefined) throw new Error(`phrase ${phrase.key} lacks ${name}`)
    return forms === undefined ? argText(arg, style) : pluralForm(style.intl, numberOf(arg), forms.split('|'))
  })
  // "5 p.m." at the end of a sentence ends it.
  return told.replaceAll(/(?<=\w\.)\.(?=\s|$)/g, '')
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
