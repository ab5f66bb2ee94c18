/** The arrows of the design: adapters -> src, src -> src; core imports only core; language never core; nothing adapters.
 *  Imports are resolved to real paths, dynamic ones included; a folder that was not looked at fails. */
import { globSync, readFileSync, realpathSync } from 'node:fs'
import { stripTypeScriptTypes } from 'node:module'
import path from 'node:path'
import { init, parse } from 'es-module-lexer'
import { beforeAll, expect, test } from 'vitest'

const root = path.resolve(import.meta.dirname, '..')
const PURE_LIBRARIES = ['clipper2-ts', 'zod']
/** Files that settings, entries and tables share: plain types and values without a dependency of their own. */
const SHARED = ['src/problem.ts', 'src/phrase.ts', 'src/reply.ts', 'src/message.ts', 'src/facts.ts']
/** Mentioned only by name or loaded through the loader that the shell hands in. */
const FORBIDDEN_IN_SRC = /\b(process\.|Date\.now|new Date\(\)|Math\.random|fetch\(|globalThis|setTimeout|setInterval)/

const sources = globSync(['src/**/*.ts', 'adapters/**/*.ts'], { cwd: root }).toSorted()

/** Every import of a file: a path from the root where it is ours, else the package's name; type-only ones too. */
function importsOf(file: string): string[] {
  const text = readFileSync(path.join(root, file), 'utf8')
  const runtime = parse(stripTypeScriptTypes(text, { mode: 'strip' }))[0]
    .filter((i) => i.type !== 'import-meta')
    .map((i) => i.specifier)
  const types = [...text.matchAll(/import type [^'"]*?from ['"]([^'"]+)['"]/g)].map((m) => m[1])
  return [...new Set([...runtime, ...types])].map((name) => {
    if (name === undefined) return '(computed)'
    if (!name.startsWith('.')) return name
    return path.relative(root, realpathSync(path.resolve(root, path.dirname(file), name)))
  })
}

function mayImport(file: string, target: string): boolean {
  if (file.startsWith('adapters/')) return !target.startsWith('test/')
  if (target === '(computed)' || target.startsWith('node:') || target.startsWith('adapters/')) return false
  const ours = target.startsWith('src/')
  if (!ours) return file.startsWith('src/core/') ? target === 'clipper2-ts' : PURE_LIBRARIES.includes(target)
  if (file.startsWith('src/core/')) return target.startsWith('src/core/') || target === 'src/problem.ts'
  if (file.startsWith('src/language/'))
    return target.startsWith('src/language/') || target.startsWith('src/units/') || SHARED.includes(target)
  if (file.startsWith('src/units/')) return target.startsWith('src/units/') || SHARED.includes(target)
  return true
}

beforeAll(() => init)

test.each(sources)('%s imports only what its folder may', (file) => {
  for (const target of importsOf(file)) expect(mayImport(file, target), `${file} reaches ${target}`).toBe(true)
})

test.each(sources.filter((f) => f.startsWith('src/')))('%s has no clock, randomness or environment', (file) => {
  const code = stripTypeScriptTypes(readFileSync(path.join(root, file), 'utf8')).replace(
    /\/\*[\s\S]*?\*\/|\/\/.*$/gm,
    '',
  )
  expect(FORBIDDEN_IN_SRC.exec(code)?.[0] ?? null).toBeNull()
})

test('a locale never imports another', () => {
  const locale = (file: string) => /^src\/language\/([a-z]{2})\//.exec(file)?.[1]
  for (const file of sources.filter((f) => locale(f)))
    for (const target of importsOf(file))
      expect([undefined, locale(file)], `${file} reaches ${target}`).toContain(locale(target))
})

test('it looked at something', () => {
  expect(sources.some((f) => f.startsWith('src/'))).toBe(true)
  expect(sources.flatMap(importsOf).length).toBeGreaterThan(0)
})
