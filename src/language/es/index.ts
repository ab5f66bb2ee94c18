import type { Locale } from '../locale.ts'
import { commands } from './commands.ts'
import * as cues from './cues.ts'
import { figures } from './figures.ts'
import { measures } from './measures.ts'
import { numbers } from './numbers.ts'
import { ownWords } from './own-words.ts'
import { phrases } from './phrases/index.ts'
import { plain } from './plain.ts'
import { times } from './times.ts'
import { units } from './units.ts'
import { words } from './words.ts'

/** es-MX, not es-US: the same point for decimals and comma for thousands, and a fuller set of date and time forms in ICU.
 *  Crews that measure in feet write 1,200.5, as Mexico, most of Central America and the Caribbean do. */
export const es = {
  code: 'es',
  intl: 'es-MX',
  separators: { decimal: '.', thousands: ',' },
  askedFor: [
    'en espanol',
    'espanol',
    'espanol por favor',
    'in spanish',
    'spanish',
    'spanish please',
    'habla espanol',
    'en castellano',
  ],
  numbers,
  units,
  words,
  plain,
  wayLetters: { d: 'right', i: 'left', a: 'up', b: 'down', n: 'up', s: 'down', e: 'right', o: 'left' },
  times,
  nounFirst: true,
  rules: { ...cues, figures, measures },
  ownWords,
  commands,
  phrases,
} satisfies Locale
