/** Reads config/ once. Files that were checked before, by their hash, are not checked again: the check loads zod. */
import { createHash } from 'node:crypto'
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { SETTINGS_FILES, type Settings, settingsFrom } from '../src/settings.ts'

const require = createRequire(import.meta.url)
const folder = path.resolve(import.meta.dirname, '../config')
const stampFolder = path.resolve(import.meta.dirname, '../node_modules/.cache/kneepad')

/** The settings, or a message that names file, path and expectation. */
export function loadSettings(): { ok: true; value: Settings } | { ok: false; message: string } {
  const texts: Record<string, string> = {}
  try {
    for (const name of readdirSync(folder).filter((n) => n.endsWith('.json')))
      texts[name] = readFileSync(path.join(folder, name), 'utf8')
  } catch (error) {
    return { ok: false, message: `config/ can't be read: ${(error as Error).message}` }
  }
  const wanted = Object.fromEntries(Object.values(SETTINGS_FILES).map((name) => [name, texts[name]]))
  const hash = createHash('sha256')
    .update(JSON.stringify(wanted))
    .update(readFileSync(path.resolve(folder, '../src/settings-check.ts')))
    .digest('hex')
  if (!wasChecked(hash)) {
    const { readSettingsTexts } = require('../src/settings-check.ts') as typeof import('../src/settings-check.ts')
    const checked = readSettingsTexts(wanted)
    if (!checked.ok) return { ok: false, message: checked.message }
    keepStamp(hash)
    return { ok: true, value: checked.value }
  }
  return {
    ok: true,
    value: settingsFrom(Object.fromEntries(Object.entries(wanted).map(([name, text]) => [name, JSON.parse(text)]))),
  }
}

/** Hashes checked before, a line each: several checkouts and edits back and forth keep theirs. */
const stampFile = path.join(stampFolder, 'config-checked')
const MOST_STAMPS = 16

function stamps(): string[] {
  try {
    return readFileSync(stampFile, 'utf8')
      .split('\n')
      .filter((line) => line !== '')
  } catch {
    return []
  }
}

const wasChecked = (hash: string): boolean => stamps().includes(hash)

function keepStamp(hash: string): void {
  try {
    mkdirSync(stampFolder, { recursive: true })
    writeFileSync(stampFile, [...stamps().slice(1 - MOST_STAMPS), hash].join('\n'))
  } catch {
    // A read-only checkout is checked at every start; nothing is lost.
  }
}
