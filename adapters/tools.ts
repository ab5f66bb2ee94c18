/** Joins settings, languages and libraries into what `answer` needs: the same for every adapter. */
import type { Tools } from '../src/answer/brief.ts'
import { LOCALES } from '../src/language/all.ts'
import { languagesOf } from '../src/language/languages.ts'
import { libraries } from './libraries.ts'
import { loadSettings } from './settings.ts'

export function loadTools():
  | { readonly ok: true; readonly value: Tools }
  | { readonly ok: false; readonly message: string } {
  const settings = loadSettings()
  return settings.ok
    ? { ok: true, value: { settings: settings.value, languages: languagesOf(LOCALES), libraries } }
    : settings
}
