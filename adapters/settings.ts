/** Reads config/ once. Files that were checked before, as they stand, are not checked again: the check loads zod. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { SETTINGS_FILES, type Settings, settingsFrom } from '../src/settings.ts'

const require = createRequire(import.meta.url)
const folder = path.resolve(import.meta.dirname, '../config')
const checkedFolder = path.resolve(import.meta.dirname, '../node_modules/.cache/kneepad')

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
  const check = readFileSync(path.resolve(folder, '../src/settings-check.ts'), 'utf8')
  const text = [...Object.values(wanted), check].join('\n')
  if (!wasChecked(text)) {
    const { readSettingsTexts } = require('../src/settings-check.ts') as typeof import('../src/settings-check.ts')
    const checked = readSettingsTexts(wanted)
    if (!checked.ok) return { ok: false, message: checked.message }
    keepChecked(text)
    return { ok: true, value: checked.value }
  }
  return {
    ok: true,
    value: settingsFrom(Object.fromEntries(Object.entries(wanted).map(([name, text]) => [name, JSON.parse(text)]))),
  }
}

/** What was checked last in this checkout: checkouts may share their packages. */
const checkedFile = path.join(checkedFolder, `checked${folder.replaceAll(/[^\w]+/g, '-')}.txt`)

function wasChecked(text: string): boolean {
  try {
    return readFileSync(checkedFile, 'utf8') === text
  } catch {
    return false
  }
}

function keepChecked(text: string): void {
  try {
    mkdirSync(checkedFolder, { recursive: true })
    writeFileSync(checkedFile, text)
  } catch {
    // A read-only checkout is checked at every start; nothing is lost.
  }
}
