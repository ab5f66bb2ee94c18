import type { Locale } from '../locale.ts'
import { commands } from './commands.ts'
import * as cues from './cues.ts'
import { figures } from './figures.ts'
import { measures } from './measures.ts'
import { numbers } from './numbers.ts'
import { ownWords } from './own-words.ts'
import { phrases } from './phrases/index.ts'
import { times } from './times.ts'
import { units } from './units.ts'
import { plain, words } from './words.ts'

export const en = {
  code: 'en',
  intl: 'en-US',
  separators: { decimal: '.', thousands: ',' },
  askedFor: ['in english', 'english', 'english please', 'en ingles', 'ingles', 'speak english'],
  numbers,
  units,
  words,
  plain,
  wayLetters: { r: 'right', l: 'left', u: 'up', d: 'down', n: 'up', s: 'down', e: 'right', w: 'left' },
  times,
  nounFirst: false,
  rules: { ...cues, figures, measures },
  ownWords,
  commands,
  phrases,
} satisfies Locale
