/** The words that a chat platform shows by itself: buttons, the form, the home page, and what it says when there is no answer. */
import { platform as en } from './en/platform.ts'
import { platform as es } from './es/platform.ts'

export type PlatformWords = Readonly<Record<keyof typeof en, string>>

const LANGUAGES: Readonly<Record<string, PlatformWords>> = { en, es }

export const PLATFORM_LANGUAGES: readonly string[] = Object.keys(LANGUAGES)

/** The words of a language; `otherwise` and then English where it is none of ours. */
export const platformWords = (language: string, otherwise = 'en'): PlatformWords =>
  LANGUAGES[language] ?? LANGUAGES[otherwise] ?? en
