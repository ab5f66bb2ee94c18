/** Rules and troubles asked in Spanish: each example finds its own, each question the verdict of its English twin. */
import { describe, expect, test } from 'vitest'
import book from '../../../config/rules.json' with { type: 'json' }
import { es } from '../../../src/language/es/index.ts'
import { ruleReader } from '../../../src/language/rule-words.ts'
import type { Rule } from '../../../src/rules/book.ts'
import { askOf } from '../../../src/rules/read.ts'
import { settle } from '../../../src/rules/settle.ts'
import { countryIn } from '../../rules/english.ts'
import { ask } from '../../support/crew.ts'
import { RULE_TWINS } from './rules-corpus.ts'

const read = ruleReader(es.rules)
const examples = (kind: 'rule' | 'trouble'): [id: string, say: string][] =>
  Object.entries(es.phrases as Record<string, string>).flatMap(([key, say]) => {
    const id = new RegExp(`^${kind}\\.(.+)\\.example$`).exec(key)?.[1]
    return id === undefined ? [] : [[id, say] as [string, string]]
  })

test.each(examples('rule'))('%s: %s', (id, say) => {
  const words = read(say)
  const settled = settle(
    book.rules as unknown as Rule[],
    askOf(words, words.subjects[0]?.name ?? '', {}, countryIn(say, 'es')),
  )
  expect(settled?.rules.map((rule) => rule.id)).toContain(id)
})

test.each(examples('trouble'))('%s: %s', (id, say) => {
  expect(read(say).troubles[0]?.name).toBe(id)
})

/** The first word of the answer, as far as it is a verdict. */
const verdict = (answer: string): string | undefined => {
  const [word] = answer.toLowerCase().split(/[.:, ]/)
  return { sí: 'yes', yes: 'yes', no: 'no', depende: 'depends', depends: 'depends' }[word]
}

describe('twins', () => {
  test.each(RULE_TWINS)('%s', (spanish, english) => {
    const [es, en] = [ask(spanish), ask(english)]
    expect(es.language).toBe('es')
    expect(es.topic).toBe(en.topic)
    expect(es.values).toEqual(en.values)
    expect(verdict(es.answer)).toBe(verdict(en.answer))
  })
})
