/** The locales that ship. A new one is a folder and a line here. */
import { en } from './en/index.ts'
import { es } from './es/index.ts'
import type { Locale } from './locale.ts'

export const LOCALES: readonly Locale[] = [en, es]
