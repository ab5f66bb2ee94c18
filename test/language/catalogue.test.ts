/** Every locale's catalogue against the first one's and against the code: nothing missing, unused, different in its places, or
 *  said past the catalogue. */
import { readdirSync, readFileSync, statSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { LOCALES } from '../../src/language/all.ts'
import { CONCEPTS } from '../../src/language/concepts.ts'
import type { Locale } from '../../src/language/locale.ts'

const [first] = LOCALES
const places = (phrase: string): string[] =>
  [...new Set([...phrase.matchAll(/\{([a-zA-Z0-9_]+)/g)].map((m) => m[1]))].toSorted()

function filesUnder(folder: string): string[] {
  return readdirSync(folder)
    .map((name) => path.join(folder, name))
    .flatMap((file) => (statSync(file).isDirectory() ? filesUnder(file) : [file]))
    .filter((file) => file.endsWith('.ts'))
}

const root = path.join(import.meta.dirname, '../..')
/** All code that can name a phrase: not the catalogues themselves. */
const code = ['src', 'adapters']
  .flatMap((folder) => filesUnder(path.join(root, folder)))
  .filter((file) => !/language\/[a-z]{2}\/phrases\//.test(file))
const texts = new Map(code.map((file) => [path.relative(root, file), readFileSync(file, 'utf8')]))
const allCode = [...texts.values()].join('\n')
const config = ['rules', 'materials', 'practice', 'defaults']
  .map((name) => readFileSync(path.join(root, `config/${name}.json`), 'utf8'))
  .join('\n')

describe.each(LOCALES.slice(1).map((locale) => [locale.code, locale] as const))('%s', (_, locale: Locale) => {
  test('has every phrase of the first locale and no other', () => {
    expect(Object.keys(first.phrases).filter((key) => !(key in locale.phrases))).toEqual([])
    expect(Object.keys(locale.phrases).filter((key) => !(key in first.phrases))).toEqual([])
  })

  test('has the same places in every phrase', () => {
    const differing = Object.keys(first.phrases).filter(
      (key) => String(places(first.phrases[key])) !== String(places(locale.phrases[key] ?? '')),
    )
    expect(differing).toEqual([])
  })

  test('lists one plural form and another wherever it lists forms', () => {
    for (const [key, phrase] of Object.entries(locale.phrases))
      for (const [, forms] of phrase.matchAll(/\{[a-zA-Z0-9_]+\|([^{}]*)\}/g))
        expect(forms.split('|').length, key).toBeGreaterThanOrEqual(2)
  })

  test('tells nothing in the words of the first locale that has words of its own', () => {
    const alike = Object.keys(first.phrases).filter(
      (key) =>
        first.phrases[key] === locale.phrases[key] &&
        /[a-z]{3,}\W+[a-z]{3,}/.test(first.phrases[key].replaceAll(/\{[^}]*\}/g, '')),
    )
    expect(alike).toEqual([])
  })

  test('has words for nearly every meaning', () => {
    const empty = CONCEPTS.filter((concept) => locale.words[concept].length === 0)
    expect(empty).toEqual([])
  })
})

/** Strings of the code, and the starts of strings that are put together. */
const literals = new Set([...allCode.matchAll(/['`"]([a-zA-Z0-9.-]{2,})['`"]/g)].map((m) => m[1]))
const starts = new Set([...allCode.matchAll(/[`]([a-z]+[.-][a-zA-Z0-9.-]*)\$\{/g)].map((m) => m[1]))
const ends = [...new Set([...allCode.matchAll(/\}([.-][a-zA-Z0-9.-]+)`/g)].map((m) => m[1]))]
const named = new Set([...config.matchAll(/"([a-z0-9-]+)"/g)].map((m) => m[1]))

/** Keys are often put together (`rule.${id}`): the part before the first place counts, for words also the id alone. */
function namedInCode(key: string): boolean {
  if (literals.has(key)) return true
  const id = key.startsWith('word.') ? key.slice('word.'.length) : null
  if (id !== null && (literals.has(id) || named.has(id))) return true
  if (ends.some((end) => key.endsWith(end) && literals.has(key.slice(0, -end.length)))) return true
  return [...starts].some((start) => key.startsWith(start) || id?.startsWith(start))
}

test('every phrase is used', () => {
  expect(Object.keys(first.phrases).filter((key) => !namedInCode(key) && !key.endsWith('.example'))).toEqual([])
})

test('every phrase that code names is there', () => {
  const missing: string[] = []
  for (const [file, text] of texts)
    for (const [, key] of text.matchAll(/\bsay\('([a-z0-9.-]+)'/g))
      if (!(key in first.phrases)) missing.push(`${file}: ${key}`)
  expect(missing).toEqual([])
})

/** Files of their own that say something. */
const TELLING = ['src/answer.ts', 'src/speak.ts', 'src/talk.ts']

test('no sentence is built in code', () => {
  const built: string[] = []
  for (const [file, text] of texts) {
    if (!/^src\/(topics|core|rules|jobs|talk|answer)\//.test(file) && !TELLING.includes(file)) continue
    const bare = text.replaceAll(/\/\*[\s\S]*?\*\//g, '').replaceAll(/\/\/.*$/gm, '')
    // What is quoted to the crew must be its own words or figures, never a literal.
    for (const [, literal] of bare.matchAll(/\bquote\(\s*(['`][^)]*['`])/g))
      if (/[a-zA-Z]{2,}/.test(literal.replaceAll(/\$\{[^}]*\}/g, ''))) built.push(`${file}: ${literal}`)
  }
  expect(built).toEqual([])
})
